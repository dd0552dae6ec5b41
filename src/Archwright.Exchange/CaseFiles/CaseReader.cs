using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Reads case files, <c>archwright-case/1</c>. Everything that is wrong is gathered; a case comes back only
/// when nothing is.</summary>
/// <remarks>The format is described in <c>docs/case-files.md</c> and
/// <c>docs/schema/archwright-case-1.schema.json</c>.</remarks>
public static class CaseReader
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-case/1";

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    public static Read<CaseFile> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    public static Read<CaseFile> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<CaseFile> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || JsonText.Parse(text, problems) is not { } root)
            return problems.Settle<CaseFile>(null);

        if (Formats.Open(root, Format, CaseKeys.Case, "of the case", problems) is not { } fields)
            return problems.Settle<CaseFile>(null);

        return problems.Settle(Case(fields, text, problems));
    }

    private static CaseFile? Case(Fields fields, byte[] text, ProblemList problems)
    {
        string? title = fields.Find("title") is { } node
            ? NodeReading.Text(node, "title", "of the case", problems, mayBeBlank: true)
            : "";
        string? jaw = fields.Word("arch", CaseFile.Upper, CaseFile.Lower, CaseFile.Bench);
        double? temperature = fields.Number("temperature_degC", Quantities.Temperature, UsualTemperature);
        double? tissue = fields.Number("soft_tissue", Quantities.SoftTissue, 0);
        WireGiven wire = fields.Need("wire") is { } w ? WireReading.Wire(w, problems) : new WireGiven();
        List<SlotGiven> slots = Slots(fields, jaw, problems);
        ImmutableArray<AbsentTooth> absent = fields.Find("absent") is { } gone
            ? AbsentReading.Teeth(gone, slots, jaw, problems)
            : [];
        ImmutableArray<StepGiven> steps = fields.Find("then") is { } then
            ? StepReading.Steps(then, slots, jaw, problems)
            : [];
        string? visit = fields.Find("visit") is { } v ? VisitReading.Visit(v, text, problems) : null;

        if (slots.Count is >= 2 and <= Arrangement.MostSlots)
            OrderChecks.Check(slots, jaw, problems);
        if (wire.Section is { } section)
            FitChecks.Check(section, slots, problems);
        if (!problems.IsEmpty)
            return null;

        Arrangement arrangement = Assemble(wire, slots, temperature!.Value);
        if (!RestChecks.Check(arrangement, slots, problems))
            return null;

        return new CaseFile
        {
            Title = title!,
            Jaw = jaw!,
            SoftTissue = tissue!.Value,
            Teeth = [.. slots.Select(s => s.Tooth)],
            Axes = [.. slots.Select(s => s.Axes)],
            Offsets = [.. slots.Select(s => s.Offset)],
            Arrangement = arrangement,
            Absent = absent,
            Then = [.. steps.Select(s => s.Step)],
            StepOffsets = [.. steps.Select(s => s.Offsets)],
            WireId = wire.WireId,
            AlloyId = wire.AlloyId,
            VisitJson = visit,
        };
    }

    /// <summary>Temperature of a case that gives none [°C]: a closed mouth.</summary>
    public const double UsualTemperature = 36;

    private static List<SlotGiven> Slots(Fields fields, string? jaw, ProblemList problems)
    {
        if (fields.Need("slots") is not { } node)
            return [];

        if (node.Kind == NodeKind.Array && node.Items.Count < 2)
        {
            problems.Add(
                ProblemCodes.SlotsTooFew, node.Path,
                node.Items.Count == 1 ? "There is one slot." : "There are no slots.",
                $"List 2 to {Arrangement.MostSlots} slots from the patient's right to the left.");
        }
        else if (node.Kind == NodeKind.Array && node.Items.Count > Arrangement.MostSlots)
        {
            problems.Add(
                ProblemCodes.SlotsTooMany, node.Path,
                $"There are {node.Items.Count} slots; an arch has at most {Arrangement.MostSlots}.",
                "Leave out what does not belong to this arch.");
        }

        List<Node> items = NodeReading.List(node, "slots", 0, int.MaxValue, problems) ?? [];
        return [.. items.Select(item => SlotReading.Slot(item, jaw, problems))];
    }

    // Called when there is no problem: everything has been read.
    private static Arrangement Assemble(WireGiven wire, List<SlotGiven> slots, double temperature) => new()
    {
        Wire = wire.Wire!,
        Rest = wire.Rest!,
        Ends = wire.Ends!.Value,
        Temperature = temperature,
        Slots = [.. slots.Select(slot => slot.IsBonded ? Assemble(slot, wire.Wire!) : Bare(slot, slots, wire.Wire!))],
    };

    // A crown without a bracket has the height and depth of the first channel of the arch, should it ever be bonded.
    private static Slot Bare(SlotGiven bare, List<SlotGiven> slots, Wire wire) => Assemble(
        bare with
        {
            Width = SlotReading.WidthWhereItDoesNotMatter,
            Height = slots.Find(slot => slot is { IsBonded: true, Height: > 0 })?.Height ?? 0,
            Depth = slots.Find(slot => slot is { IsBonded: true, Height: > 0 })?.Depth ?? 0,
        },
        wire).Unbonded();

    private static Slot Assemble(SlotGiven slot, Wire wire) => new()
    {
        Label = slot.Label!,
        Rest = slot.Rest!.Value,
        Actual = slot.Actual!.Value,
        Width = slot.Width!.Value,
        Height = Snug(slot.Height!.Value, wire.Section.Thickness),
        Depth = Snug(slot.Depth!.Value, wire.Section.Width),
        Tie = slot.Tie!,
        Hold = slot.Hold!.Value,
        Friction = slot.Friction!.Value,
    };

    // A slot that the wire just fills is as large as the wire, to the last digit.
    private static double Snug(double opening, double wire) =>
        wire > opening && wire <= opening + FitChecks.Rounding ? wire : opening;
}
