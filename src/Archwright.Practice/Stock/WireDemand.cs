using Archwright.Dentition.Teeth;
using Archwright.Practice.Ladders;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Treatment.Ladders;

namespace Archwright.Practice.Stock;

/// <summary>An arch that comes to a visit in the diary.</summary>
/// <param name="Day">When.</param>
/// <param name="Jaw">Which arch.</param>
/// <param name="WireId">The wire in it; empty when there is none.</param>
public sealed record ComingArch(DateOnly Day, Jaw Jaw, string WireId);

/// <summary>What was done at a signed visit with an arch.</summary>
/// <param name="Jaw">Which arch.</param>
/// <param name="Before">The wire found; empty when there was none.</param>
/// <param name="Fitted">The wire fitted; empty when no piece was taken.</param>
public sealed record PastChange(Jaw Jaw, string Before, string Fitted)
{
    /// <summary>What a signed visit says of its arches.</summary>
    public static IEnumerable<PastChange> Of(Visit visit) =>
        from jaw in Enum.GetValues<Jaw>()
        let arch = visit.Content.Arch(jaw)
        let decided = arch?.Decided
        where visit.State == VisitState.Signed && decided is not null
        select new PastChange(
            jaw, arch.Found?.WireId ?? "", decided.Act == WireAct.Fit ? decided.WireId : "");
}

/// <summary>A wire that an arch needs by its ladder.</summary>
/// <param name="Day">When.</param>
/// <param name="Jaw">Which arch.</param>
/// <param name="WireId">Which wire.</param>
public sealed record PlannedNeed(DateOnly Day, Jaw Jaw, string WireId)
{
    /// <summary>Whether a ladder says what an arch needs: it has a sequence, or is at its end.</summary>
    public static bool HasPlan(KeptLadder? ladder) => ladder is { IsAtWorkingWire: true } or { Sequences.Count: > 0 };

    /// <summary>The wires of a ladder that are still to be fitted: of the one with the fewest visits, or of the nearest
    /// where none keeps to the ceilings.</summary>
    /// <param name="jaw">Which arch.</param>
    /// <param name="ladder">Its ladder.</param>
    /// <param name="next">Day of the next visit; null where none is booked. Nothing is fitted before.</param>
    /// <param name="today">The day.</param>
    public static IEnumerable<PlannedNeed> Of(Jaw jaw, KeptLadder ladder, DateOnly? next, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(ladder);
        KeptSequence? sequence = ladder.Sequences.FirstOrDefault(one => one.Kinds.Contains(LadderKind.FewestVisits))
            ?? (ladder.Sequences.Count > 0 ? ladder.Sequences[0] : null);
        DateOnly first = next ?? today;
        return
            from wire in sequence?.Wires ?? Listing<KeptWire>.Empty
            let week = wire.FromWeek.Usual
            where !wire.IsInPlace && week is not null
            let day = ladder.Basis.On.AddDays((int)Math.Round(7 * week.Value))
            select new PlannedNeed(day < first ? first : day, jaw, wire.WireId);
    }
}

/// <summary>What a wire will be needed for, and what to order.</summary>
/// <param name="WireId">Which wire.</param>
/// <param name="Jaw">For which arch.</param>
/// <param name="Expected">Pieces expected to be needed.</param>
/// <param name="ByLadders">How many of them ladders name; the others are expected from what was fitted before.</param>
/// <param name="OnHand">Pieces that may be taken today.</param>
/// <param name="ToOrder">Pieces to order; 0 when there are enough.</param>
/// <param name="OrderBy">Last day to order, so that they are there in time; null when nothing is to be ordered.</param>
public sealed record DemandLine(
    string WireId, Jaw Jaw, double Expected, int ByLadders, int OnHand, int ToOrder, DateOnly? OrderBy);

/// <summary>What the next weeks will need.</summary>
/// <param name="Lines">By wire, what is to be ordered first on top.</param>
/// <param name="Arches">Arches without a ladder that come in these weeks.</param>
/// <param name="Unknown">Arches among them for which the records say too little.</param>
public sealed record WireDemand(IReadOnlyList<DemandLine> Lines, int Arches, int Unknown)
{
    /// <summary>Fewest past visits with the same wire in the same arch on which an expectation rests.</summary>
    public const int FewestCases = 3;

