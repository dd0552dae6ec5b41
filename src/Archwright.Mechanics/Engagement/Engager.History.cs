using System.Collections.Immutable;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <content>Wires with memory: how far a stride may go, temperature, and the way back from a step that
/// failed.</content>
public sealed partial class Engager
{
    // What one committed step may change: docs/theory/alloys.md has the table of error against these.
    private const double LongestMove = 0.5;
    private const double LongestTurn = 0.1;
    private const double LongestWarming = 5;

    private readonly Checkpoint _whole;
    private Arrangement? _arrangementBefore;

    // Curvature gathers where a wire transforms or yields, within a millimetre or so.
    private int Finer => Arrangement.Wire.Alloy is LinearElastic ? 1 : 2;

    private int PerGap => Finer * Options.ElementsPerGap;

    private int PerSlot => Finer * Options.ElementsPerSlot;

    private int MostIterations => (_rod.Law.Remembers ? 2 : 1) * Options.MostIterations;

    private double LongestStride(SlotFrame[] target)
    {
        if (!_rod.Law.Remembers)
            return 1;

        double parts = Math.Abs(_warmedTo - _warmedFrom) / LongestWarming;
        for (int i = 0; i < target.Length; i++)
        {
            parts = Math.Max(parts, (target[i].Centre - _from[i].Centre).Length / LongestMove);
            parts = Math.Max(parts, FramePath.TurnBetween(_from[i], target[i]).Length / LongestTurn);
        }

        return 1 / Math.Max(1, Math.Ceiling(parts - 1e-9));
    }

    private void Warm(double temperature)
    {
        _temperature = temperature;
        _rod.Law.Warm(temperature);
    }

    /// <summary>Share of its way toward rest by which every displaced slot is relieved for the working
    /// figures.</summary>
    public const double Relief = 0.2;

    /// <summary>The working state: what the wire does once the teeth have come a little way, see
    /// <see cref="Relief"/>. A wire that transforms then unloads along its lower line, and spends its weeks there. The
    /// engaged state is put back.</summary>
    /// <exception cref="InvalidOperationException"><see cref="Engage"/> has not been called.</exception>
    /// <exception cref="OperationCanceledException">It was asked to stop.</exception>
    public EngagementResult Working(CancellationToken cancellation = default)
    {
        EngagementResult result = Apply(Relieving(Arrangement, Relief), cancellation);
        if (result.Converged)
            Undo();

        return result;
    }

    /// <summary>The step that brings every displaced slot a share of its way toward rest.</summary>
    /// <param name="arrangement">Where the slots are before.</param>
    /// <param name="share">Share of the way, from 0 (as they are) to 1 (at rest).</param>
    public static Step Relieving(Arrangement arrangement, double share)
    {
        var moves = ImmutableArray.CreateBuilder<(int, SlotFrame)>();
        for (int i = 0; i < arrangement.Slots.Length; i++)
        {
            Slot slot = arrangement.Slots[i];
            if (slot.Actual != slot.Rest)
                moves.Add((i, FramePath.Between(slot.Actual, slot.Rest, share)));
        }

        return new Step(null, moves.ToImmutable());
    }

    /// <summary>Undoes the last <see cref="Apply"/>: the wire is as it was before, with its history.</summary>
    /// <exception cref="InvalidOperationException">Nothing has been applied.</exception>
    public void Undo()
    {
        if (_arrangementBefore is null)
            throw new InvalidOperationException("There is no step to undo.");

        ForgetForeseen();
        PutBackWhole();
        Arrangement = _arrangementBefore;
    }

    private void KeepWhole()
    {
        _whole.Keep(_rod, _temperature);
        _slide.Keep();
    }

    // A step that found no equilibrium leaves no trace: shape, forces, history, slots and temperature are those
    // before.
    private void PutBackWhole()
    {
        Warm(_whole.PutBack(_rod));
        _slide.PutBack();
    }
}
