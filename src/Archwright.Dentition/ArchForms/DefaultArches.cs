using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.ArchForms;

/// <summary>The arches that are taken when nothing is known of the patient's own, with their sources.</summary>
public static class DefaultArches
{
    private static readonly Lazy<Dictionary<(Jaw, string), Sourced>> Figures = new(
        () => Read(Table.Embedded("ArchForms/arches.csv")));

    private static readonly Lazy<PolynomialArch> Upper = new(() => Fitted(Jaw.Upper));

    private static readonly Lazy<PolynomialArch> Lower = new(() => Fitted(Jaw.Lower));

    /// <summary>The default arch: a curve through the crown centres, as wide at the canines and second molars as the
    /// table says, and as long as the average crowns that stand on it. It ends at the second molar's far
    /// side.</summary>
    public static PolynomialArch Of(Jaw jaw) => jaw == Jaw.Upper ? Upper.Value : Lower.Value;

    /// <summary>Across the canines' crown centres [mm].</summary>
    public static Sourced CanineWidth(Jaw jaw) => Figure(jaw, "canine_width");

    /// <summary>Across the second molars' crown centres [mm].</summary>
    public static Sourced MolarWidth(Jaw jaw) => Figure(jaw, "molar_width");

    /// <summary>How far labially of the curve through the crown centres the slot centres lie [mm]. One figure for an
    /// arch: brackets are thicker where crowns stand back, so that the slots lie on one smooth curve.</summary>
    public static Sourced SlotOffset(Jaw jaw) => Figure(jaw, "slot_offset");

    private static PolynomialArch Fitted(Jaw jaw)
    {
        IReadOnlyList<double> arcs = CrownRow.ArcsFromMidline(jaw);
        PolynomialArch toMolarCentre = PolynomialArch.WithLengths(
            CanineWidth(jaw).Value, arcs[2], MolarWidth(jaw).Value, arcs[6]);
        // The same curve goes on behind the second molar's centre, so that its whole crown stands on it.
        var longer = new PolynomialArch(toMolarCentre.A, toMolarCentre.B, MolarWidth(jaw).Value + 10);
        return new PolynomialArch(longer.A, longer.B, 2 * longer.AcrossAt(CrownRow.HalfLength(jaw)));
    }

    private static Sourced Figure(Jaw jaw, string quantity) =>
        Figures.Value.TryGetValue((jaw, quantity), out Sourced? figure)
            ? figure
            : throw new TableException(
                $"ArchForms/arches.csv: the {jaw.Word()} arch has no '{quantity}'. Add the row.");

    private static Dictionary<(Jaw, string), Sourced> Read(IReadOnlyList<TableRow> rows) => rows.ToDictionary(
        row => (row.Required("jaw") == "upper" ? Jaw.Upper : Jaw.Lower, row.Required("quantity")),
        row => row.Figure());
}
