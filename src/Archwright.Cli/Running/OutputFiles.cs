namespace Archwright.Cli.Running;

/// <summary>Writes the files a user asked for.</summary>
internal static class OutputFiles
{
    /// <summary>Writes one; what goes wrong with the disk is the user's to mend.</summary>
    /// <param name="option">Option that named the file, for the message.</param>
    /// <param name="file">Path.</param>
    /// <param name="write">Writes it.</param>
    /// <exception cref="Refusal">It cannot be written; exit 2.</exception>
    public static void Write(string option, string file, Action<string> write)
    {
        try
        {
            write(file);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            string reason = fault switch
            {
                DirectoryNotFoundException => "the folder does not exist.",
                UnauthorizedAccessException => "it is a folder, or you have no right to write there.",
                _ => fault.Message,
            };
            throw new Refusal($"{option} '{file}' cannot be written: {reason}",
                "Name a file in a folder that exists and that you may write to.");
        }
    }
}
