using Archwright.Dentition.Teeth;
using Archwright.Practice.Ladders;
using Archwright.Practice.Values;
using Archwright.Treatment.Ladders;

namespace Archwright.Practice.Tests.Ladders;

/// <summary>A ladder that nobody computed, to be kept and shown.</summary>
internal static class KeptSamples
{
    public static KeptLadder Ladder(LadderBasis basis) => new()
    {
        Basis = basis,
        WorkingWire = "ss-019x025",
        WorkingIsAssumed = true,
        AgainstPresent = Listing<string>.Of(["It stays bent."]),
        Sequences = Listing<KeptSequence>.Of(
        [
            new KeptSequence
            {
                Kinds = Listing<LadderKind>.Of([LadderKind.FewestVisits, LadderKind.Fastest]),
                TiesWith = Listing<LadderKind>.Of([LadderKind.Gentlest]),
                Wires = Listing<KeptWire>.Of(
                [
                    Wire("niti-014", 0, new LadderSpread(0, 0, 0)) with { IsInPlace = true, ComfortIndex = null },
                    Wire("ss-019x025", 2, new LadderSpread(6, 12, null)) with
                    {
                        Interval = 0, Against = Listing<string>.Of(["Loads a tooth above its ceiling."]),
                    },
                ]),
                Visits = new LadderSpread(1, 2, null),
                Weeks = new LadderSpread(6, 12, null),
                ComfortIndex = 3.25,
                LargestForceN = 1.5,
                IsProven = false,
            },
        ]),
        Cautions = Listing<string>.Of(["A plan to talk about."]),
        Missing = Listing<string>.Of(["Which alerts are there?"]),
        PolicyVersion = "test-1",
        ProgramVersion = "0",
        ComputedAt = Samples.Now,
    };

    private static KeptWire Wire(string id, int visit, LadderSpread from) => new()
    {
        WireId = id,
        IsInPlace = false,
        AtVisit = visit,
        FromWeek = from,
        Weeks = new LadderSpread(6, 12, null),
        Interval = 6,
        LargestForceN = 1.5,
        LargestForceTooth = "13",
        ComfortIndex = 3.25,
        PartialTies = Listing<ToothNumber>.Of([ToothNumber.FromIso(13)]),
        Twins = Listing<string>.Of(["niti-014s"]),
    };
}
