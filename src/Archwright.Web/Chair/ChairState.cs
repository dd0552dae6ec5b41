using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Stock;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Drawing;

namespace Archwright.Web.Chair;

/// <summary>One visit on one screen: what is noted, what is chosen, what can be undone. It knows neither database nor
/// browser.</summary>
public sealed class ChairState
{
    private const int MostUndone = 100;

    private readonly List<VisitContent> undone = [];
    private readonly Visit? last;
    private VisitContent? prepared; // what stood there before anybody did anything; null once something was saved
    private (ToothNumber Tooth, ToothOffset From, VisitContent Before)? dragged;

    /// <summary>Opens a visit.</summary>
    /// <param name="file">The patient.</param>
    /// <param name="visit">Which visit.</param>
    /// <param name="lots">The shelf.</param>
    public ChairState(PatientFile file, Visit visit, IReadOnlyList<StockLot> lots)
    {
        File = file;
        Visit = visit;
        Lots = lots;
        last = file.Visits.LastOrDefault(one => one.State == VisitState.Signed && one.Day < visit.Day);
        Treatments = [.. file.Treatments.Where(one => one.EndedOn is null).OrderBy(one => one.Jaw)];
        Saved = visit.Content;
        Content = visit.State == VisitState.Signed ? visit.Content : Prepared(visit.Content);
        prepared = Content;
        Jaw = Treatments.Count > 0 ? Treatments[0].Jaw : Jaw.Upper;
    }

    /// <summary>The patient's file.</summary>
    public PatientFile File { get; }

    /// <summary>The visit as it was last read or saved.</summary>
    public Visit Visit { get; private set; }

    /// <summary>The shelf.</summary>
    public IReadOnlyList<StockLot> Lots { get; }

    /// <summary>Arches with an appliance, upper first.</summary>
    public IReadOnlyList<ArchTreatment> Treatments { get; }

    /// <summary>Content in the database.</summary>
    public VisitContent Saved { get; private set; }

    /// <summary>Content on the screen.</summary>
    public VisitContent Content { get; private set; }

    /// <summary>The arch on the screen.</summary>
    public Jaw Jaw { get; private set; }

    /// <summary>The tooth that was tapped; null when none is.</summary>
    public ToothNumber? Selected { get; set; }

    /// <summary>The wire whose forces are shown; empty for the one in place.</summary>
    public string Shown { get; set; } = "";

    /// <summary>True once the visit is signed: it can be read and amended only.</summary>
    public bool IsSigned => Visit.State == VisitState.Signed;

    /// <summary>True when something that was done on the screen is not in the database yet. To open a visit changes
    /// nothing.</summary>
    public bool IsDirty => !IsSigned && Content != Saved && Content != prepared;

    /// <summary>True when something can be taken back.</summary>
    public bool CanUndo => undone.Count > 0 && !IsSigned;

    /// <summary>The treatment of the arch on the screen; null when it carries no appliance.</summary>
    public ArchTreatment? Treatment => Treatments.FirstOrDefault(one => one.Jaw == Jaw);

    /// <summary>What is noted of the arch on the screen.</summary>
    public ArchVisit Arch => Content.Arch(Jaw) ?? ArchVisit.Blank;

    /// <summary>What is noted of places without a bracket on the arch on the screen.</summary>
    public ToothMap<BareTooth> Bare => Arch.Bare ?? ToothMap<BareTooth>.Empty;

    /// <summary>Teeth of the arch on the screen that carry a bracket today.</summary>
    public Listing<ToothNumber> Bonded => Treatment?.Appliance.BondedBut(Arch.Bare) ?? Listing<ToothNumber>.Empty;

    /// <summary>Positions to draw: those of today, or the last known ones, which the screen then calls so.</summary>
    public ArchSeen? Drawn => Arch.Seen ?? LastSeen;

    /// <summary>Positions of an earlier day, for "as last seen"; null when none are on record.</summary>
    public ArchSeen? LastSeen => File.Visits
        .Where(one => one.State == VisitState.Signed && one.Day < Visit.Day)
        .Select(one => one.Content.Arch(Jaw)?.Seen).LastOrDefault(seen => seen is not null)
        ?? (Treatment is { } treatment
            ? new ArchSeen(treatment.BegunOn, PositionsFrom.Measured, treatment.StartedFrom)
            : null);

