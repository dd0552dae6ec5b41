namespace Archwright.Cli.Running;

/// <summary>Breaks text into lines at spaces.</summary>
internal static class Wrap
{
    /// <summary>The lines of a text; a word longer than the width stands alone; line breaks in the text stay.</summary>
    public static IEnumerable<string> Lines(string text, int width)
    {
        if (text.Length == 0)
            yield break;

        foreach (string paragraph in text.Split('\n'))
        {
            string line = "";
            foreach (string word in Words(paragraph))
            {
                if (line.Length > 0 && line.Length + 1 + word.Length > width)
                {
                    yield return line;
                    line = "";
                }

                line = line.Length == 0 ? word : line + " " + word;
            }

            yield return line;
        }
    }

    /// <summary>The words of a line; a unit stays with its figure.</summary>
    public static IEnumerable<string> Words(string line)
    {
        string? held = null;
        foreach (string word in line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (held is null)
            {
                held = word;
            }
            else if (IsUnit(word) && char.IsAsciiDigit(held[^1]))
            {
                held += " " + word;
            }
            else
            {
                yield return held;
                held = word;
            }
        }

        if (held is not null)
            yield return held;
    }

    private static bool IsUnit(string word) =>
        word.TrimEnd('.', ',', ';', ':', ')') is "%" or "N" or "cN" or "gf" or "mm" or "in"
            or "N·mm" or "cN·mm" or "gf·mm" or "°C" or "degrees" or "ms" or "GPa" or "MPa";
}
