using System.Collections.Immutable;
using System.Diagnostics;
using Archwright.Cli.Running;
using Archwright.Dentition.Positions;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Solving;

/// <summary>Engages the wire of a case and goes through its steps.</summary>
internal static class CaseSolver
{
    /// <summary>Solves before the timed ones, so that the machine code is ready.</summary>
    private const int WarmUps = 8;

    /// <summary>Solves a case.</summary>
    /// <param name="file">The case.</param>
    /// <param name="repeats">Timed solves, cold and warm; 0 for none.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="Refusal">The arrangement is impossible; exit 2.</exception>
    public static SolvedCase Solve(CaseFile file, int repeats, CancellationToken cancellation)
    {
        Repeated? repeated = repeats > 0 ? Repeat(file.Arrangement, repeats, cancellation) : null;

        long start = Stopwatch.GetTimestamp();
        using Engager engager = Prepared(file.Arrangement);
        EngagementResult engaged = engager.Engage(cancellation);
        double elapsed = Stopwatch.GetElapsedTime(start).TotalMilliseconds;

        ImmutableArray<SlotFrame> actual = [.. file.Arrangement.Slots.Select(slot => slot.Actual)];
        SolvedState first = State(file, engaged, actual);
        EngagementResult? working = engaged.Converged && IsDisplaced(file.Arrangement)
            ? engager.Working(cancellation)
            : null;
        return new SolvedCase(file, first, Steps(file, engager, first, cancellation), elapsed, repeated)
        {
            Working = working is { Converged: true } ? working : null,
        };
    }

    private static bool IsDisplaced(Arrangement arrangement) =>
        arrangement.Slots.Any(slot => slot.Actual != slot.Rest);

    private static ImmutableArray<SolvedState> Steps(
        CaseFile file, Engager engager, SolvedState state, CancellationToken cancellation)
    {
        var steps = ImmutableArray.CreateBuilder<SolvedState>();
        foreach (Step step in file.Then)
        {
            if (!state.Result.Converged)
                break; // there is nothing to go on from

            ImmutableArray<SlotFrame> actual = state.Actual;
            foreach ((int slot, SlotFrame frame) in step.Moves)
                actual = actual.SetItem(slot, frame);

            state = State(file, engager.Apply(step, cancellation), actual);
            steps.Add(state);
        }

        return steps.ToImmutable();
    }

    private static SolvedState State(CaseFile file, EngagementResult result, ImmutableArray<SlotFrame> actual)
    {
        ImmutableArray<ClinicalLoad> loads =
            [.. result.Slots.Select((load, i) => file.Axes[i].Resolve(actual[i], load.OnTooth))];
        return new SolvedState(result, actual, loads);
    }

    /// <summary>An engager for a case.</summary>
    /// <exception cref="Refusal">The arrangement is impossible; exit 2.</exception>
    internal static Engager Prepared(Arrangement arrangement)
    {
        try
        {
            return new Engager(arrangement);
        }
        catch (ArgumentException fault)
        {
            throw new Refusal("the case cannot be set up: " + Plainly.Message(fault),
                "Check the slots and the wire of the case.");
        }
    }

    /// <summary>A case engaged, for its result alone.</summary>
    /// <exception cref="Refusal">The arrangement is impossible; exit 2.</exception>
    internal static EngagementResult EngageOne(Arrangement arrangement, CancellationToken cancellation)
    {
        using Engager engager = Prepared(arrangement);
        return engager.Engage(cancellation);
    }

    // Cold: a new engager from the rest shape. Warm: the engaged wire follows its displaced slots a fiftieth of their
    // way toward rest and back again, as in the next step of a forecast.
    private static Repeated Repeat(Arrangement arrangement, int repeats, CancellationToken cancellation)
    {
        for (int i = 0; i < WarmUps; i++)
            EngageOne(arrangement, cancellation);

        var cold = new double[repeats];
        for (int i = 0; i < repeats; i++)
        {
            long start = Stopwatch.GetTimestamp();
            EngageOne(arrangement, cancellation);
            cold[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        using Engager engager = Prepared(arrangement);
        if (!engager.Engage(cancellation).Converged)
            return new Repeated(repeats, Median(cold), double.NaN);

        (Step Away, Step Back) steps = Relief(arrangement);
        for (int i = 0; i < WarmUps; i++)
            engager.Apply(i % 2 == 0 ? steps.Away : steps.Back, cancellation);

        var warm = new double[repeats];
        for (int i = 0; i < repeats; i++)
        {
            long start = Stopwatch.GetTimestamp();
            engager.Apply(i % 2 == 0 ? steps.Away : steps.Back, cancellation);
            warm[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        return new Repeated(repeats, Median(cold), Median(warm));
    }

    /// <summary>Every displaced slot a fiftieth of its way toward rest, and back; where none is displaced, the middle
    /// slot 0.02 mm outward, and back.</summary>
    internal static (Step Away, Step Back) Relief(Arrangement arrangement)
    {
        var away = ImmutableArray.CreateBuilder<(int, SlotFrame)>();
        var back = ImmutableArray.CreateBuilder<(int, SlotFrame)>();
        for (int i = 0; i < arrangement.Slots.Length; i++)
        {
            Slot slot = arrangement.Slots[i];
            ClinicalOffset offset = ClinicalAxes.Bench.Between(slot.Rest, slot.Actual);
            if (slot.Actual == slot.Rest)
                continue;

            const double Left = 0.98;
            var less = new ClinicalOffset(
                Left * offset.Labial, Left * offset.Occlusal, Left * offset.Mesial,
                Left * offset.Rotation, Left * offset.Tip, Left * offset.Torque);
            away.Add((i, ClinicalAxes.Bench.Displaced(slot.Rest, less)));
            back.Add((i, slot.Actual));
        }

        if (away.Count == 0)
        {
            int middle = arrangement.Slots.Length / 2;
            SlotFrame there = arrangement.Slots[middle].Actual;
            away.Add((middle, there.Moved(0.02 * there.Outward, default)));
            back.Add((middle, there));
        }

        return (new Step(null, away.ToImmutable()), new Step(null, back.ToImmutable()));
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