    /// <summary>True when the last visit left positions and a wire from which today can be forecast.</summary>
    public bool HasForecast => last is not null && Treatment is { } treatment
        && PastInputs.After(last, treatment) is not null;

    /// <summary>Where the teeth of an arch are expected on the day of this visit, from the last one on.</summary>
    /// <param name="jaw">The arch.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">Nothing can be forecast; the message says why.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public ToothMap<ToothOffset> Expected(Jaw jaw, CancellationToken cancellation = default)
    {
        ArchTreatment? treatment = Treatments.FirstOrDefault(one => one.Jaw == jaw);
        PastInputs? past = last is null || treatment is null ? null : PastInputs.After(last, treatment);
        if (last is null || past is null)
            throw new ArgumentException("The last visit left no positions, or no wire.", nameof(jaw));

        int weeks = (Visit.Day.DayNumber - last.Day.DayNumber) / 7;
        return past.Expected(weeks, File.Patient.AgeOn(last.Day), cancellation).Rounded();
    }

    /// <summary>True when the positions on the screen were seen on the day of the visit.</summary>
    public bool IsSeenToday => Arch.Seen?.On == Visit.Day;

    /// <summary>The wire whose forces are shown: the one tapped, or the one decided, found or advised.</summary>
    public string ShownWire => FirstKnown(
        Shown,
        Arch.Decided?.WireId,
        Arch.Found?.WireId,
        Arch.Advised?.WireId,
        Arch.Advised is { Options: { Count: > 0 } options } ? options[0].WireId : null);

    /// <summary>What still hinders the signature.</summary>
    public IReadOnlyList<RuleBrokenException> Missing =>
        SigningChecks.Missing(Visit.Day, Content, File.Patient, [.. Treatments]);

    /// <summary>The lot that a wire would be taken from: the first to expire; null when none can serve.</summary>
    public StockLot? LotOf(string wireId) => Lots.Where(lot => lot.WireId == wireId && lot.CanServe(Jaw, Visit.Day))
        .OrderBy(lot => lot.Expires ?? DateOnly.MaxValue).FirstOrDefault();

    /// <summary>Pieces of a wire for the arch on the screen.</summary>
    public int PiecesOf(string wireId) =>
        Lots.Where(lot => lot.WireId == wireId && lot.CanServe(Jaw, Visit.Day)).Sum(lot => lot.OnHand);

    /// <summary>What an advice for the arch on the screen rests on; null when it carries no appliance or nobody has
    /// looked.</summary>
    public AdviceInputs? Inputs => Treatment is { } treatment && Drawn is { } seen
        ? new AdviceInputs
        {
            Jaw = Jaw,
            SlotCode = treatment.Appliance.SlotCode,
            Bonded = Bonded,
            Bare = Bare,
            Positions = seen.Positions,
            Ties = Arch.Ties,
            Ends = Arch.FreerEnd,
            PresentWire = Arch.Found?.WireId ?? "",
            PresentIsKnown = Arch.Found is not null || treatment.BegunOn == Visit.Day,
            PresentWeeks = Arch.Found?.WeeksOn(Visit.Day) ?? 0,
            WorkingWire = treatment.Appliance.WorkingWire,
            Discomfort = Content.Discomfort?.Worst,
            AgeYears = File.Patient.AgeOn(Visit.Day),
            Stock = Listing<string>.Of(Candidates()),
            Alerts = Listing<AlertKind>.Of(File.Patient.AlertsOn(Visit.Day).Select(alert => alert.Kind).Distinct()),
        }
        : null;

    /// <summary>True when an advice is there that rests on another discomfort than is noted now.</summary>
    public bool IsAdviceOvertaken => !IsSigned && Arch.Advised is { } advised
        && advised.Inputs.Discomfort != Content.Discomfort?.Worst;

    /// <summary>Turns to an arch.</summary>
    public void Turn(Jaw jaw)
    {
        Jaw = jaw;
        Selected = null;
        Shown = "";
    }

    /// <summary>Changes what is noted; the change can be taken back.</summary>
    public void Edit(Func<VisitContent, VisitContent> change)
    {
        VisitContent after = change(Content);
        if (IsSigned || after == Content)
            return;

        undone.Add(Content);
        if (undone.Count > MostUndone)
            undone.RemoveAt(0);
        Content = after;
    }

