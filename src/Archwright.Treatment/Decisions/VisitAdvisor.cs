using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Sections;
using Archwright.Treatment.Decisions.Rules;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions;

/// <summary>Answers what to do at a visit: computes what the wires do, and judges it by the policy.</summary>
/// <remarks>
/// Computed is what can matter. The mechanics is asked first (<see cref="WireSearch"/>); only wires that it lets pass
/// are followed to the next visit, the most promising first and no more than the policy says; a wire that would rank
/// below the best so far, uncertainty included, even if it delivered all movement, is not followed either. The same
/// question gets the same answer whatever the number of threads.
/// </remarks>
public static class VisitAdvisor
{
    private const int WiresAtOnce = 4;
    private const int WiresToLoosen = 4;

    /// <summary>The advice.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="options">By which policy, and in which words.</param>
    /// <param name="progress">Told of wires done; from any thread.</param>
    /// <param name="cancellation">Gives up between wires and inside an engagement or forecast.</param>
    /// <exception cref="ArgumentException">The question does not hold together; the message says how.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static VisitAdvice Advise(
        VisitQuestion question,
        VisitOptions? options = null,
        IProgress<VisitProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        options ??= new VisitOptions();
        ArchFigures figures = Compute(question, options, progress, cancellation);
        return VisitJudge.Judge(question, figures, options.Policy, options.Style);
    }

    /// <summary>The figures alone, to be judged by <see cref="VisitJudge"/>.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="options">By which policy wires are left out early.</param>
    /// <param name="progress">Told of wires done; from any thread.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The question does not hold together; the message says how.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static ArchFigures Compute(
        VisitQuestion question,
        VisitOptions options,
        IProgress<VisitProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(options);
        question.Check();
        return new Computation(question, options, progress, cancellation).Run();
    }

    /// <summary>How far a wire is looked at: the usual interval of the one in place, or of a first round wire
    /// [weeks].</summary>
    public static int Horizon(VisitQuestion question, VisitOptions options) => options.Weeks
        ?? options.Policy.Interval(question.Present is { } present
            ? Intervals.KindOf(present.Wire) : IntervalKind.TransformingRound).Usual;

    private sealed class Computation(
        VisitQuestion question, VisitOptions options, IProgress<VisitProgress>? progress,
        CancellationToken cancellation)
    {
        private readonly WireEvaluator _evaluator = new(question.Arch);
        private readonly int _weeks = Horizon(question, options);
        private int _done;
        private int _of;

        public ArchFigures Run()
        {
            CatalogueWire[] choice =
            [
                .. question.Choice.DistinctBy(wire => wire.Id).Where(wire => wire.Id != question.Present?.Wire.Id),
            ];
            _of = choice.Length + 1;
            WireFigures? present = question.Present is { } inPlace
                ? _evaluator.InPlace(inPlace, question.Rate, _weeks, cancellation)
                : null;
            Done();
            var view = new VisitView(question, options.Policy, options.Style, present);
            var search = new WireSearch(view, options, cancellation);
            ImmutableArray<WireFigures> wires = Loosened(search.Fitted(_evaluator, choice, Done), view);
            wires = Followed(wires, view, search);
            return new ArchFigures
            {
                Weeks = _weeks, Present = present, Wires = wires,
                BeyondStock = question.ChoiceIsStock && options.LooksBeyondStock
                    && !wires.Append(present).OfType<WireFigures>().Any(wire => VisitJudge.IsAllowed(wire, view))
                        ? BeyondStock(choice, view, search) : [],
            };
        }

        // Nothing at hand suits: would anything of the catalogue?
        private ImmutableArray<WireFigures> BeyondStock(CatalogueWire[] choice, VisitView view, WireSearch search)
        {
            CatalogueWire[] others =
            [
                .. WireCatalogue.Default.Wires.Where(wire => wire.Id != question.Present?.Wire.Id
                    && choice.All(one => one.Id != wire.Id)),
            ];
            _of += others.Length;
            return Loosened(search.Fitted(_evaluator, others, Done), view);
        }

        // Only where no wire goes in with every tooth tied as it is: the gentlest few with some teeth let go.
        private ImmutableArray<WireFigures> Loosened(ImmutableArray<WireFigures> wires, VisitView view)
        {
            if (options.Policy.PartialTeeth == 0
                || wires.Append(view.Present).OfType<WireFigures>().Any(wire => VisitJudge.IsAllowed(wire, view)))
            {
                return wires;
            }

            int[] gentlest =
            [
                .. Enumerable.Range(0, wires.Length)
                    .Where(i => wires[i].Engaged && VisitJudge.MayBeTied(wires[i], view))
                    .OrderBy(i => WithinCeilings.Nearest(wires[i], view)?.Ratio ?? 0).ThenBy(i => i)
                    .DistinctBy(i => (wires[i].FittingForce, wires[i].MaxStrain)).Take(WiresToLoosen),
            ];
            _of += gentlest.Length;
            var found = wires.ToBuilder();
            foreach ((int i, WireFigures? loosened) in gentlest.Zip(Each(gentlest, i =>
                PartialTies.Find(wires[i].Wire, wires[i], view, cancellation))))
            {
                found[i] = loosened ?? wires[i];
            }

            return found.ToImmutable();
        }

        private WireFigures?[] Each(int[] which, Func<int, WireFigures?> find)
        {
            var found = new WireFigures?[which.Length];
            Parallel.For(
                0, which.Length,
                new ParallelOptions
                {
                    CancellationToken = cancellation, MaxDegreeOfParallelism = options.Threads ?? -1,
                },
                i =>
                {
                    found[i] = find(which[i]);
                    Done();
                });
            return found;
        }

        private ImmutableArray<WireFigures> Followed(
            ImmutableArray<WireFigures> wires, VisitView view, WireSearch search)
        {
            if (view.IsAligned && !options.Exhaustive)
                return wires; // nothing is left to deliver, so nothing is to be foreseen

            var found = wires.ToBuilder();
            double best = double.NegativeInfinity;
            Queue<int> open = new(Promising(wires, view));
            _of += open.Count;
            while (open.Count > 0)
            {
                List<int> batch = [];
                while (batch.Count < WiresAtOnce && open.TryDequeue(out int i))
                {
                    if (options.Exhaustive || Scores.Bound(wires[i], view) >= best)
                        batch.Add(i);
                    else
                        Done();
                }

                ImmutableArray<WireFigures> followed = search.Followed(
                    [.. batch.Select(i => wires[i])], Follow, Done);
                foreach ((int i, WireFigures wire) in batch.Zip(followed))
                {
                    found[i] = wire;
                    if (Scores.Of(wire, view) is { } score)
                        best = Math.Max(best, score.Value - score.Uncertainty);
                }
            }

            return found.ToImmutable();
        }

        // Where the wire in place may stay, a lighter one comes last. Wires that answer alike are followed at one cost.
        private IEnumerable<int> Promising(ImmutableArray<WireFigures> wires, VisitView view)
        {
            bool mayStay = view.Present is { } present && VisitJudge.IsAllowed(present, view);
            int[] order =
            [
                .. Enumerable.Range(0, wires.Length).Where(i => VisitJudge.IsAllowed(wires[i], view))
                    .OrderByDescending(i => !mayStay || view.IsHeavierThanPresent(wires[i].Wire))
                    .ThenByDescending(i => Scores.Bound(wires[i], view)).ThenBy(i => i),
            ];
            if (options.Exhaustive)
                return order;

            var alike = order.Select(i => Alike(wires[i])).Distinct().Take(options.Policy.FollowedWires).ToHashSet();
            return order.Where(i => alike.Contains(Alike(wires[i])));
        }

        private static (double, double, Section, string) Alike(WireFigures wire) => (
            wire.Wire.Wire.Alloy.Young, wire.Wire.Wire.Alloy.Shear, wire.Wire.Section,
            wire.IsWholeLaw || !wire.TiedAtDistance.IsEmpty ? wire.Wire.Id : "");

        private WireFigures Follow(WireFigures wire)
        {
            WireEvaluator evaluator = wire.TiedAtDistance.IsEmpty ? _evaluator
                : new WireEvaluator(question.Arch.Loosened(wire.TiedAtDistance, wire.Pull));
            return evaluator.Followed(wire, question.Rate, _weeks, cancellation);
        }

        private void Done() => progress?.Report(new VisitProgress(Interlocked.Increment(ref _done), _of));
    }
}
