using System.Text;
using System.Text.Json;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Checks the <c>visit</c> object of a case, and keeps its text for the programs that use it.</summary>
/// <remarks>Ids of wires are checked for being ids, not for being in the catalogue: the object is none of the
/// business of solving, and a wire that only the visit names must not keep a case from being solved.</remarks>
internal static class VisitReading
{
    private const int MostStock = 1000;

    private static readonly string[] Alerts = ["nickel", "resorption", "medication", "hygiene", "reduced-support"];

    /// <summary>The object's text on one line, or null with problems.</summary>
    public static string? Visit(Node node, ReadOnlySpan<byte> text, ProblemList problems)
    {
        int before = problems.Count;
        if (Fields.Of(node, CaseKeys.Visit, "of the visit", problems) is not { } fields)
            return null;

        if (fields.Find("present") is { Kind: not NodeKind.Null } present)
            Present(present, problems);
        if (fields.Find("slot_in") is { } slot)
            SlotSize(slot, problems);
        if (fields.Find("working_wire") is { } wire)
            WireId(wire, "working wire", problems);
        if (fields.Find("stock") is { } stock)
            Stock(stock, problems);
        if (fields.Find("alerts") is { } alerts)
            AlertWords(alerts, problems);
        fields.Number("discomfort_0_10", Quantities.Discomfort, 0);
        fields.Number("age_years", Quantities.Age, 0);

        return problems.Count == before ? OnOneLine(text[node.Start..node.End]) : null;
    }

    private static void Present(Node node, ProblemList problems)
    {
        if (Fields.Of(node, CaseKeys.PresentWire, "of the present wire", problems) is not { } fields)
            return;

        if (fields.Need("catalogue") is { } id)
            WireId(id, "present wire", problems);
        fields.Number("weeks", Quantities.Weeks, 0);
    }

    private static void SlotSize(Node node, ProblemList problems)
    {
        if (node.Kind == NodeKind.Number && node.Number is 0.018 or 0.022)
            return;

        problems.Add(
            ProblemCodes.ValueWord, node.Path, $"The slot of the visit is {node.Describe()}.",
            "Write 0.018 or 0.022 (inches).");
    }

    private static void Stock(Node node, ProblemList problems)
    {
        foreach (Node item in NodeReading.List(node, "wires", 0, MostStock, problems) ?? [])
            WireId(item, "wire in stock", problems);
    }

    private static void AlertWords(Node node, ProblemList problems)
    {
        foreach (Node item in NodeReading.List(node, "alerts", 0, Alerts.Length, problems) ?? [])
            NodeReading.Word(item, "alerts", "of the visit", problems, Alerts);
    }

    private static void WireId(Node node, string what, ProblemList problems)
    {
        if (NodeReading.Text(node, what, "of the visit", problems) is not { } id
            || id.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.'))
        {
            return;
        }

        problems.Add(
            ProblemCodes.WireUnknown, node.Path, $"{Say.Quote(id)} is no id of a wire.",
            "Write an id of the catalogue, for example \"niti-014\"; “archwright wires” lists them.");
    }

    private static string OnOneLine(ReadOnlySpan<byte> json)
    {
        using var copy = new MemoryStream();
        using (var writer = new Utf8JsonWriter(copy))
        {
            var reader = new Utf8JsonReader(json);
            using JsonDocument document = JsonDocument.ParseValue(ref reader);
            document.WriteTo(writer);
        }

        return Encoding.UTF8.GetString(copy.ToArray());
    }
}
