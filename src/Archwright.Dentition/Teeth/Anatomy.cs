using System.Diagnostics.CodeAnalysis;
using Archwright.Dentition.Tables;

namespace Archwright.Dentition.Teeth;

/// <summary>Average measures of a tooth, each with its source [mm; mm² for the area]. The same right and
/// left.</summary>
/// <remarks>Averages of textbooks: a person's crown widths scatter by about 0.5 mm, root lengths by about 1.5 mm.
/// Third molars differ most.</remarks>
public sealed record Anatomy
{
    private static readonly Lazy<Dictionary<ToothNumber, Anatomy>> Embedded = new(
        () => Read(Table.Embedded("Teeth/anatomy.csv"), Table.Embedded("Teeth/support.csv")));

    private Anatomy()
    {
    }

    /// <summary>The tooth.</summary>
    public required ToothNumber Tooth { get; init; }

    /// <summary>Edge or cusp to neck.</summary>
    public required Sourced CrownHeight { get; init; }

    /// <summary>Neck to apex; of a molar the mean of its roots.</summary>
    public required Sourced RootLength { get; init; }

    /// <summary>Mesiodistal width of the crown, contact point to contact point.</summary>
    public required Sourced CrownWidth { get; init; }

    /// <summary>Mesiodistal width at the neck.</summary>
    public required Sourced NeckWidth { get; init; }

    /// <summary>Labiolingual depth of the crown.</summary>
    public required Sourced CrownDepth { get; init; }

    /// <summary>Labiolingual depth at the neck.</summary>
    public required Sourced NeckDepth { get; init; }

    /// <summary>Edge or cusp to slot centre, along the crown.</summary>
    public required Sourced SlotHeight { get; init; }

    /// <summary>Slot centre to neck, along the crown.</summary>
    public required Sourced SlotToNeck { get; init; }

    /// <summary>Slot centre to centre of resistance, along the tooth, with a healthy bone crest.</summary>
    public required Sourced SlotToResistance { get; init; }

    /// <summary>Area of the root that the ligament holds [mm²].</summary>
    public required Sourced SupportArea { get; init; }

    /// <summary>The measures of a tooth.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is no tooth.</exception>
    public static Anatomy Of(ToothNumber tooth) => TryOf(tooth, out Anatomy? anatomy)
        ? anatomy
        : throw new ArgumentOutOfRangeException(
            nameof(tooth), tooth, "It is no tooth.");

    /// <summary>The measures of a tooth, if the table has it.</summary>
    public static bool TryOf(ToothNumber tooth, [NotNullWhen(true)] out Anatomy? anatomy) =>
        Embedded.Value.TryGetValue(tooth, out anatomy);

    internal static Dictionary<ToothNumber, Anatomy> Read(
        IReadOnlyList<TableRow> rows, IReadOnlyList<TableRow> support)
    {
        var table = new ToothTable("anatomy", rows, unit: "mm");
        var areas = new ToothTable("support", support, unit: "mm2");
        return table.Teeth.ToDictionary(tooth => tooth, tooth => new Anatomy
        {
            Tooth = tooth,
            CrownHeight = table.Of(tooth, "crown_height"),
            RootLength = table.Of(tooth, "root_length"),
            CrownWidth = table.Of(tooth, "crown_width"),
            NeckWidth = table.Of(tooth, "neck_width"),
            CrownDepth = table.Of(tooth, "crown_depth"),
            NeckDepth = table.Of(tooth, "neck_depth"),
            SlotHeight = table.Of(tooth, "slot_height"),
            SlotToNeck = table.Of(tooth, "slot_to_neck"),
            SlotToResistance = table.Of(tooth, "slot_to_resistance"),
            SupportArea = areas.Of(tooth, "support_area"),
        });
    }
}
