using Archwright.Treatment.Decisions;

namespace Archwright.Cli.Running;

/// <summary>One line on standard error that counts wires while somebody watches; wiped away at the end.</summary>
internal sealed class VisitProgressLine(Terminal terminal) : IProgress<VisitProgress>, IDisposable
{
    private readonly Lock _gate = new();
    private int _most;
    private int _shown;

    /// <inheritdoc/>
    public void Report(VisitProgress value)
    {
        if (!terminal.ErrorIsScreen)
            return;

        lock (_gate)
        {
            if (value.Done <= _most)
                return;

            _most = value.Done;
            string line = $"Trying wires: {value.Done} of {value.Of}";
            terminal.Error.Write("\r" + line.PadRight(_shown));
            _shown = Math.Max(_shown, line.Length);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_shown > 0)
            terminal.Error.Write("\r" + new string(' ', _shown) + "\r");
    }
}
