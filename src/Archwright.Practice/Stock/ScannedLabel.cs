using System.Globalization;

namespace Archwright.Practice.Stock;

/// <summary>What a scanned label says.</summary>
/// <param name="Gtin">Number of the article, GTIN-14; empty when it says none.</param>
/// <param name="Lot">Lot; empty when it says none.</param>
/// <param name="Expires">Last day of use; null when it says none.</param>
/// <param name="IsPlain">True when the text is no label after GS1: it stands as it is in <see cref="Lot"/>.</param>
/// <param name="Problem">What is wrong with it; empty when nothing is.</param>
/// <remarks>GS1 General Specifications, sections 3 (application identifiers), 5.4 and 7.8 (element strings and
/// separators), 7.9 (check digit), 7.12 (century); sections, identifiers and lengths from memory. Read: 01 article,
/// 10 lot, 17 expiry; others are passed over.</remarks>
public sealed record ScannedLabel(string Gtin, string Lot, DateOnly? Expires, bool IsPlain, string Problem)
{
    // Group separator: what a scanner sends where the symbol has its FNC1.
    private const char Separator = '\u001d';

    private const int MostSigns = 200;

    // Identifiers of a length that is fixed beforehand, by their first two digits; the length of the whole element.
    private static readonly Dictionary<string, int> Fixed = new(StringComparer.Ordinal)
    {
        ["00"] = 20, ["01"] = 16, ["02"] = 16, ["03"] = 16, ["04"] = 18, ["11"] = 8, ["12"] = 8, ["13"] = 8,
        ["14"] = 8, ["15"] = 8, ["16"] = 8, ["17"] = 8, ["18"] = 8, ["19"] = 8, ["20"] = 4, ["31"] = 10, ["32"] = 10,
        ["33"] = 10, ["34"] = 10, ["35"] = 10, ["36"] = 10, ["41"] = 16,
    };

    // What a scanner puts before the text when it is told to say the kind of symbol.
    private static readonly string[] Symbols = ["]C1", "]e0", "]d2", "]Q3", "]J1"];

    /// <summary>Reads a text as a scanner types it.</summary>
    /// <param name="text">The text; a scanner may end it with a line end.</param>
    /// <param name="today">The day, for the century of the expiry.</param>
    public static ScannedLabel Read(string text, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(text);
        string plain = text.Trim(' ', '\t', '\r', '\n');
        if (plain.Length > MostSigns)
            return new("", "", null, IsPlain: true, "The text is too long for a label. Scan it once more.");

        string? symbol = Symbols.FirstOrDefault(one => plain.StartsWith(one, StringComparison.Ordinal));
        string body = symbol is null ? plain : plain[symbol.Length..];
        if (body.StartsWith('('))
            return Of(Bracketed(body), plain, today);

        bool isGs1 = symbol is not null || body.Contains(Separator)
            || (body.Length >= 16 && body.StartsWith("01", StringComparison.Ordinal) && IsGtin(body[2..16]));
        return isGs1 ? Of(Elements(body), plain, today) : new("", plain, null, IsPlain: true, "");
    }

    /// <summary>True for fourteen digits of which the last checks the others.</summary>
    public static bool IsGtin(string digits)
    {
        if (digits.Length != 14 || !digits.All(char.IsAsciiDigit))
            return false;

        int sum = 0;
        for (int i = 0; i < digits.Length; i++)
            sum += (digits[i] - '0') * (i % 2 == 0 ? 3 : 1);
        return sum % 10 == 0;
    }

    private static ScannedLabel Of(Dictionary<string, string>? elements, string plain, DateOnly today)
    {
        if (elements is null)
            return new("", plain, null, IsPlain: true, "The label could not be read whole. Scan it once more.");

        string gtin = elements.GetValueOrDefault("01", "");
        string lot = elements.GetValueOrDefault("10", "");
        string problem = gtin.Length > 0 && !IsGtin(gtin)
            ? "The number of the article does not check. Scan the label once more." : "";
        DateOnly? expires = null;
        if (elements.TryGetValue("17", out string? date))
        {
            expires = Day(date, today);
            if (expires is null)
                problem = $"The label gives {date} as its expiry, which is no day. Type it from the label.";
        }

        return new(problem.Length == 0 || IsGtin(gtin) ? gtin : "", lot, expires, IsPlain: false, problem);
    }

    // As people write a label: (01)09506000134352(17)271231(10)ABC.
    private static Dictionary<string, string>? Bracketed(string body)
    {
        Dictionary<string, string> found = new(StringComparer.Ordinal);
        foreach (string part in body.Split('(', StringSplitOptions.RemoveEmptyEntries))
        {
            int end = part.IndexOf(')', StringComparison.Ordinal);
            if (end is < 2 or > 4 || !part[..end].All(char.IsAsciiDigit))
                return null;

            found[part[..end]] = part[(end + 1)..].Trim();
        }

        return found;
    }

    private static Dictionary<string, string>? Elements(string body)
    {
        Dictionary<string, string> found = new(StringComparer.Ordinal);
        int at = 0;
        while (at < body.Length)
        {
            if (body[at] == Separator)
            {
                at++;
                continue;
            }

            if (at + 2 > body.Length || !char.IsAsciiDigit(body[at]) || !char.IsAsciiDigit(body[at + 1]))
                return null;

            string identifier = body.Substring(at, 2);
            int end = Fixed.TryGetValue(identifier, out int length) ? at + length
                : body.IndexOf(Separator, at) is var next and >= 0 ? next : body.Length;
            if (end > body.Length)
                return null;

            // Of the identifiers with three or four digits none is read: their first two name none of the three.
            found.TryAdd(identifier, body[(at + 2)..end]);
            at = end;
        }

        return found;
    }

    // Section 7.12: a year 51 to 99 above this year's last two digits is of the last century, one 50 to 99 below of the
    // next. Day 00 is the last of the month.
    private static DateOnly? Day(string text, DateOnly today)
    {
        if (text.Length != 6 || !text.All(char.IsAsciiDigit))
            return null;

        int year = int.Parse(text.AsSpan(0, 2), CultureInfo.InvariantCulture);
        int month = int.Parse(text.AsSpan(2, 2), CultureInfo.InvariantCulture);
        int day = int.Parse(text.AsSpan(4, 2), CultureInfo.InvariantCulture);
        int century = today.Year / 100 * 100;
        int ahead = year - today.Year % 100;
        year += century + (ahead >= 51 ? -100 : ahead <= -50 ? 100 : 0);
        if (month is < 1 or > 12 || day > DateTime.DaysInMonth(year, month))
            return null;

        return new DateOnly(year, month, day == 0 ? DateTime.DaysInMonth(year, month) : day);
    }
}