    /// <summary>Changes what is noted of the arch on the screen.</summary>
    public void EditArch(Func<ArchVisit, ArchVisit> change) => Edit(content => content.With(Jaw, change(Arch)));

    /// <summary>Takes the last change back.</summary>
    public void Undo()
    {
        if (!CanUndo)
            return;

        Content = undone[^1];
        undone.RemoveAt(undone.Count - 1);
    }

    /// <summary>Notes positions of today. An advice that rests on others goes.</summary>
    public void See(PositionsFrom from, ToothMap<ToothOffset> positions) => EditArch(arch => arch with
    {
        Seen = new ArchSeen(Visit.Day, from, positions),
        Advised = arch.Advised?.Inputs.Positions.Equals(positions) == true ? arch.Advised : null,
    });

    /// <summary>What stands at a place today; null for a tooth with a bracket. A place where the appliance has none
    /// counts as empty until something else is noted.</summary>
    public BareTooth? BareAt(ToothNumber tooth) =>
        Bare.Has(tooth) ? Bare.Of(tooth, default) : Bonded.Contains(tooth) ? null : BareTooth.Absent;

    /// <summary>Notes that a place holds no bracket today, or what the appliance says of it again. A tie goes with the
    /// bracket, and comes back as the usual one; an advice that rests on other brackets goes.</summary>
    /// <param name="tooth">The place.</param>
    /// <param name="bare">What stands there; null for what the appliance says.</param>
    public void Note(ToothNumber tooth, BareTooth? bare)
    {
        if (Treatment is not { } treatment)
            return;

        bool isBonded = bare is null && treatment.Appliance.Bonded.Contains(tooth);
        EditArch(arch =>
        {
            ToothMap<BareTooth> before = arch.Bare ?? ToothMap<BareTooth>.Empty;
            ArchVisit after = arch with
            {
                Bare = bare is { } kind ? before.With(tooth, kind) : before.Without(tooth),
                Ties = !isBonded ? arch.Ties.Without(tooth)
                    : arch.Ties.Has(tooth) ? arch.Ties : arch.Ties.With(tooth, treatment.Appliance.UsualTie),
            };
            return after with { Advised = after.Advised is { } advice && after.Bears(advice) ? advice : null };
        });
    }

    /// <summary>Moves one tooth on the picture.</summary>
    public void Move(ToothNumber tooth, ToothOffset offset) => See(
        PositionsFrom.Measured, (Drawn?.Positions ?? ToothMap<ToothOffset>.Empty).With(tooth, offset.Rounded()));

    /// <summary>Moves a tooth with a finger: across and along the arch on the occlusal view, along the arch and up and
    /// down on the frontal one. One drag is one change to take back.</summary>
    public void Drag(ToothDrag drag, ArchView view)
    {
        if (Inputs is not { } inputs || BareAt(drag.Tooth) == BareTooth.Absent)
            return;

        ToothMap<ToothOffset> now = Drawn?.Positions ?? ToothMap<ToothOffset>.Empty;
        if (drag.Begins || dragged?.Tooth != drag.Tooth)
            dragged = (drag.Tooth, now.Of(drag.Tooth, ToothOffset.Zero), Content);

        (_, ToothOffset from, VisitContent before) = dragged.Value;
        Move(drag.Tooth, DragGeometry.Moved(inputs, drag, from, view));
        if (undone.Count > 0 && undone[^1] != before)
            undone.RemoveAt(undone.Count - 1);
    }

    /// <summary>Takes positions of the front teeth from five contact displacements.</summary>
    /// <param name="contacts">From the patient's right to the left [mm].</param>
    /// <returns>Why it cannot be; empty when it is done.</returns>
    public string TakeContacts(IReadOnlyList<double> contacts)
    {
        if (Inputs is not { } inputs)
            return "This arch carries no appliance.";

        try
        {
            See(PositionsFrom.Contacts, ArchModel.FromContacts(inputs, contacts));
            return "";
        }
        catch (ArgumentException cannot)
        {
            return cannot.Message;
        }
    }

