using System.Collections.Immutable;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;
using Archwright.Mechanics.Engagement;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Reads the teeth that are not there.</summary>
internal static class AbsentReading
{
    public static ImmutableArray<AbsentTooth> Teeth(
        Node node, IReadOnlyList<SlotGiven> slots, string? jaw, ProblemList problems)
    {
        var absent = ImmutableArray.CreateBuilder<AbsentTooth>();
        foreach (Node item in NodeReading.List(node, "teeth", 0, Arrangement.MostSlots, problems) ?? [])
        {
            if (One(item, jaw, problems) is not { } tooth)
                continue;

            if (slots.Any(slot => slot.Tooth == tooth.Tooth) || absent.Any(other => other.Tooth == tooth.Tooth))
            {
                problems.Add(
                    ProblemCodes.ToothTwice, item.PathOf("tooth"),
                    $"Tooth {tooth.Tooth} is said to be absent, and stands in the file a second time.",
                    "A tooth has a slot, or is absent: keep one of the two.");
            }
            else
            {
                absent.Add(tooth);
            }
        }

        return absent.ToImmutable();
    }

    private static AbsentTooth? One(Node node, string? jaw, ProblemList problems)
    {
        if (Fields.Of(node, CaseKeys.AbsentTooth, "of the absent tooth", problems) is not { } fields
            || fields.Need("tooth") is not { } number)
        {
            return null;
        }

        string? why = fields.Word("why", AbsentTooth.Extracted, AbsentTooth.Unerupted, AbsentTooth.Missing);
        if (jaw is CaseFile.Bench)
        {
            problems.Add(
                ProblemCodes.ToothUnknown, number.Path, "A bench set-up has no teeth that could be absent.",
                "Take “absent” out, or write \"arch\": \"upper\" or \"lower\".");
            return null;
        }

        return SlotReading.Tooth(number, jaw, fields.Whose, problems).Tooth is { } tooth && why is not null
            ? new AbsentTooth(tooth, why) : null;
    }
}
