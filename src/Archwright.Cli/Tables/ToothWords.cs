using System.Text.RegularExpressions;
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

    /// <summary>How teeth are numbered, in words; empty on the bench.</summary>
    public string NumberedBy => Case.Jaw == CaseFile.Bench ? "" : Notation switch
    {
        ToothNotation.Universal => "teeth by Universal numbers",
        ToothNotation.Palmer => "teeth by Palmer numbers",
        _ => "teeth by ISO 3950",
    };

    /// <summary>The number of a slot's tooth, or its label on the bench.</summary>
    public string Number(int slot) => Case.Teeth[slot] is { } tooth
        ? tooth.Show(Notation)
        : Case.Arrangement.Slots[slot].Label;

    /// <summary>In words with the number: "the upper right canine (13)".</summary>
    public string Name(int slot) => Case.Teeth[slot] is { } tooth
        ? $"the {tooth.Name} ({tooth.Show(Notation)})"
        : $"slot {Case.Arrangement.Slots[slot].Label}";

    /// <summary>A sentence of the mechanics, which knows teeth by the label of their slot alone, with the teeth named.
    /// </summary>
    public string Named(string sentence)
    {
        for (int i = 0; i < Case.Teeth.Length; i++)
        {
            string label = Regex.Escape(Case.Arrangement.Slots[i].Label);
            string name = Name(i);
            sentence = Regex.Replace(
                sentence, $@"\b(at|near|on|of) {label}(?!\w|\.\d)", match => $"{match.Groups[1].Value} {name}",
                RegexOptions.None, TimeSpan.FromSeconds(1));
        }

        return sentence;
    }
}
