using System.Text.Json;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Numerics;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Cli.Tables;

/// <summary>Writes <c>archwright-forecast/1</c>.</summary>
/// <remarks>Schema: <c>docs/schema/archwright-forecast-1.schema.json</c>.</remarks>
internal static class ForecastJson
{
    /// <summary>Writes the document and a line end.</summary>
    public static void Write(Stream stream, ForecastAnswer answer)
    {
        using (var json = new Utf8JsonWriter(stream, WiresJson.Style))
        {
            json.WriteStartObject();
            json.WriteString("format", "archwright-forecast/1");
            json.WriteStartArray("weeks");
            for (int week = 0; week <= answer.Weeks; week++)
                Week(json, answer, week);
            json.WriteEndArray();
            Range(json, "spent_in_weeks", answer.SpentInWeeks);
            Rate(json, answer);
            json.WriteNumber("draws", answer.Drawn?.Draws.Length ?? 0);
            Number(json, "friction", answer.Request.Arrangement.Slots.Max(slot => slot.Friction));
            Number(json, "soft_tissue", answer.Request.SoftTissue.Factor);
            Stopped(json, answer.Forecast.Stop);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        stream.Flush();
    }

    private static void Week(Utf8JsonWriter json, ForecastAnswer answer, int week)
    {
        json.WriteStartObject();
        json.WriteNumber("week", week);
        if (answer.Irregularity(week) is { } irregularity)
            Range(json, "irregularity_mm", irregularity);
        else
            json.WriteNull("irregularity_mm");
        Range(json, "activation_left_share", answer.ActivationLeft(week));
        json.WriteStartArray("teeth");
        for (int i = 0; i < answer.Request.Teeth.Length; i++)
        {
            bool isBonded = answer.Request.Arrangement.Slots[i].IsBonded;
            Tooth(json, answer.At(week).Teeth[i], answer.Offset(week, i), isBonded);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Tooth(Utf8JsonWriter json, ToothDay day, ClinicalOffset offset, bool isBonded)
    {
        json.WriteStartObject();
        json.WriteString("tooth", day.Tooth.ToIso());
        Number(json, "labial_mm", offset.Labial);
        Number(json, "occlusal_mm", offset.Occlusal);
        Number(json, "mesial_mm", offset.Mesial);
        Number(json, "rotation_deg", Angle.ToDegrees(offset.Rotation));
        Number(json, "tip_deg", Angle.ToDegrees(offset.Tip));
        Number(json, "torque_deg", Angle.ToDegrees(offset.Torque));
        Number(json, "labial_N", day.Clinical.LabialForce);
        Number(json, "occlusal_N", day.Clinical.OcclusalForce);
        Number(json, "mesial_N", day.Clinical.MesialForce);
        Number(json, "rotation_N_mm", day.Clinical.RotationMoment);
        Number(json, "tip_N_mm", day.Clinical.TipMoment);
        Number(json, "torque_N_mm", day.Clinical.TorqueMoment);
        Number(json, "soft_tissue_labial_N", day.SoftTissueForce);
        Vector(json, "at_resistance_force_N", day.AtResistance.Force);
        Vector(json, "at_resistance_moment_N_mm", day.AtResistance.Moment);
        if (day.Movement.MomentToForce is double ratio)
            Number(json, "moment_to_force_mm", ratio);
        else
            json.WriteNull("moment_to_force_mm");
        json.WriteString("movement", MovementWords.Key(day.Movement.Kind));
        Number(json, "speed_mm_per_day", day.Movement.Speed);
        json.WriteBoolean("bonded", isBonded);
        json.WriteEndObject();
    }

    private static void Rate(Utf8JsonWriter json, ForecastAnswer answer) => Range(json, "rate", new Percentiles(
        answer.Request.Rate.At(-Normal.NinetyPercent), answer.Request.Rate.Median,
        answer.Request.Rate.At(Normal.NinetyPercent)));

    private static void Stopped(Utf8JsonWriter json, ForecastStop? stop)
    {
        if (stop is null)
        {
            json.WriteNull("stopped");
            return;
        }

        json.WriteStartObject("stopped");
        Number(json, "week", stop.Day / 7);
        json.WriteString("tooth", stop.Tooth?.ToIso());
        json.WriteString("reason", stop.Reason);
        json.WriteEndObject();
    }

    private static void Range(Utf8JsonWriter json, string key, Percentiles range)
    {
        json.WriteStartObject(key);
        Number(json, "p10", range.P10);
        Number(json, "p50", range.P50);
        Number(json, "p90", range.P90);
        json.WriteEndObject();
    }

    private static void Vector(Utf8JsonWriter json, string key, Vector3 v)
    {
        json.WriteStartArray(key);
        foreach (double part in (ReadOnlySpan<double>)[v.X, v.Y, v.Z])
            json.WriteNumberValue(WiresJson.Rounded(part));
        json.WriteEndArray();
    }

    // What does not come to pass in the time asked is null.
    private static void Number(Utf8JsonWriter json, string key, double value)
    {
        if (double.IsFinite(value))
            json.WriteNumber(key, WiresJson.Rounded(value));
        else
            json.WriteNull(key);
    }

    private static class Normal
    {
        /// <summary>Ninetieth percentile of the standard normal distribution.</summary>
        public const double NinetyPercent = 1.2815515655446004;
    }
}
