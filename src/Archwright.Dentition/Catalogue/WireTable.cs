using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;

namespace Archwright.Dentition.Catalogue;

/// <summary>Reads the wires of the catalogue.</summary>
internal static class WireTable
{
    public static IReadOnlyList<CatalogueWire> Read(
        IReadOnlyList<TableRow> rows, IReadOnlyList<CatalogueAlloy> alloys, IReadOnlyList<TableRow> sizes)
    {
        SizeTolerance round = SizeTolerance.Of("round", sizes);
        SizeTolerance rectangular = SizeTolerance.Of("rectangular", sizes);
        HashSet<string> known = new(StringComparer.Ordinal);
        List<CatalogueWire> wires = [];
        foreach (TableRow row in rows)
        {
            CatalogueWire wire = Wire(row, alloys, round, rectangular);
            if (!known.Add(wire.Id))
                throw row.Fault($"'{wire.Id}' is listed twice.", "Keep one row.");
            wires.Add(wire);
        }

        return wires;
    }

    private static CatalogueWire Wire(
        TableRow row, IReadOnlyList<CatalogueAlloy> alloys, SizeTolerance round, SizeTolerance rectangular)
    {
        CatalogueAlloy alloy = alloys.FirstOrDefault(one => one.Id == row.Required("alloy"))
            ?? throw row.Fault($"no alloy is called '{row.Required("alloy")}'.", "Name it among the alloys first.");
        Sourced thickness = row.Figure("thickness");
        if (thickness.Unit != "in")
            throw row.Fault($"the size is given in {thickness.Unit}.", "Sizes are stated in inches (in).");

        Section section = SectionOf(row);
        string size = SizeCode(row);
        if (row.Required("id") != $"{alloy.Id}-{size}")
            throw row.Fault($"the id is '{row.Required("id")}'.", $"Alloy and size make it '{alloy.Id}-{size}'.");

        return new CatalogueWire
        {
            Id = row.Required("id"),
            Title = $"{alloy.Title} {SizeWords(row)} in",
            Alloy = alloy,
            StatedThickness = thickness,
            Tolerance = section.IsRound ? round : rectangular,
            Section = section,
            Wire = new Wire(section, alloy.Alloy),
        };
    }

    private static Section SectionOf(TableRow row)
    {
        double thickness = Length(row, "thickness");
        return row.Required("shape") switch
        {
            "round" => Section.Round(thickness),
            "rectangular" => Rectangular(row, thickness),
            string other => throw row.Fault($"the shape is '{other}'.", "It is 'round' or 'rectangular'."),
        };
    }

    private static Section Rectangular(TableRow row, double thickness)
    {
        double width = Length(row, "width");
        if (width < thickness)
            throw row.Fault("it is wider than deep.", "The first figure is the occlusogingival side, the smaller one.");

        double radius = Millimetres.FromInches(row.Number("edge_radius"));
        return radius >= 0 && radius < thickness / 2
            ? Section.Rectangular(thickness, width, radius)
            : throw row.Fault("the edge radius is out of range.", "It lies between 0 and half of the thickness.");
    }

    private static double Length(TableRow row, string column)
    {
        double inches = row.Number(column);
        return inches is >= 0.004 and <= 0.060
            ? Millimetres.FromInches(inches)
            : throw row.Fault($"'{column}' is {inches} in.", "An archwire side lies between 0.004 and 0.060 in.");
    }

    private static string SizeCode(TableRow row) => row.Required("shape") == "round"
        ? Digits(row, "thickness")
        : $"{Digits(row, "thickness")}x{Digits(row, "width")}";

    private static string SizeWords(TableRow row) => row.Required("shape") == "round"
        ? row.Required("thickness")
        : $"{row.Required("thickness")} × {row.Required("width")}";

    private static string Digits(TableRow row, string column)
    {
        string text = row.Required(column);
        return text.StartsWith("0.", StringComparison.Ordinal)
            ? text[2..]
            : throw row.Fault($"'{column}' is '{text}'.", "Write it as 0.019.");
    }
}
