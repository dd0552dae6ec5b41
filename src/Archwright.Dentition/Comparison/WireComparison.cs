using System.Runtime.ExceptionServices;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;

namespace Archwright.Dentition.Comparison;

/// <summary>Engages one wire after another on the same arch and ranks them.</summary>
/// <remarks>
/// The ranking, best first: wires that go in, stay elastic and keep every tooth within its ceiling, and among them
/// the stiffest first, since it takes the arch farthest toward its working wire; then wires that load a tooth above
/// its ceiling, first those that leave the fewest teeth above it when working (where that is known), then the fewest on
/// engagement, then the least excess; then wires that would bend for good, the least overbent first; then wires that
/// cannot be engaged. An alloy that transforms is engaged with its whole law where its
/// strain asks for it; it does not bend for good when it passes its limit, so it stays with its equals. Where the whole
/// law finds no answer its force is that of the initial modulus, overestimated, and its sentence says so. Alloys that
/// yield are engaged as elastic by <c>Run</c>: where they would yield, their verdict says so, and the force is an upper
/// bound; <c>AtWork</c> engages them with their whole law there, and knows the set.
/// Equal wires keep the order in which they were given, whatever the number of threads.
/// </remarks>
public static class WireComparison
{
    /// <summary>Compares wires on an arch.</summary>
    /// <param name="arch">The arch; its wire is replaced by each candidate.</param>
    /// <param name="axes">Clinical axes of each slot, in order.</param>
    /// <param name="candidates">The wires to try.</param>
    /// <param name="ceilings">What each tooth may bear; slots are told by the ISO number in their label, and a label
    /// that is no tooth has no ceiling.</param>
    /// <param name="progress">Told the number of wires done, each number once; from any thread.</param>
    /// <param name="cancellation">Gives up between wires and inside an engagement.</param>
    /// <returns>One a candidate, in rank order.</returns>
    /// <exception cref="ArgumentException">Slots and axes are not as many, or the arrangement is impossible for any
    /// wire.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static IReadOnlyList<ComparedWire> Run(
        Arrangement arch,
        IReadOnlyList<ClinicalAxes> axes,
        IReadOnlyList<CatalogueWire> candidates,
        ForceCeilings ceilings,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default) => Run(
            arch, axes, candidates, ceilings, progress,
            EngagedByMechanics, cancellation);

    internal static IReadOnlyList<ComparedWire> Run(
        Arrangement arch,
        IReadOnlyList<ClinicalAxes> axes,
        IReadOnlyList<CatalogueWire> candidates,
        ForceCeilings ceilings,
        IProgress<int>? progress,
        Engage engage,
        CancellationToken cancellation)
    {
        var judge = new WireJudge(arch, axes, ceilings);
        return WireRanking.InOrder(Each(
            arch, judge, candidates, wire => wire, engage,
            (wire, near) => TryWire(arch, wire, judge, near, engage, cancellation), progress, cancellation));
    }

    /// <summary>Compares wires on an arch with every force figure in two forms, on engagement and working, and with the
    /// permanent set of those that yield; takes about three times as long as <c>Run</c>.</summary>
    /// <param name="arch">The arch; its wire is replaced by each candidate.</param>
    /// <param name="axes">Clinical axes of each slot, in order.</param>
    /// <param name="candidates">The wires to try.</param>
    /// <param name="ceilings">What each tooth may bear.</param>
    /// <param name="progress">Told the number of wires done, each number once; from any thread.</param>
    /// <param name="cancellation">Gives up between wires and inside an engagement.</param>
    /// <returns>One a candidate, in rank order.</returns>
    /// <exception cref="ArgumentException">Slots and axes are not as many, or the arrangement is impossible for any
    /// wire.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static IReadOnlyList<ComparedWire> AtWork(
        Arrangement arch,
        IReadOnlyList<ClinicalAxes> axes,
        IReadOnlyList<CatalogueWire> candidates,
        ForceCeilings ceilings,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default) => AtWork(
            arch, axes, candidates, ceilings, progress,
            EngagedByMechanics, cancellation);

    internal static IReadOnlyList<ComparedWire> AtWork(
        Arrangement arch,
        IReadOnlyList<ClinicalAxes> axes,
        IReadOnlyList<CatalogueWire> candidates,
        ForceCeilings ceilings,
        IProgress<int>? progress,
        Engage engage,
        CancellationToken cancellation)
    {
        var judge = new WireJudge(arch, axes, ceilings);
        var working = new WorkingFigures(arch, judge, engage);
        return WireRanking.InOrder(Each(
            arch, judge, candidates, wire => wire, engage, (wire, near) => working.Of(wire, near, cancellation),
            progress, cancellation));
    }

    /// <summary>The same wires with <see cref="ComparedWire.Lasting"/>: what each of those that go in pushes with as
    /// the teeth come in.</summary>
    /// <param name="compared">Wires that were compared on this arch.</param>
    /// <param name="arch">The arch.</param>
    /// <param name="axes">Clinical axes of each slot, in order.</param>
    /// <param name="progress">Told the number of wires done, each number once; from any thread.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>In the same order.</returns>
    /// <exception cref="ArgumentException">Slots and axes are not as many.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static IReadOnlyList<ComparedWire> WithLasting(
        IReadOnlyList<ComparedWire> compared,
        Arrangement arch,
        IReadOnlyList<ClinicalAxes> axes,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default)
    {
        var judge = new WireJudge(arch, axes, ForceCeilings.None);
        var lasting = new LastingForce(arch, judge, EngagedByMechanics);
        return Each(
            arch, judge, compared, wire => wire.Wire, EngagedByMechanics,
            (wire, near) => wire with { Lasting = lasting.Of(wire, near, cancellation) }, progress, cancellation);
    }

    private static EngagedWire EngagedByMechanics(
        Arrangement one, IEngagedWire? near, CancellationToken cancellation) => new(one, near, cancellation);

    // Wires of one section start where one of it rests that is elastic and of no alloy in particular: so to the last
    // digit it does not matter which others are compared, nor in which order.
    private static readonly LinearElastic AnyAlloy = new(young: 100e3, poisson: 0.3);

    private static ComparedWire[] Each<T>(
        Arrangement arch,
        WireJudge judge,
        IReadOnlyList<T> items,
        Func<T, CatalogueWire> wireOf,
        Engage engage,
        Func<T, IEngagedWire?, ComparedWire> compare,
        IProgress<int>? progress,
        CancellationToken cancellation)
    {
        var compared = new ComparedWire[items.Count];
        int done = 0;
        int[][] alike = [.. Enumerable.Range(0, items.Count).GroupBy(i => wireOf(items[i]).Section)
            .Select(group => group.ToArray())];
        InParallel(
            alike.Length,
            group =>
            {
                CatalogueWire first = wireOf(items[alike[group][0]]);
                using IEngagedWire? near = judge.TooThick(first) is null
                    ? engage(arch with { Wire = new Wire(first.Section, AnyAlloy) }, near: null, cancellation)
                    : null;
                foreach (int i in alike[group])
                {
                    compared[i] = compare(items[i], near);
                    progress?.Report(Interlocked.Increment(ref done));
                }
            },
            cancellation);
        return compared;
    }

    internal static ComparedWire TryWire(
        Arrangement arch, CatalogueWire wire, WireJudge judge, IEngagedWire? near, Engage engage,
        CancellationToken cancellation)
    {
        if (judge.TooThick(wire) is string reason)
            return WireJudge.NotTried(wire, reason);

        using IEngagedWire first = engage(arch with { Wire = wire.Wire }, near, cancellation);
        EngagementResult elastic = first.Result;
        if (!elastic.Converged || !Transforms(wire, elastic.LargestStrain, arch.Temperature))
            return judge.Tried(wire, elastic);

        // The elastic answer stays where the whole law finds none: it is too high, and says so.
        using IEngagedWire second = engage(arch with { Wire = wire.WholeWire }, first, cancellation);
        EngagementResult whole = second.Result;
        return whole.Converged ? judge.Tried(wire, whole) with { IsWholeLaw = true } : judge.Tried(wire, elastic);
    }

    // Below the line the whole law is the elastic one, and the answer is there already. Some room is left for the shear
    // that goes with torque, which the largest strain does not hold.
    internal static bool Transforms(CatalogueWire wire, double strain, double temperature) =>
        wire.Alloy.WholeLaw is Superelastic { Figures: { } law }
        && strain > RoomForShear / law.YoungAustenite * (law.ForwardStart
            + law.ClausiusClapeyron * (temperature - law.ReferenceTemperature));

    private const double RoomForShear = 0.7;

    internal static EngagementResult EngageOne(Arrangement one, CancellationToken cancellation)
    {
        using EngagedWire wire = EngagedByMechanics(one, near: null, cancellation);
        return wire.Result;
    }

    // A failure is passed on as it is, not wrapped.
    private static void InParallel(int count, Action<int> work, CancellationToken cancellation)
    {
        try
        {
            Parallel.For(0, count, new ParallelOptions { CancellationToken = cancellation }, work);
        }
        catch (AggregateException several)
        {
            cancellation.ThrowIfCancellationRequested();
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }
}
