using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Tracing;
using Layout = Archwright.Cli.Tables.Layout;

namespace Archwright.Cli.Visits;

/// <summary>Chains of figures for people: each line follows from those above it.</summary>
internal sealed class TraceReport(Terminal terminal, ForceUnit unit, ToothNotation notation)
{
    /// <summary>From place to verdict, for one tooth under one wire.</summary>
    public void Write(ToothTrace trace)
    {
        Layout.Gap(terminal);
        Layout.Heading(
            terminal, $"How it comes about: {trace.WireId} on the {trace.Tooth.Name} ({trace.Tooth.Show(notation)})");
        Line("Place", $"{Offset(trace.Offset)}; crown {Figure(trace.CrownWidth, "0.0")} mm wide: "
            + $"{Figure(trace.Distance, "0.000")} mm off in all");
        Line("Tying in", trace.OnTyingIn is { } tied ? Load(tied) : "does not go in");
        if (trace.Movement is { } moved)
            Moved(moved);
        Line($"By week {trace.Weeks}", trace.DistanceThen is { } then
            ? $"{Figure(then, "0.000")} mm off, usual patient" : "not followed so far");
        foreach (CeilingTrace held in trace.Ceilings)
            Line("Ceiling", Held(held));
    }

    /// <summary>What each rule found on a wire, and its score.</summary>
    public void Write(WireOption option, ScoreTrace score)
    {
        Layout.Gap(terminal);
        Layout.Heading(terminal, $"Why {option.Figures.Wire.Id}, or why not");
        Layout.Paragraph(terminal, option.WhyNotThis);
        foreach (Finding finding in option.Findings)
        {
            string kind = finding.Kind switch
            {
                FindingKind.Against => "against", FindingKind.Note => "note", _ => "for",
            };
            Line($"{finding.Rule}, {kind}", finding.Sentence);
        }

        Line("Comfort", $"10 · {Figure(score.FittingForce, "0.000")} / ({Figure(score.FittingForce, "0.000")} + "
            + $"{Figure(score.HalfForce, "0.0")} N) = {Figure(score.ComfortIndex, "0.00")}");
        Line("Progress", $"ln({Figure(score.Stiffness, "0.0")}/{Figure(score.SoftestStiffness, "0.0")}) / "
            + $"ln({Figure(score.WorkingStiffness, "0.0")}/{Figure(score.SoftestStiffness, "0.0")}), from 0 to 1 = "
            + $"{Figure(score.Progress, "0.000")} (N·mm²)");
        Line("Score", score is { Score: { } value, DeliveredShare: { } share }
            ? $"{Figure(score.WeightDelivered, "0.00")} · {Figure(share, "0.000")} + "
                + $"{Figure(score.WeightProgress, "0.00")} · {Figure(score.Progress, "0.000")} − "
                + $"{Figure(score.WeightComfort, "0.00")} · {Figure(score.ComfortIndex / 10, "0.000")} = "
                + $"{Figure(value, "0.000")} ± {Figure(score.Uncertainty, "0.000")}"
            : option.Allowed ? "none: not followed to the next visit" : "none: a rule speaks against it");
    }

    /// <summary>Which inputs would turn the recommendation.</summary>
    public void Write(IReadOnlyList<InputSensitivity> inputs)
    {
        Layout.Gap(terminal);
        Layout.Heading(terminal, "What would turn it, each alone");
        foreach (InputSensitivity one in inputs.OrderBy(one => one.Flips is null))
        {
            string now = one.Now is { } value ? Value(one, value) : "not said";
            string from = one.Unit is "" or "1" ? now : $"{now} {one.Unit}";
            Line(one.Input, one.Flips is { } at
                ? $"{from}; {(one.Unit.Length == 0 ? "if" : "at")} {Value(one, at)}: {one.Then}"
                : $"{from}; {(one.Unit.Length == 0 ? "the same otherwise" : one.Then)}");
        }

        Layout.Paragraph(
            terminal, "Outward in steps, as far as is said; age and the place of a tooth with the mechanics, the "
            + "others judged again on the figures that are there.", style: Layout.Quiet);
    }

    // What has no unit is so or not.
    private static string Value(InputSensitivity one, double value) =>
        one.Unit.Length > 0 ? Figure(value, "0.###") : value > 0 ? "yes" : "no";

    private void Moved(MovementTrace moved)
    {
        Line("Once given", $"{Offset(moved.Offset)}: {Load(moved.FromWire)}");
        Line("Root", "with neighbours, at the centre of resistance (along, outward, third): "
            + $"force {Three(moved.Force)} N, moment {Three(moved.Moment)} N·mm");
        Line("Stress", $"1000 √(F² + Σ(M/T)²)/A, T {Three(moved.Arms)} mm, A {Figure(moved.Area, "0.0")} mm²: "
            + $"{Figure(moved.Stress, "0.00")} kPa");
        Line("Speed", $"{Figure(moved.MeanSpeed, "0.0000")} mm a day in the mean of people; times 7 and "
            + $"{Figure(moved.Rate, "0.000")} for this patient: {Figure(moved.WeeklySpeed, "0.000")} mm a week"
            + (moved.LagDays > 0 ? $", after {Figure(moved.LagDays, "0")} days of standing still" : ""));
    }

    private string Held(CeilingTrace held)
    {
        string Say(double value) => held.Kind.IsForce() ? unit.Force(value) : unit.Moment(value);
        string days = held.AfterDays == 1 ? "a day" : FormattableString.Invariant($"{held.AfterDays} days");
        string later = held.AfterDays == 0 ? "" : $" after {days}, from {Say(held.AtFirst)} at first";
        return $"{held.Kind.Words()}: {Say(held.Judged)}{later} of {Say(held.Ceiling)}, "
            + (held.IsWithin ? "within" : "above its ceiling") + $" ({Say(held.OnTyingIn)} on tying in)";
    }

    private string Load(ClinicalLoad load) =>
        $"labial {unit.Force(load.LabialForce)}, occlusal {unit.Force(load.OcclusalForce)}, mesial "
        + $"{unit.Force(load.MesialForce)}, rotation {unit.Moment(load.RotationMoment)}, tip "
        + $"{unit.Moment(load.TipMoment)}, torque {unit.Moment(load.TorqueMoment)}";

    private static string Offset(ClinicalOffset offset) =>
        $"labial {Figure(offset.Labial, "0.000")}, occlusal {Figure(offset.Occlusal, "0.000")}, mesial "
        + $"{Figure(offset.Mesial, "0.000")} mm, rotation {Degrees(offset.Rotation)}, tip {Degrees(offset.Tip)}, "
        + $"torque {Degrees(offset.Torque)}°";

    private static string Degrees(double radians) => Figure(double.RadiansToDegrees(radians), "0.00");

    private static string Three(Vector3 v) =>
        $"({Figure(v.X, "0.000")}, {Figure(v.Y, "0.000")}, {Figure(v.Z, "0.000")})";

    private static string Figure(double value, string format) => VisitWords.Figure(value, format);

    private void Line(string name, string text)
    {
        Layout.Paragraph(terminal, name, style: Layout.Strong);
        Layout.Paragraph(terminal, text, "    ");
    }
}
