using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;

namespace Archwright.Validation.Record;

/// <summary>The figures of a set-up: <c>key=value; key=value</c>.</summary>
public sealed class SetUp
{
    private readonly string check;
    private readonly Dictionary<string, string> values = new(StringComparer.Ordinal);

    /// <summary>Reads them.</summary>
    /// <param name="check">Id of the check, for messages.</param>
    /// <param name="text">As in the table; may be empty.</param>
    /// <exception cref="TableException">A pair is not one, or a key is there twice.</exception>
    public SetUp(string check, string text)
    {
        this.check = check;
        foreach (string pair in text.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            string[] parts = pair.Split('=', 2);
            if (parts.Length != 2 || !values.TryAdd(parts[0].Trim(), parts[1].Trim()))
                throw new TableException($"The check '{check}' has a faulty set-up: '{pair}'. Write key=value once.");
        }
    }

    /// <summary>Whether a key is given.</summary>
    public bool Has(string key) => values.ContainsKey(key);

    /// <summary>A word.</summary>
    /// <exception cref="TableException">It is not given.</exception>
    public string Text(string key) => values.TryGetValue(key, out string? value)
        ? value
        : throw new TableException($"The check '{check}' does not give '{key}'.");

    /// <summary>A figure.</summary>
    /// <exception cref="TableException">It is not given, or no number.</exception>
    public double Number(string key) =>
        double.TryParse(Text(key), NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            ? value
            : throw new TableException($"The check '{check}' gives '{key}' as '{Text(key)}', which is no number.");

    /// <summary>A figure, or what is usual.</summary>
    /// <exception cref="TableException">It is no number.</exception>
    public double Number(string key, double usual) => Has(key) ? Number(key) : usual;

    /// <summary>A length given in thousandths of an inch [mm].</summary>
    /// <exception cref="TableException">It is not given, or no number.</exception>
    public double Mils(string key) => Number(key) * Millimetres.PerInch / 1000;

    /// <summary>A wire of the catalogue.</summary>
    /// <exception cref="TableException">It is not given, or not in the catalogue.</exception>
    public CatalogueWire Wire(string key = "wire") =>
        WireCatalogue.Default.TryFind(Text(key), out CatalogueWire? wire)
            ? wire
            : throw new TableException($"The check '{check}' names no wire of the catalogue: '{Text(key)}'.");

    /// <summary>An alloy of the catalogue.</summary>
    /// <exception cref="TableException">It is not given, or not in the catalogue.</exception>
    public CatalogueAlloy Alloy(string key = "alloy") =>
        WireCatalogue.Default.TryFindAlloy(Text(key), out CatalogueAlloy? alloy)
            ? alloy
            : throw new TableException($"The check '{check}' names no alloy of the catalogue: '{Text(key)}'.");

    /// <summary>The other set-up of a ratio: <c>other_key=value</c> stands for <c>key=value</c>.</summary>
    public SetUp Other()
    {
        const string prefix = "other_";
        List<string> pairs = [];
        foreach ((string key, string value) in values)
        {
            if (key.StartsWith(prefix, StringComparison.Ordinal))
                pairs.Add($"{key[prefix.Length..]}={value}");
            else if (!values.ContainsKey(prefix + key))
                pairs.Add($"{key}={value}");
        }

        return new SetUp(check, string.Join("; ", pairs));
    }

    /// <summary>As in the table.</summary>
    public override string ToString() => string.Join("; ", values.Select(pair => $"{pair.Key}={pair.Value}"));
}
