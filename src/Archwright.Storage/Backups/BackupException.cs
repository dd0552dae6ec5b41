namespace Archwright.Storage.Backups;

/// <summary>A backup cannot be made or restored.</summary>
/// <param name="message">What is in the way.</param>
/// <param name="mend">What to do.</param>
/// <param name="inner">What the machine said; null where it said nothing.</param>
public sealed class BackupException(string message, string mend, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>What to do.</summary>
    public string Mend { get; } = mend;
}
