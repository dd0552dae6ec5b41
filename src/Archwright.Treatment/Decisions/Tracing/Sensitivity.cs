using System.Collections.Immutable;
using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions.Tracing;

/// <summary>How far one input is from another recommendation.</summary>
/// <param name="Input">What would have to be other, in words.</param>
/// <param name="Now">What it is.</param>
/// <param name="Flips">The nearest value that was tried at which the recommendation is another; null where none of
/// those tried is.</param>
/// <param name="Unit">Unit of both; empty where there is none.</param>
/// <param name="Then">What would be recommended; how far was tried where nothing is other.</param>
/// <param name="IsComputedAnew">Whether the mechanics was computed anew; otherwise figures that are there were judged
/// again.</param>
public sealed record InputSensitivity(
    string Input, double? Now, double? Flips, string Unit, string Then, bool IsComputedAnew = false);

/// <summary>Which inputs would turn a recommendation, and how far they are from doing so.</summary>
/// <remarks>
/// Discomfort, weeks in place, alerts, stock, the working wire, ceilings and the thresholds of the policy are judged
/// again on the figures that are there (<see cref="VisitJudge"/>), each alone, outward from its value in steps; what
/// was left out early stays left out. Age and the place of the tooth that limits most are tried with the mechanics,
/// among the wires that matter: at most seven times three wires. Each input is moved alone; two together may turn an
/// answer that neither turns.
/// </remarks>
public static class Sensitivity
{
    // Of a ceiling or threshold: nearest first, up to four times as much and a quarter.
    private static readonly double[] Factors =
        [1.05, 0.95, 1.1, 0.9, 1.2, 0.8, 1.35, 0.7, 1.5, 0.6, 2, 0.5, 3, 0.35, 4, 0.25];

    // Of one coordinate [mm]: a reading is good to about a tenth.
    private static readonly double[] Shifts = [0.1, -0.1, 0.25, -0.25];

    // Judged alone: another value asks for no other mechanics.
    private static readonly string[] Thresholds =
    [
        "keep_share", "spent_speed", "early_weeks", "aligned_within", "largest_set", "largest_step",
        "first_wire_stiffness", "weight_delivered", "weight_progress", "weight_comfort",
    ];

