using Archwright.Dentition.Catalogue;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Tests.Leaflets;

/// <summary>Visits of every kind that a leaflet may have to tell of.</summary>
internal static class LeafletSamples
{
    /// <summary>Found and decided wires: every kind of change, every alloy.</summary>
    public static IReadOnlyList<(string? Found, Decision Decided, WireChange Change)> Decisions { get; } =
    [
        (null, Fit("niti-014"), WireChange.First),
        ("niti-014", new Decision(WireAct.Keep, "niti-014", null, ""), WireChange.Kept),
        ("niti-014", Fit("niti-018"), WireChange.Stronger),
        ("ss-019x025", Fit("niti-016"), WireChange.Lighter),
        ("niti-014", Fit("niti-014"), WireChange.Same),
        ("our own wire", Fit("niti-014"), WireChange.Other),
        ("niti-014", Fit("our own wire"), WireChange.Other),
        ("niti-014", new Decision(WireAct.LeaveOut, "", null, ""), WireChange.None),
        .. WireCatalogue.Default.Alloys.SelectMany(alloy => WireCatalogue.Default.Wires
            .Where(wire => wire.Alloy.Id == alloy.Id).DistinctBy(wire => wire.Section.IsRound))
            .Select(wire => ((string?)null, Fit(wire.Id), WireChange.First)),
    ];

    /// <summary>Every decision on one arch, and every pair of neighbours on both.</summary>
    public static IEnumerable<Visit> Visits()
    {
        for (int i = 0; i < Decisions.Count; i++)
        {
            ArchVisit one = Arch(i);
            ArchVisit other = Arch((i + 1) % Decisions.Count);
            yield return Visit(new VisitContent { Upper = one, NextInWeeks = 6 });
            yield return Visit(new VisitContent { Upper = one, Lower = other, NextInWeeks = 10 });
        }
    }

    public static Visit Visit(VisitContent content) => Samples.Visit(Guid.NewGuid(), content);

    public static ArchVisit Arch(int index) => new()
    {
        Found = Decisions[index].Found is { } wire ? new WireFound(wire, Samples.Today.AddDays(-42)) : null,
        Decided = Decisions[index].Decided,
    };

    private static Decision Fit(string wire) => new(WireAct.Fit, wire, Guid.NewGuid(), "");
}
