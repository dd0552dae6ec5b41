using System.Collections.Concurrent;
using Archwright.Dentition.Catalogue;
using Archwright.Practice.Bench;

namespace Archwright.Web.Bench;

/// <summary>Runs the bench in the background, one wire at a time on half of the machine's processors, and remembers
/// what came out for each wire, temperature and slot: the same question is not computed twice.</summary>
public sealed class BenchLab : IDisposable
{
    // Some hundred bytes a point: a few megabytes in all. When it is full, everything is forgotten.
    private const int MostRemembered = 400;

    private readonly ConcurrentDictionary<(string Wire, double Temperature, string Slot), BenchSheet> known = new();
    private readonly SemaphoreSlim gate = new(Math.Max(1, Environment.ProcessorCount / 2));

    /// <summary>Sheets computed since the start; those that were remembered do not count.</summary>
    public int Computed => computed;

    private int computed;

    /// <summary>What a wire did, if that is known already.</summary>
    public BenchSheet? Known(CatalogueWire wire, double temperature, string slot) =>
        known.GetValueOrDefault((wire.Id, temperature, slot));

    /// <summary>What a wire does.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="temperature">[°C]</param>
    /// <param name="slot">"018" or "022".</param>
    /// <param name="cancellation">Nobody waits for it any more.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public async Task<BenchSheet> SheetAsync(
        CatalogueWire wire, double temperature, string slot, CancellationToken cancellation = default)
    {
        if (Known(wire, temperature, slot) is { } before)
            return before;

        await gate.WaitAsync(cancellation);
        try
        {
            if (Known(wire, temperature, slot) is { } meanwhile)
                return meanwhile;

            BenchSheet sheet = await Task.Run(
                () => BenchTests.Run(wire, temperature, slot, cancellation), cancellation);
            Interlocked.Increment(ref computed);
            if (known.Count >= MostRemembered)
                known.Clear();
            known[(wire.Id, temperature, slot)] = sheet;
            return sheet;
        }
        finally
        {
            gate.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => gate.Dispose();
}
