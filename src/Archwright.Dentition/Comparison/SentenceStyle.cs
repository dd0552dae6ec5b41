using System.Globalization;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Comparison;

/// <summary>How a practice reads figures and teeth in a sentence.</summary>
/// <param name="Force">A force [N] with its unit.</param>
/// <param name="Moment">A moment [N·mm] with its unit.</param>
/// <param name="Notation">Tooth numbers; teeth are named in words as well.</param>
/// <param name="SaysTransforms">Whether the sentence says what it means for its force that an alloy transforms; false
/// where that stands once for all wires beside them.</param>
public sealed record SentenceStyle(
    Func<double, string> Force, Func<double, string> Moment, ToothNotation Notation, bool SaysTransforms = true)
{
    /// <summary>Newtons and ISO 3950: what files hold.</summary>
    public static SentenceStyle Default { get; } = new(
        force => force.ToString("0.00", CultureInfo.InvariantCulture) + " N",
        moment => moment.ToString("0.00", CultureInfo.InvariantCulture) + " N·mm",
        ToothNotation.Iso);

    /// <summary>The sentence of a compared wire in this style.</summary>
    /// <param name="wire">A wire compared on the arch.</param>
    /// <param name="arch">The arch.</param>
    /// <returns>For a wire that cannot be engaged, <see cref="ComparedWire.Sentence"/> with the teeth of this notation.
    /// </returns>
    public string Say(ComparedWire wire, Arrangement arch)
    {
        if (wire.Engaged)
            return new WireSentences(arch, this).Engaged(wire);

        string sentence = wire.Sentence;
        foreach (Slot slot in arch.Slots)
        {
            if (ToothNumber.TryParse(slot.Label, out ToothNumber tooth))
            {
                sentence = sentence.Replace(
                    $"{tooth.Name} ({tooth.ToIso()})", $"{tooth.Name} ({tooth.Show(Notation)})",
                    StringComparison.Ordinal);
            }
        }

        return sentence;
    }
}
