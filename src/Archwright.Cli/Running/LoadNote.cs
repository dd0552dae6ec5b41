using System.Collections.Immutable;
using System.Globalization;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Running;

/// <summary>Loads that do not come from the wire, as they are typed: <c>11:labial=-0.05</c> for a lip,
/// <c>13:mesial=-1.5</c> for a chain [N, N·mm].</summary>
internal static class LoadNote
{
    private const double LargestForce = 10;
    private const double LargestMoment = 100;

    private static readonly string[] Forces = ["labial", "occlusal", "mesial"];
    private static readonly string[] Moments = ["rotation", "tip", "torque"];

    /// <summary>Reads the loads on the teeth of a case.</summary>
    /// <exception cref="Refusal">One cannot be read, is out of range, named twice, or its tooth has no slot; exit
    /// 2.</exception>
    public static ImmutableDictionary<ToothNumber, ClinicalLoad> Read(CaseFile file, IEnumerable<string> typed)
    {
        var loads = ImmutableDictionary.CreateBuilder<ToothNumber, ClinicalLoad>();
        foreach (string note in typed)
        {
            (ToothNumber tooth, ClinicalLoad load) = One(file, note);
            if (!loads.TryAdd(tooth, load))
                throw Unreadable(note, $"The load on {tooth} ({tooth.Name}) is given twice: put all parts into one.");
        }

        return loads.ToImmutable();
    }

    private static (ToothNumber Tooth, ClinicalLoad Load) One(CaseFile file, string note)
    {
        string[] halves = note.Split(':');
        if (halves.Length != 2)
            throw Unreadable(note, "There is no tooth with a colon in front.");
        if (!ToothNumber.TryParse(halves[0], out ToothNumber tooth))
            throw Unreadable(note, $"'{halves[0]}' is no ISO 3950 number of a permanent tooth.");
        if (!file.Teeth.Contains(tooth))
            throw Unreadable(note, $"The case has no slot on {tooth} ({tooth.Name}).");

        var parts = new double[6];
        var isGiven = new bool[6];
        foreach (string part in halves[1].Split(','))
        {
            string[] sides = part.Split('=');
            int force = Array.IndexOf(Forces, sides[0]);
            int moment = Array.IndexOf(Moments, sides[0]);
            int index = force >= 0 ? force : moment >= 0 ? 3 + moment : -1;
            if (sides.Length != 2 || index < 0 || isGiven[index])
                throw Unreadable(note, $"'{part}' is no part with a figure, or is given twice.");

            double most = index < 3 ? LargestForce : LargestMoment;
            if (!double.TryParse(sides[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
                || !(Math.Abs(value) <= most))
            {
                string unit = index < 3 ? "N" : "N·mm";
                throw Unreadable(note, $"'{sides[1]}' is no figure from -{most:0} to {most:0} {unit}.");
            }

            (parts[index], isGiven[index]) = (value, true);
        }

        return (tooth, new ClinicalLoad(parts[0], parts[1], parts[2], parts[3], parts[4], parts[5]));
    }

    private static Refusal Unreadable(string note, string why) => new(
        $"--load '{note}' cannot be read. {why}",
        "Write as 11:labial=-0.05: labial, occlusal, mesial in N; rotation, tip, torque in N·mm; several with commas.");
}
