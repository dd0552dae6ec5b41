using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using Archwright.Dentition.Catalogue;

namespace Archwright.Treatment.Decisions;

/// <summary>Engages many wires on one arch and leaves out those that need not be tried.</summary>
/// <remarks>
/// Of one alloy, a section that holds another inside it is stiffer in bending and twist and has less play: where the
/// smaller is ruled out by the mechanics (does not go in, takes a set, loads a tooth at first above what even a brief
/// load may be), the larger is too. A rigorous proof would need every force to grow with stiffness; what is certain is
/// that the stored energy does. Alloys are searched side by side and each from thin to thick, so that the answer does
/// not depend on the number of threads.
/// </remarks>
internal sealed class WireSearch(VisitView view, VisitOptions options, CancellationToken cancellation)
{
    /// <summary>Figures of all wires, in the order given.</summary>
    public ImmutableArray<WireFigures> Fitted(
        WireEvaluator evaluator, IReadOnlyList<CatalogueWire> wires, Action? done = null)
    {
        var found = new WireFigures[wires.Count];
        int[][] alloys =
        [
            .. Enumerable.Range(0, wires.Count).GroupBy(i => wires[i].Alloy.Id)
                .Select(group => group.OrderBy(i => WireSize.Stiffness(wires[i])).ThenBy(i => i).ToArray()),
        ];
        InParallel(alloys.Length, a =>
        {
            List<CatalogueWire> ruledOut = [];
            foreach (int i in alloys[a])
            {
                found[i] = One(evaluator, wires[i], ruledOut);
                if (!found[i].IsUnanswered && VisitRulesSay(found[i]))
                    ruledOut.Add(wires[i]);
                done?.Invoke();
            }
        });
        return [.. found];
    }

    /// <summary>Follows wires to the next visit, in their order.</summary>
    public ImmutableArray<WireFigures> Followed(
        IReadOnlyList<WireFigures> wires, Func<WireFigures, WireFigures> follow, Action? done = null)
    {
        var found = new WireFigures[wires.Count];
        InParallel(wires.Count, i =>
        {
            found[i] = follow(wires[i]);
            done?.Invoke();
        });
        return [.. found];
    }

    private WireFigures One(WireEvaluator evaluator, CatalogueWire wire, List<CatalogueWire> ruledOut)
    {
        cancellation.ThrowIfCancellationRequested();
        CatalogueWire? thinner = options.Exhaustive ? null
            : ruledOut.FirstOrDefault(one => WireSize.Contains(wire.Section, one.Section));
        return thinner is null
            ? evaluator.Fitted(wire, cancellation)
            : new WireFigures { Wire = wire, Engaged = false, ThickerThan = thinner.Id };
    }

    private bool VisitRulesSay(WireFigures wire) => Rules.VisitRules.KeepsThickerOut(wire, view);

    // A failure is passed on as it is, not wrapped.
    private void InParallel(int count, Action<int> work)
    {
        var how = new ParallelOptions
        {
            CancellationToken = cancellation, MaxDegreeOfParallelism = options.Threads ?? -1,
        };
        try
        {
            Parallel.For(0, count, how, work);
        }
        catch (AggregateException several)
        {
            cancellation.ThrowIfCancellationRequested();
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }
}
