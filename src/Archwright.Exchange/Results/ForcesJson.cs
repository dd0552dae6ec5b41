using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Json;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.Results;

/// <summary>Writes <c>archwright-forces/1</c>: what the wire does to every tooth. Forces and moments are those on the
/// tooth, in the patient's frame and in clinical components, moments about the centre of the actual slot.</summary>
/// <remarks>Schema: <c>docs/schema/archwright-forces-1.schema.json</c>.</remarks>
public static class ForcesJson
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-forces/1";

    /// <summary>Writes a report to a stream, which is left open.</summary>
    /// <exception cref="ArgumentException">Results and case do not belong together.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure of the result is not finite: a fault of the solver, which
    /// must not pass for a result.</exception>
    public static void Write(ForcesReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        CaseFile caseFile = report.Case;
        CheckBelonging(report);
        using var json = new JsonOut(stream, Format);
        json.Boolean("converged", report.Engaged.Converged && report.Steps.All(step => step.Converged));
        json.Number("residual_N", report.Steps.Aggregate(report.Engaged.Residual, (r, s) => Math.Max(r, s.Residual)));
        json.Number("held_along_N", report.Engaged.HeldAlong);
        Time(json, report.Time);
        ImmutableArray<SlotFrame> places = [.. caseFile.Arrangement.Slots.Select(slot => slot.Actual)];
        State(json, caseFile, places, report.Engaged);
        json.Group("law", group =>
        {
            group.Text("used", report.Law);
            group.Text("why_not_whole", report.WhyNotWholeLaw);
        });
        if (report.Working is { } working)
            json.Group("working", group => State(group, caseFile, Relieved(caseFile.Arrangement), working));
        if (!caseFile.Then.IsEmpty)
            json.Groups("steps", StatesOf(report, places), (group, state) => Step(group, caseFile, state));
        json.Finish();
    }

    private readonly record struct StepState(
        EngagementResult Result, ImmutableArray<SlotFrame> Places, double Temperature);

    private static void CheckBelonging(ForcesReport report)
    {
        int slots = report.Case.Arrangement.Slots.Length;
        if (!Belongs(report.Engaged, slots) || !report.Steps.All(step => Belongs(step, slots)))
            throw new ArgumentException($"The case has {slots} slots, the result another number.", nameof(report));
        if (report.Steps.Length > report.Case.Then.Length)
            throw new ArgumentException("The result has more steps than the case.", nameof(report));
    }

    private static ImmutableArray<SlotFrame> Relieved(Arrangement arrangement)
    {
        var places = arrangement.Slots.Select(slot => slot.Actual).ToImmutableArray().ToBuilder();
        foreach ((int slot, SlotFrame frame) in Engager.Relieving(arrangement, Engager.Relief).Moves)
            places[slot] = frame;
        return places.ToImmutable();
    }

    // A wire that found no equilibrium has no loads to tell: its list of slots is empty.
    private static bool Belongs(EngagementResult result, int slots) =>
        result.Slots.Length == slots || !result.Converged && result.Slots.IsEmpty;

    private static void Time(JsonOut json, SolveTime time)
    {
        switch (time)
        {
            case SolveTime.Once once:
                json.Number("elapsed_ms", once.ElapsedMilliseconds);
                break;
            case SolveTime.Repeated repeated:
                json.Number("cold_ms", repeated.ColdMilliseconds);
                json.Number("warm_ms", repeated.WarmMilliseconds);
                break;
        }
    }

    // Slots that a step does not name stay where they are.
    private static IEnumerable<StepState> StatesOf(ForcesReport report, ImmutableArray<SlotFrame> places)
    {
        double temperature = report.Case.Arrangement.Temperature;
        foreach ((EngagementResult result, Step step) in report.Steps.Zip(report.Case.Then))
        {
            temperature = step.Temperature ?? temperature;
            foreach ((int slot, SlotFrame actual) in step.Moves)
                places = places.SetItem(slot, actual);
            yield return new StepState(result, places, temperature);
        }
    }

    private static void Step(JsonOut json, CaseFile caseFile, StepState state)
    {
        json.Number("temperature_degC", state.Temperature);
        State(json, caseFile, state.Places, state.Result);
    }

    private static void State(
        JsonOut json, CaseFile caseFile, ImmutableArray<SlotFrame> places, EngagementResult result)
    {
        if (result.Obstacle is { } obstacle)
            json.Group("obstacle", group => Obstacle(group, caseFile, obstacle));
        json.Group("wire", wire =>
        {
            wire.Number("max_strain", result.LargestStrain);
            wire.Number("transformed_share", result.TransformedShare);
            wire.Number("set_mm", result.Set);
            wire.Number("stored_energy_N_mm", result.StoredEnergy);
        });
        json.Groups(
            "slots", Enumerable.Range(0, result.Slots.Length),
            (slot, i) => Slot(slot, caseFile, i, places[i], result.Slots[i]));
    }

    private static void Obstacle(JsonOut json, CaseFile caseFile, Obstacle obstacle)
    {
        json.Text("tooth", obstacle.Slot < 0 ? null : caseFile.Arrangement.Slots[obstacle.Slot].Label);
        json.Number("force_N", KnownOrNull(obstacle.Force));
        json.Number("holds_N", KnownOrNull(obstacle.Holds));
        json.Text("reason", obstacle.Reason);
    }

    // The solver marks a force that does not matter as not a number; a file says null.
    private static double? KnownOrNull(double force) => double.IsFinite(force) ? force : null;

    private static void Slot(JsonOut json, CaseFile caseFile, int index, SlotFrame place, SlotLoad load)
    {
        Wrench onTooth = load.OnTooth.MovedTo(place.Centre);
        ClinicalLoad clinical = caseFile.Axes[index].Resolve(place, onTooth);
        json.Text("tooth", caseFile.Arrangement.Slots[index].Label);
        json.Vector("force_N", onTooth.Force);
        json.Vector("moment_N_mm", onTooth.Moment);
        json.Number("labial_N", clinical.LabialForce);
        json.Number("occlusal_N", clinical.OcclusalForce);
        json.Number("mesial_N", clinical.MesialForce);
        json.Number("rotation_N_mm", clinical.RotationMoment);
        json.Number("tip_N_mm", clinical.TipMoment);
        json.Number("torque_N_mm", clinical.TorqueMoment);
        json.Text("contact", load.Contact switch
        {
            ContactState.None => "none",
            ContactState.OneEdge => "one-edge",
            ContactState.BothEdges => "both-edges",
            var other => throw new ArgumentException($"There is no word for the contact {other}.", nameof(load)),
        });
        json.Number("drawn_mm", load.Drawn);
        if (caseFile.HasFriction)
            json.Number("friction_N", load.Friction);
    }
}
