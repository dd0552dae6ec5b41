using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Tables;

/// <summary>How the slots of a case are called in the practice's notation.</summary>
/// <param name="Case">The case.</param>
/// <param name="Notation">Notation of the practice.</param>
internal sealed record ToothWords(CaseFile Case, ToothNotation Notation)
{
    /// <summary>Heading of a column of numbers: the notation, since a bare number says nothing.</summary>
    public string Heading => Case.Jaw == CaseFile.Bench ? "slot" : Notation switch
    {
        ToothNotation.Universal => "tooth\nUniversal",
        ToothNotation.Palmer => "tooth\nPalmer",
        _ => "tooth\nISO",
    };

    /// <summary>The number of a slot's tooth, or its label on the bench.</summary>
    public string Number(int slot) => Case.Teeth[slot] is { } tooth
        ? tooth.Show(Notation)
        : Case.Arrangement.Slots[slot].Label;

    /// <summary>In words with the number: "the upper right canine (13)".</summary>
    public string Name(int slot) => Case.Teeth[slot] is { } tooth
        ? $"the {tooth.Name} ({tooth.Show(Notation)})"
        : $"slot {Case.Arrangement.Slots[slot].Label}";
}
