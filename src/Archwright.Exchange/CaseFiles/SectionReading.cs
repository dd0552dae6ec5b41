using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Sections;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Reads the outline of a wire.</summary>
internal static class SectionReading
{
    private const string Whose = "of the wire";

    public static Section? Section(Node node, ProblemList problems)
    {
        string shape = node.Members.LastOrDefault(m => m.Key == "shape").Value?.Text ?? "";
        KeySet keys = shape == "rectangular" ? CaseKeys.Rectangular : CaseKeys.Round;
        if (Fields.Of(node, keys, Whose, problems, CaseKeys.Round, CaseKeys.Rectangular) is not { } fields)
            return null;

        return fields.Word("shape", "round", "rectangular") switch
        {
            "round" => Round(fields),
            "rectangular" => Rectangular(fields, problems),
            _ => null,
        };
    }

    private static Section? Round(Fields fields) =>
        fields.Number("diameter_mm", Quantities.Diameter) is { } diameter
            ? Mechanics.Sections.Section.Round(diameter)
            : null;

    private static Section? Rectangular(Fields fields, ProblemList problems)
    {
        double? thickness = fields.Number("thickness_mm", Quantities.Thickness);
        double? width = fields.Number("width_mm", Quantities.WireWidth);
        double? radius = fields.Number("edge_radius_mm", Quantities.EdgeRadius, 0);
        if (thickness is not { } h || width is not { } w || radius is not { } r)
            return null;

        double half = Math.Min(h, w) / 2;
        if (r < half)
            return Mechanics.Sections.Section.Rectangular(h, w, r);

        problems.Add(
            ProblemCodes.EdgeTooRound, fields.Node.PathOf("edge_radius_mm"),
            $"The edges of the wire have a radius of {Say.Length(r)} mm; half of its shorter side is "
            + $"{Say.Length(half)} mm.",
            "Give a radius below half of the shorter side (0.05 mm is usual), 0 for sharp edges, or make the section "
            + "round.");
        return null;
    }
}
