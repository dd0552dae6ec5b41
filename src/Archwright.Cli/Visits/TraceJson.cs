using System.Text.Json;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Mechanics.Numerics;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Tracing;

namespace Archwright.Cli.Visits;

/// <summary>The members <c>explain</c>, <c>why_not</c> and <c>sensitivity</c> of <c>archwright-visit/1</c>, each there
/// where it is asked for.</summary>
internal static class TraceJson
{
    public static void Write(Utf8JsonWriter json, ToothTrace trace)
    {
        json.WriteStartObject("explain");
        json.WriteString("wire", trace.WireId);
        json.WriteString("tooth", trace.Tooth.ToIso());
        Offset(json, trace.Offset);
        json.WriteNumber("crown_width_mm", trace.CrownWidth);
        json.WriteNumber("distance_mm", trace.Distance);
        if (trace.OnTyingIn is { } tied)
            Load(json, "on_tying_in", tied);
        else
            json.WriteNull("on_tying_in");
        Moved(json, trace.Movement);
        json.WriteNumber("weeks", trace.Weeks);
        Number(json, "distance_then_mm", trace.DistanceThen);
        json.WriteStartArray("ceilings");
        foreach (CeilingTrace held in trace.Ceilings)
        {
            json.WriteStartObject();
            json.WriteString("kind", held.Kind.Code());
            json.WriteNumber("on_tying_in", held.OnTyingIn);
            json.WriteNumber("judged", held.Judged);
            json.WriteNumber("after_days", held.AfterDays);
            json.WriteNumber("at_first", held.AtFirst);
            json.WriteNumber("ceiling", held.Ceiling);
            json.WriteString("unit", held.Kind.Unit());
            json.WriteBoolean("within", held.IsWithin);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter json, WireOption option, ScoreTrace score)
    {
        json.WriteStartObject("why_not");
        json.WriteString("wire", option.Figures.Wire.Id);
        json.WriteBoolean("allowed", option.Allowed);
        json.WriteString("why_not", option.WhyNotThis);
        json.WriteStartArray("findings");
        foreach (Finding finding in option.Findings)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("kind", finding.Kind switch
            {
                FindingKind.Against => "against", FindingKind.Note => "note", _ => "for",
            });
            json.WriteString("sentence", finding.Sentence);
            Number(json, "figure", finding.Figure);
            Number(json, "limit", finding.Limit);
            json.WriteString("unit", finding.Unit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteNumber("fitting_force_N", score.FittingForce);
        json.WriteNumber("half_force_N", score.HalfForce);
        json.WriteNumber("comfort_index", score.ComfortIndex);
        json.WriteNumber("stiffness_N_mm2", score.Stiffness);
        json.WriteNumber("softest_N_mm2", score.SoftestStiffness);
        json.WriteNumber("working_N_mm2", score.WorkingStiffness);
        json.WriteNumber("progress", score.Progress);
        Number(json, "delivered_share", score.DeliveredShare);
        json.WriteNumber("weight_delivered", score.WeightDelivered);
        json.WriteNumber("weight_progress", score.WeightProgress);
        json.WriteNumber("weight_comfort", score.WeightComfort);
        Number(json, "score", score.Score);
        Number(json, "score_uncertainty", score.Score is null ? null : score.Uncertainty);
        json.WriteEndObject();
    }

    public static void Write(Utf8JsonWriter json, IReadOnlyList<InputSensitivity> inputs)
    {
        json.WriteStartArray("sensitivity");
        foreach (InputSensitivity one in inputs)
        {
            json.WriteStartObject();
            json.WriteString("input", one.Input);
            Number(json, "now", one.Now);
            Number(json, "flips_at", one.Flips);
            json.WriteString("unit", one.Unit);
            json.WriteString("then", one.Then);
            json.WriteBoolean("computed_anew", one.IsComputedAnew);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Moved(Utf8JsonWriter json, MovementTrace? movement)
    {
        if (movement is not { } moved)
        {
            json.WriteNull("once_given");
            return;
        }

        json.WriteStartObject("once_given");
        Offset(json, moved.Offset);
        Load(json, "from_wire", moved.FromWire);
        Three(json, "force_at_resistance_N", moved.Force);
        Three(json, "moment_at_resistance_N_mm", moved.Moment);
        Three(json, "turning_arms_mm", moved.Arms);
        json.WriteNumber("stressed_area_mm2", moved.Area);
        json.WriteNumber("stress_kPa", moved.Stress);
        json.WriteNumber("mean_speed_mm_per_day", moved.MeanSpeed);
        json.WriteNumber("rate", moved.Rate);
        json.WriteNumber("speed_mm_per_week", moved.WeeklySpeed);
        json.WriteNumber("lag_days", moved.LagDays);
        json.WriteEndObject();
    }

    private static void Offset(Utf8JsonWriter json, ClinicalOffset offset)
    {
        json.WriteStartObject("offset");
        json.WriteNumber("labial_mm", offset.Labial);
        json.WriteNumber("occlusal_mm", offset.Occlusal);
        json.WriteNumber("mesial_mm", offset.Mesial);
        json.WriteNumber("rotation_deg", double.RadiansToDegrees(offset.Rotation));
        json.WriteNumber("tip_deg", double.RadiansToDegrees(offset.Tip));
        json.WriteNumber("torque_deg", double.RadiansToDegrees(offset.Torque));
        json.WriteEndObject();
    }

    private static void Load(Utf8JsonWriter json, string key, ClinicalLoad load)
    {
        json.WriteStartObject(key);
        json.WriteNumber("labial_N", load.LabialForce);
        json.WriteNumber("occlusal_N", load.OcclusalForce);
        json.WriteNumber("mesial_N", load.MesialForce);
        json.WriteNumber("rotation_N_mm", load.RotationMoment);
        json.WriteNumber("tip_N_mm", load.TipMoment);
        json.WriteNumber("torque_N_mm", load.TorqueMoment);
        json.WriteEndObject();
    }

    private static void Three(Utf8JsonWriter json, string key, Vector3 v)
    {
        json.WriteStartArray(key);
        json.WriteNumberValue(v.X);
        json.WriteNumberValue(v.Y);
        json.WriteNumberValue(v.Z);
        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string key, double? value)
    {
        if (value is { } figure)
            json.WriteNumber(key, figure);
        else
            json.WriteNull(key);
    }
}