    /// <summary>The report.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="options">How it was computed.</param>
    /// <param name="cancellation">Gives up between and inside computations.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static ImmutableArray<InputSensitivity> Of(
        VisitAdvice advice, VisitOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(options);
        return [.. Judged(advice, options.Policy), .. ComputedAnew(advice, options, cancellation)];
    }

    /// <summary>The part of the report that needs no mechanics.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="policy">The policy that was judged by.</param>
    public static ImmutableArray<InputSensitivity> OfJudgement(VisitAdvice advice, VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(policy);
        return [.. Judged(advice, policy)];
    }

    /// <summary>What is recommended, in few words: "step-up niti-016".</summary>
    public static string Words(VisitAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return advice.Wire is { } wire ? $"{advice.Step.Word()} {wire.Figures.Wire.Id}" : advice.Step.Word();
    }

    private static IEnumerable<InputSensitivity> Judged(VisitAdvice advice, VisitPolicy policy)
    {
        VisitQuestion question = advice.Question;
        string now = Words(advice);
        string Under(VisitQuestion other, VisitPolicy by) => Words(VisitJudge.Judge(other, advice.Figures, by));

        if (question.Present is { } present)
        {
            yield return Nearest(
                "worst discomfort", question.Discomfort, "of 10", Whole(0, 10, question.Discomfort ?? 0),
                pain => Under(question with { Discomfort = pain }, policy), now);
            yield return Nearest(
                "weeks in place, for the rule of early weeks", present.Weeks, "weeks", Whole(0, 12, present.Weeks ?? 0),
                weeks => Under(question with { Present = present with { Weeks = weeks } }, policy), now);
        }

        yield return Nearest(
            "all ceilings, as a factor", 1, "1", Factors,
            factor => Under(question, policy.WithCeilings(policy.CeilingsTimes(factor))), now);
        foreach (string name in Thresholds)
        {
            PolicyFigure figure = policy.Figure(name);
            PolicyFigureKind kind = PolicyFigureKind.All.First(one => one.Name == name);
            yield return Nearest(
                figure.Name, figure.Value, figure.Figure.Unit,
                Factors.Select(factor => factor * figure.Value).Where(at => at >= kind.Low && at <= kind.High),
                value => Under(question, policy.With(name, value)), now);
        }

        yield return Working(question, wire => Under(question with { WorkingWire = wire }, policy), now);
        foreach (InputSensitivity one in Facts(advice, now, other => Under(other, policy)))
            yield return one;
        if (Without(advice, policy) is { } stock)
            yield return stock;
    }

    private static IEnumerable<InputSensitivity> Facts(
        VisitAdvice advice, string now, Func<VisitQuestion, string> under)
    {
        VisitQuestion question = advice.Question;
        foreach (PatientAlert alert in PatientAlerts.All)
        {
            ImmutableHashSet<PatientAlert> known = question.Alerts ?? [];
            bool has = known.Contains(alert);
            string then = under(question with { Alerts = has ? known.Remove(alert) : known.Add(alert) });
            yield return new InputSensitivity(
                "alert " + alert.Word(), has ? 1 : 0, then == now ? null : has ? 0 : 1, "", then);
        }
    }

    // The drawer without the wire put forward: what would take its place.
    private static InputSensitivity? Without(VisitAdvice advice, VisitPolicy policy)
    {
        if (advice.Wire is not { Figures: { IsPresent: false } put })
            return null;

        ArchFigures rest = advice.Figures with
        {
            Wires = [.. advice.Figures.Wires.Where(wire => wire.Wire.Id != put.Wire.Id)],
        };
        VisitQuestion question = advice.Question with
        {
            Choice = [.. advice.Question.Choice.Where(wire => wire.Id != put.Wire.Id)],
        };
        return new InputSensitivity(
            $"{put.Wire.Id} not at hand", 1, 0, "", Words(VisitJudge.Judge(question, rest, policy)));
    }

    private static InputSensitivity Nearest(
        string input, double? now, string unit, IEnumerable<double> tried, Func<double, string> under, string today)
    {
        double[] all = [.. tried];
        foreach (double value in all)
        {
            string then = under(value);
            if (then != today)
                return new InputSensitivity(input, now, value, unit, then);
        }

        string range = all.Length == 0 ? "nothing to try" : string.Create(
            CultureInfo.InvariantCulture, $"the same from {all.Min():0.###} to {all.Max():0.###}");
        return new InputSensitivity(input, now, null, unit, range);
    }

    // Whole numbers outward from a value.
    private static IEnumerable<double> Whole(int low, int high, double from) => Enumerable.Range(low, high - low + 1)
        .Select(value => (double)value).Where(value => Math.Abs(value - from) > 1e-9)
        .OrderBy(value => Math.Abs(value - from)).ThenBy(value => value);

    // Wires of the catalogue that go into every slot, the nearest in stiffness first; those alike are tried once.
    private static InputSensitivity Working(VisitQuestion question, Func<CatalogueWire, string> under, string today)
    {
        const string input = "working wire, by its stiffness";
        double? now = question.WorkingWire is { } named ? WireSize.Stiffness(named) : null;
        double from = now ?? WireSize.Stiffness(WorkingWires.Usual(question.Arch));
        double height = question.Arch.Arrangement.Slots.Min(slot => slot.Height);
        CatalogueWire[] tried =
        [
            .. WireCatalogue.Default.Wires
                .Where(wire => wire.Id != question.WorkingWire?.Id && wire.Section.Thickness <= height)
                .DistinctBy(WireSize.Stiffness)
                .OrderBy(wire => Math.Abs(Math.Log(WireSize.Stiffness(wire) / from)))
                .ThenBy(wire => wire.Id, StringComparer.Ordinal),
        ];
        foreach (CatalogueWire wire in tried)
        {
            string then = under(wire);
            if (then != today)
            {
                return new InputSensitivity(
                    input, now, WireSize.Stiffness(wire), "N·mm²", $"{then}, on the way to {wire.Id}");
            }
        }

        return new InputSensitivity(
            input, now, null, "N·mm²", $"the same on the way to each of {tried.Length} others of the catalogue");
    }

    private static IEnumerable<InputSensitivity> ComputedAnew(
        VisitAdvice advice, VisitOptions options, CancellationToken cancellation)
    {
        VisitQuestion question = advice.Question;
        if (question.Choice.IsEmpty && question.Present is null)
            yield break;

        VisitQuestion few = question with { Choice = [.. Mattering(advice)], ChoiceIsStock = false };
        string Under(VisitQuestion other) => Words(VisitAdvisor.Advise(other, options, cancellation: cancellation));
        string same = Under(few);
        string among = same == Words(advice) ? "" : ", among the few wires that were tried";
        yield return Age(few, Under, same, among);
        yield return Place(advice, options, few, Under, same, among);
    }

    // All that the age says is whether somebody still grows; a rate that was learnt says more and stands in its place.
    private static InputSensitivity Age(
        VisitQuestion few, Func<VisitQuestion, string> under, string same, string among)
    {
        const string input = "age";
        if (few.LearntRate is not null)
        {
            return new InputSensitivity(
                input, few.AgeYears, null, "years", "the same at any age: the rate was learnt", IsComputedAnew: true);
        }

        double grown = Math.Ceiling(MovementConstants.GrowingUntil.Value);
        foreach (double age in new[] { grown - 1, grown })
        {
            bool isOther = few.AgeYears is not { } today || today < grown != age < grown;
            if (isOther && under(few with { AgeYears = age }) is { } then && then != same)
                return new InputSensitivity(input, few.AgeYears, age, "years", then, IsComputedAnew: true);
        }

        return new InputSensitivity(
            input, few.AgeYears, null, "years",
            string.Create(CultureInfo.InvariantCulture, $"the same below {grown:0}, growing, and from then on") + among,
            IsComputedAnew: true);
    }

    private static InputSensitivity Place(
        VisitAdvice advice, VisitOptions options, VisitQuestion few, Func<VisitQuestion, string> under, string same,
        string among)
    {
        VisitQuestion question = advice.Question;
        (int slot, OffsetPart part) = Limiting(advice, options);
        double today = part.Of(question.Arch.Offsets[slot]);
        string number = question.Tooth(slot).Show(options.Style.Notation);
        string name = $"{part.Word} of the {question.Tooth(slot).Name} ({number})";
        foreach (double shift in Shifts)
        {
            string then = under(few with { Arch = question.Arch.Shifted(slot, part.By(shift)) });
            if (then != same)
                return new InputSensitivity(name, today, today + shift, "mm", then, IsComputedAnew: true);
        }

        return new InputSensitivity(
            name, today, null, "mm",
            string.Create(
                CultureInfo.InvariantCulture,
                $"the same from {today + Shifts.Min():0.##} to {today + Shifts.Max():0.##}") + among,
            IsComputedAnew: true);
    }

    // The tooth nearest to its ceiling under the wire put forward, or the one farthest off; its largest part.
    private static (int Slot, OffsetPart Part) Limiting(VisitAdvice advice, VisitOptions options)
    {
        var view = new VisitView(
            advice.Question, options.Policy, SentenceStyle.Default, advice.Figures.Present);
        WireFigures? wire = (advice.Wire ?? advice.Nearest)?.Figures;
        int slot = (wire is null ? null : Rules.WithinCeilings.Nearest(wire, view)?.Slot)
            ?? advice.Question.Arch.FarthestOff;
        var offset = advice.Question.Arch.Offsets[slot];
        return (slot, OffsetPart.All.MaxBy(part => Math.Abs(part.Of(offset)))!); // there are three
    }

    // The wire put forward, the next one that is allowed, and the nearest that is not.
    private static IEnumerable<CatalogueWire> Mattering(VisitAdvice advice)
    {
        WireOption[] fitted = [.. advice.Options.Where(option => !option.Figures.IsPresent)];
        return fitted.Where(option => option.Allowed).Take(2)
            .Concat(fitted.Where(option => !option.Allowed && option.Figures.Engaged).Take(1))
            .Select(option => option.Figures.Wire);
    }
}