    /// <summary>Notes an advice with the visit. It is no edit of a person, so it cannot be undone. One that rests on
    /// other positions or brackets than those noted meanwhile comes too late and is dropped.</summary>
    public void Advise(Jaw jaw, Recommendation? advice)
    {
        if (!IsSigned && Content.Arch(jaw) is { } arch
            && (advice is null || arch.Bears(advice)))
        {
            Content = Content.With(jaw, arch with { Advised = advice });
        }
    }

    /// <summary>Decides to fit a wire, from the lot that expires first.</summary>
    public void Fit(string wireId) => EditArch(arch => arch with
    {
        Decided = new Decision(WireAct.Fit, wireId, LotOf(wireId)?.Id, arch.Decided?.Reason ?? ""),
    });

    /// <summary>Decides to keep the wire found.</summary>
    public void Keep() => EditArch(arch => arch with
    {
        Decided = new Decision(WireAct.Keep, arch.Found?.WireId ?? "", null, arch.Decided?.Reason ?? ""),
    });

    /// <summary>Sets the interval to the next visit as the advice has it.</summary>
    public void TakeInterval()
    {
        if (Arch.Advised?.Interval is { } interval)
        {
            Edit(content => content with
            {
                NextInWeeks = Math.Clamp(interval.UsualWeeks, 1, SigningChecks.LongestInterval),
            });
        }
    }

    /// <summary>Ties the teeth that the advice names at a distance.</summary>
    public void TieAsAdvised()
    {
        if (Arch.Advised is { PartialTies.Count: > 0 } advised)
        {
            EditArch(arch => arch with
            {
                Ties = advised.PartialTies.Aggregate(arch.Ties, (ties, tooth) => ties.With(tooth, TieKind.Partial)),
            });
        }
    }

    /// <summary>Says why the decision differs from the advice.</summary>
    public void Because(string reason) => EditArch(arch =>
        arch.Decided is null ? arch : arch with { Decided = arch.Decided with { Reason = reason } });

    /// <summary>True when the decision differs from the advice, so that a reason is needed.</summary>
    public bool NeedsReason => Arch.Decided is { } decided && SigningChecks.Differs(decided, Arch.Advised);

    /// <summary>Takes over what the database holds now.</summary>
    public void Accept(VisitSaved saved)
    {
        prepared = null;
        Visit = saved.Visit;
        Saved = saved.Visit.Content;
        if (saved.OtherName.Length > 0)
            undone.Clear(); // taking back would undo the other one's work
        Content = saved.Content;
    }

    /// <summary>Takes over a signed or amended visit.</summary>
    public void Accept(Visit visit)
    {
        Visit = visit;
        Saved = visit.Content;
        Content = visit.Content;
        undone.Clear();
    }

    // What is the same as last time is there already; what must be looked at today is not.
    private VisitContent Prepared(VisitContent content)
    {
        foreach (ArchTreatment treatment in Treatments)
        {
            ArchVisit arch = content.Arch(treatment.Jaw) ?? ArchVisit.Blank;
            ArchVisit? before = last?.Content.Arch(treatment.Jaw);
            content = content.With(treatment.Jaw, arch with
            {
                Found = arch.Found ?? FoundAfter(before),
                Bare = arch.Bare ?? before?.Bare,
                Ties = arch.Ties.Count > 0 ? arch.Ties
                    : before?.Ties is { Count: > 0 } ties ? ties
                    : ToothMap<TieKind>.Same(
                        treatment.Appliance.BondedBut(arch.Bare ?? before?.Bare), treatment.Appliance.UsualTie),
                RightEnd = arch.RightEnd ?? before?.RightEnd,
                LeftEnd = arch.LeftEnd ?? before?.LeftEnd,
            });
        }

        return content;
    }

    private WireFound? FoundAfter(ArchVisit? before) => before?.Decided switch
    {
        { Act: WireAct.Fit } fitted when last is not null => new WireFound(fitted.WireId, last.Day),
        { Act: WireAct.Keep } => before.Found,
        _ => null,
    };

    private IEnumerable<string> Candidates() => Lots.Where(lot => lot.CanServe(Jaw, Visit.Day))
        .Select(lot => lot.WireId)
        .Concat(Arch.Found is { } found ? [found.WireId] : [])
        .Distinct(StringComparer.Ordinal);

    private static string FirstKnown(params string?[] ids) =>
        ids.FirstOrDefault(id => !string.IsNullOrEmpty(id) && WireCatalogue.Default.TryFind(id, out _)) ?? "";
}
