using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Prescriptions;

/// <summary>A set of angles built into preadjusted slots. Immutable.</summary>
/// <remarks>A preadjusted slot lies on the plane arch when its tooth stands at the prescribed tip and torque: there
/// the wire is passive. So the rest frames of an arch hold no angles; the prescription enters through teeth that
/// are not yet there, see <see cref="OffsetOf"/>. Sets are averages: in a blind comparison clinicians could not
/// tell the results of two of them apart (Moesi B et al., Eur J Orthod 2013;35:236–243; found).</remarks>
public sealed record Prescription
{
    private static readonly Lazy<IReadOnlyList<Prescription>> Embedded = new(
        () => Read(Table.Embedded("Prescriptions/prescriptions.csv")));

    private readonly ImmutableDictionary<ToothNumber, PrescribedAngles> angles;

    private Prescription(string id, ImmutableDictionary<ToothNumber, PrescribedAngles> angles)
    {
        Id = id;
        this.angles = angles;
    }

    /// <summary>The three published sets.</summary>
    public static IReadOnlyList<Prescription> All => Embedded.Value;

    /// <summary>The set that is taken when none is named: the oldest published one.</summary>
    public static Prescription Default => All[0];

    /// <summary>"andrews", "roth" or "mclaughlin-bennett-trevisi", after the authors of the set.</summary>
    public string Id { get; }

    /// <summary>Looks a set up by its id, in capitals or not.</summary>
    public static bool TryFind(string id, [NotNullWhen(true)] out Prescription? prescription)
    {
        prescription = All.FirstOrDefault(one => string.Equals(one.Id, id, StringComparison.OrdinalIgnoreCase));
        return prescription is not null;
    }

    /// <summary>The angles of a tooth.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is a third molar, or no tooth.</exception>
    public PrescribedAngles Of(ToothNumber tooth) => angles.TryGetValue(tooth, out PrescribedAngles? found)
        ? found
        : throw new ArgumentOutOfRangeException(
            nameof(tooth), tooth, "A set holds central incisors to second molars.");

    /// <summary>This set with other angles at one tooth, as with an inverted or exchanged bracket.</summary>
    /// <param name="tooth">The tooth.</param>
    /// <param name="tipDegrees">Crown toward the mesial.</param>
    /// <param name="torqueDegrees">Crown labially.</param>
    /// <param name="reason">Why; must not be empty.</param>
    public Prescription With(ToothNumber tooth, double tipDegrees, double torqueDegrees, string reason)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(reason);
        PrescribedAngles old = Of(tooth);
        var changed = new PrescribedAngles(
            Chosen(tipDegrees, reason), Chosen(torqueDegrees, reason), old.RotationDegrees, reason);
        return new Prescription(Id, angles.SetItem(tooth, changed));
    }

    /// <summary>How the slot of a tooth is off when the crown stands at measured angles instead of the prescribed
    /// ones: tip and torque alone.</summary>
    /// <param name="tooth">The tooth.</param>
    /// <param name="crown">Measured tip and torque of the crown.</param>
    public ClinicalOffset OffsetOf(ToothNumber tooth, CrownAngles crown)
    {
        PrescribedAngles planned = Of(tooth);
        return new ClinicalOffset(
            Tip: crown.Tip is double tip ? tip - planned.Tip : 0,
            Torque: crown.Torque is double torque ? torque - planned.Torque : 0);
    }

    private static Sourced Chosen(double degrees, string reason) => double.IsFinite(degrees) && Math.Abs(degrees) <= 90
        ? new Sourced(degrees, "deg", "", "chosen by the clinician: " + reason, "found in the record")
        : throw new ArgumentOutOfRangeException(nameof(degrees), degrees, "An angle lies between -90 and 90 degrees.");

    private static List<Prescription> Read(IReadOnlyList<TableRow> rows)
    {
        List<Prescription> sets = [];
        foreach (IGrouping<string, TableRow> set in rows.GroupBy(row => row.Required("prescription")))
        {
            var table = new ToothTable($"prescription {set.Key}", set, unit: "deg");
            sets.Add(new Prescription(set.Key, table.Teeth.ToImmutableDictionary(tooth => tooth, tooth =>
                new PrescribedAngles(
                    table.Of(tooth, "tip"), table.Of(tooth, "torque"), table.Of(tooth, "rotation")))));
        }

        return sets;
    }
}

/// <summary>Measured angles of a crown; null where not measured.</summary>
/// <param name="Tip">Crown toward the mesial, against the perpendicular to the biting plane [rad].</param>
/// <param name="Torque">Crown labially, against the perpendicular to the biting plane [rad].</param>
public sealed record CrownAngles(double? Tip, double? Torque);