    /// <summary>What is needed: by the ladders of open arches, and for arches that have none by the diary and by what
    /// this practice fitted after the same wire before.</summary>
    /// <param name="planned">What ladders name in these weeks; a piece each.</param>
    /// <param name="coming">Arches without a ladder, of the visits in the diary.</param>
    /// <param name="past">What was done at signed visits.</param>
    /// <param name="lots">The shelf.</param>
    /// <param name="today">The day.</param>
    /// <param name="deliveryDays">From ordering to the shelf [days].</param>
    /// <remarks>An arch without a ladder that comes with a wire is expected to leave with each other one as often as
    /// arches with that wire did before. The sum of these shares is the mean of what will be taken, rounded to whole
    /// pieces to order. The reserve that the practice set at the lots is kept on top.</remarks>
    public static WireDemand Of(
        IReadOnlyCollection<PlannedNeed> planned, IReadOnlyCollection<ComingArch> coming,
        IReadOnlyCollection<PastChange> past, IReadOnlyCollection<StockLot> lots, DateOnly today, int deliveryDays)
    {
        ILookup<(Jaw, string), string> after = past.ToLookup(one => (one.Jaw, one.Before), one => one.Fitted);
        List<Need> needs = [.. planned.Select(one => new Need(one.Day, one.Jaw, one.WireId, 1, true))];
        int unknown = 0;
        foreach (ComingArch arch in coming)
        {
            string[] cases = [.. after[(arch.Jaw, arch.WireId)]];
            if (cases.Length < FewestCases)
            {
                unknown++;
                continue;
            }

            needs.AddRange(
                from fitted in cases
                where fitted.Length > 0
                group fitted by fitted into same
                select new Need(arch.Day, arch.Jaw, same.Key, (double)same.Count() / cases.Length, false));
        }

        DemandLine[] lines =
        [
            .. from one in needs
               orderby one.Day
               group one by (one.Wire, one.Jaw) into same
               let line = Line(same.Key.Wire, same.Key.Jaw, [.. same], lots, today, deliveryDays)
               orderby line.OrderBy ?? DateOnly.MaxValue, line.Expected descending, line.WireId
               select line,
        ];
        return new WireDemand(lines, coming.Count, unknown);
    }

    private static DemandLine Line(
        string wire, Jaw jaw, Need[] needed, IReadOnlyCollection<StockLot> lots, DateOnly today, int deliveryDays)
    {
        StockLot[] own = [.. lots.Where(one => one.WireId == wire && (one.Jaw is null || one.Jaw == jaw))];
        int onHand = own.Where(one => one.CanServe(jaw, today)).Sum(one => one.OnHand);
        int reserve = own.Select(one => one.ReorderAt).DefaultIfEmpty(0).Max();
        double expected = needed.Sum(one => one.Share);
        int byLadders = needed.Count(one => one.IsPlanned);
        int order = Pieces(expected) + reserve - onHand;
        if (order <= 0)
            return new DemandLine(wire, jaw, expected, byLadders, onHand, 0, null);

        // The day on which the shelf falls below the reserve; what has expired by then does not count.
        double taken = 0;
        DateOnly lacking = onHand < reserve ? today : needed[^1].Day;
        foreach (Need need in needed.Where(_ => onHand >= reserve))
        {
            taken += need.Share;
            if (own.Where(one => one.CanServe(jaw, need.Day)).Sum(one => one.OnHand) - Pieces(taken) < reserve)
            {
                lacking = need.Day;
                break;
            }
        }

        DateOnly by = lacking.AddDays(-deliveryDays);
        return new DemandLine(wire, jaw, expected, byLadders, onHand, order, by < today ? today : by);
    }

    // Half a piece and more is a whole one; sums of shares are exact to rounding only.
    private static int Pieces(double expected) => (int)Math.Floor(expected + 0.5 + 1e-9);

    private sealed record Need(DateOnly Day, Jaw Jaw, string Wire, double Share, bool IsPlanned);
}
