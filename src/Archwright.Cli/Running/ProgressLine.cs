namespace Archwright.Cli.Running;

/// <summary>One line on standard error that counts up while somebody watches, and is wiped away at the end.</summary>
internal sealed class ProgressLine(Terminal terminal, string what, int total) : IProgress<int>, IDisposable
{
    private readonly Lock _gate = new();
    private int _most;
    private int _shown;

    /// <inheritdoc/>
    public void Report(int value)
    {
        if (!terminal.ErrorIsScreen)
            return;

        lock (_gate)
        {
            if (value <= _most)
                return;

            _most = value;
            string line = $"{what}: {value} of {total}";
            terminal.Error.Write("\r" + line);
            _shown = line.Length;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_shown > 0)
            terminal.Error.Write("\r" + new string(' ', _shown) + "\r");
    }
}
