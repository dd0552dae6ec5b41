using System.Text.RegularExpressions;
using Archwright.Dentition.Catalogue;

namespace Archwright.Cli.Running;

/// <summary>Finds a wire of the catalogue however its size is spelled: ss-019x025, ss-.019x.025, "SS 19×25".</summary>
internal static partial class WireNames
{
    /// <summary>The wire of this name.</summary>
    /// <exception cref="Refusal">There is none; the message says which are near.</exception>
    public static CatalogueWire Find(WireCatalogue catalogue, string typed)
    {
        if (catalogue.TryFind(typed, out CatalogueWire? wire) || catalogue.TryFind(Usual(typed), out wire))
            return wire;

        string guess = Nearest.Sentence(Usual(typed), catalogue.Wires.Select(known => known.Id));
        throw new Refusal(
            $"the catalogue has no wire '{typed}'.",
            (guess.Length > 0 ? guess + " " : "") + "All of them: archwright wires");
    }

    /// <summary>The usual spelling: alloy, hyphen, sizes in thousandths of an inch with three digits or more.</summary>
    internal static string Usual(string typed)
    {
        Match match = Spelling().Match(typed.Trim().ToLowerInvariant());
        if (!match.Success)
            return typed.Trim().ToLowerInvariant();

        string thickness = Digits(match.Groups["a"].Value);
        string width = match.Groups["b"].Success ? "x" + Digits(match.Groups["b"].Value) : "";
        return $"{match.Groups["alloy"].Value}-{thickness}{width}";
    }

    // "0.019", ".019", "019" and "19" are all nineteen thousandths; "0215" and "21.5" are twenty-one and a half.
    private static string Digits(string size)
    {
        int point = size.IndexOf('.');
        if (point >= 0 && size[..point].Trim('0').Length == 0)
            return size[(point + 1)..];

        string digits = size.Replace(".", "", StringComparison.Ordinal);
        return digits.StartsWith('0') ? digits : "0" + digits;
    }

    [GeneratedRegex(@"^(?<alloy>[a-z]+(27|35|40)?)[\s_-]+(?<a>[0-9.]+)(\s*[x×*]\s*(?<b>[0-9.]+))?(\s*in)?$")]
    private static partial Regex Spelling();
}
