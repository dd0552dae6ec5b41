using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>A step as a file gives it.</summary>
/// <param name="Step">Temperature and moves.</param>
/// <param name="Offsets">One a move; null where the file gives a frame.</param>
internal sealed record StepGiven(Step Step, ImmutableArray<ClinicalOffset?> Offsets);

/// <summary>Reads the steps after engagement.</summary>
internal static class StepReading
{
    /// <summary>Most steps of a case.</summary>
    public const int MostSteps = 1000;

    public static ImmutableArray<StepGiven> Steps(
        Node node, IReadOnlyList<SlotGiven> slots, string? jaw, ProblemList problems)
    {
        var steps = ImmutableArray.CreateBuilder<StepGiven>();
        foreach (Node item in NodeReading.List(node, "steps", 0, MostSteps, problems) ?? [])
        {
            if (Step(item, slots, jaw, problems) is { } step)
                steps.Add(step);
        }

        return steps.ToImmutable();
    }

    private static StepGiven? Step(Node node, IReadOnlyList<SlotGiven> slots, string? jaw, ProblemList problems)
    {
        if (Fields.Of(node, CaseKeys.Step, $"of the step {node.Path}", problems) is not { } fields)
            return null;

        double? temperature = fields.Find("temperature_degC") is { } t
            ? NodeReading.Number(t, Quantities.Temperature, fields.Whose, problems)
            : null;
        var moves = new List<(int Slot, SlotFrame Actual)>();
        var offsets = new List<ClinicalOffset?>();
        if (fields.Find("slots") is { } list)
        {
            var named = new HashSet<string>(StringComparer.Ordinal);
            foreach (Node item in NodeReading.List(list, "slots", 1, Arrangement.MostSlots, problems) ?? [])
                Move(item, slots, jaw, named, moves, offsets, problems);
        }
        else if (!fields.Has("temperature_degC"))
        {
            problems.Add(
                ProblemCodes.StepEmpty, node.Path, "The step changes neither the temperature nor a slot.",
                "Give “temperature_degC” or “slots”, or take the step out.");
        }

        return new StepGiven(new Step(temperature, [.. moves]), [.. offsets]);
    }

    private static void Move(
        Node node,
        IReadOnlyList<SlotGiven> slots,
        string? jaw,
        HashSet<string> named,
        List<(int Slot, SlotFrame Actual)> moves,
        List<ClinicalOffset?> offsets,
        ProblemList problems)
    {
        if (Fields.Of(node, CaseKeys.StepSlot, $"of {node.Path}", problems) is not { } fields
            || fields.Need("tooth") is not { } tooth
            || SlotReading.Tooth(tooth, jaw, fields.Whose, problems).Label is not { } label)
        {
            return;
        }

        int index = IndexOf(slots, label);
        if (index < 0)
        {
            string[] known = [.. slots.Select(s => s.Label).OfType<string>().Take(Arrangement.MostSlots)];
            problems.Add(
                ProblemCodes.StepUnknownTooth, tooth.Path,
                $"There is no slot {Say.Quote(label)} in this case.",
                $"Name one of the slots: {Say.List(known)}.");
            return;
        }

        if (!named.Add(label))
        {
            problems.Add(
                ProblemCodes.StepToothTwice, tooth.Path, $"The step moves {slots[index].Called} twice.",
                "Keep one of the two, or make two steps.");
        }

        if (!fields.Has("offset") && !fields.Has("actual"))
        {
            problems.Add(
                ProblemCodes.StepEmpty, node.Path,
                $"The step names {slots[index].Called} and does not say where it goes.",
                "Give “offset” or “actual”, or leave the slot out: it then stays.");
            return;
        }

        PlaceGiven place = PlaceReading.Place(
            fields, slots[index].Called, slots[index].Rest, slots[index].Axes, problems);
        if (place.Actual is { } actual)
        {
            moves.Add((index, actual));
            offsets.Add(place.Offset);
        }
    }

    private static int IndexOf(IReadOnlyList<SlotGiven> slots, string label)
    {
        for (int i = 0; i < slots.Count; i++)
        {
            if (string.Equals(slots[i].Label, label, StringComparison.Ordinal))
                return i;
        }

        return -1;
    }
}
