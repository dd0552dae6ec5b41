namespace Archwright.Cli.Running;

/// <summary>What the program tells its caller; part of the contract.</summary>
internal static class ExitCode
{
    /// <summary>It was done.</summary>
    public const int Done = 0;

    /// <summary>The case cannot be engaged, or a check failed.</summary>
    public const int NotPossible = 1;

    /// <summary>Bad input, or used wrongly.</summary>
    public const int BadInput = 2;

    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 3;

    /// <summary>Stopped from outside (Ctrl-C), as shells count it.</summary>
    public const int Stopped = 130;
}
