using Archwright.Treatment.Ladders;

namespace Archwright.Cli.Running;

/// <summary>One line on standard error that counts forecasts while somebody watches; wiped away at the end.</summary>
internal sealed class LadderProgressLine(Terminal terminal) : IProgress<LadderProgress>, IDisposable
{
    private readonly Lock _gate = new();
    private int _most;
    private int _shown;

    /// <inheritdoc/>
    public void Report(LadderProgress value)
    {
        if (!terminal.ErrorIsScreen)
            return;

        lock (_gate)
        {
            if (value.Followed <= _most)
                return;

            _most = value.Followed;
            string line = $"Trying sequences: {value.Followed} wires followed. Ctrl+C stops.";
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
