namespace Archwright.Cli.Running;

/// <summary>Messages of the layers below as a user should read them.</summary>
internal static class Plainly
{
    /// <summary>An argument's message without the name of the parameter, which .NET puts behind it.</summary>
    public static string Message(ArgumentException fault)
    {
        string message = fault.ParamName is { } name
            ? fault.Message.Replace($" (Parameter '{name}')", "", StringComparison.Ordinal)
            : fault.Message;
        return message.ReplaceLineEndings(" ");
    }
}
