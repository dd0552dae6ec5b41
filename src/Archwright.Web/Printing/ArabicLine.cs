using System.Text;

namespace Archwright.Web.Printing;

/// <summary>Arabic as it is drawn: letters in their joined shapes, from right to left. For our own leaflets: plain
/// letters without vowel marks, numbers, and Latin words between them.</summary>
/// <remarks>
/// The printing library draws one sign after the other from left to right and joins nothing. Shapes are those of the
/// block Arabic Presentation Forms-B of the Unicode Standard (U+FE70 to U+FEFF), which every face with Arabic carries
/// for this use; which letter joins where is that of its table of joining types. Of the standard's rules for lines of
/// two directions, this is the part that our texts need: numbers and Latin words keep their own order, punctuation
/// follows the line. A shaping library would place vowel marks too, but its glyphs cannot be handed to the printing
/// library.
/// </remarks>
public static class ArabicLine
{
    private const int FirstShape = 0xFE80;

    // In the order of the block: a letter with two shapes joins to its right alone, one with four to both sides, the
    // hamza to none.
    private const string InOrder = "ءآأؤإئابةتثجحخدذرزسشصضطظعغفقكلمنهوىي";
    private const string ToTheRightAlone = "آأؤإاةدذرزوى";

    private static readonly Dictionary<char, (int Shape, int Count)> Shapes = Table();

    // Lam with an alef after it is one sign: alone, and joined to its right.
    private static readonly Dictionary<char, int> LamAlef = new()
    {
        ['آ'] = 0xFEF5, ['أ'] = 0xFEF7, ['إ'] = 0xFEF9, ['ا'] = 0xFEFB,
    };

    private static readonly Dictionary<char, string> Plain = Shapes
        .SelectMany(one => Enumerable.Range(one.Value.Shape, one.Value.Count).Select(
            shape => ((char)shape, one.Key.ToString())))
        .Concat(LamAlef.SelectMany(one => new[]
        {
            ((char)one.Value, "ل" + one.Key), ((char)(one.Value + 1), "ل" + one.Key),
        }))
        .ToDictionary(one => one.Item1, one => one.Item2);

    /// <summary>The letters of a word in their shapes, still in the order of reading.</summary>
    public static string Shape(string word)
    {
        var shaped = new StringBuilder(word.Length);
        for (int i = 0; i < word.Length; i++)
        {
            bool right = i > 0 && JoinsToTheLeft(word[i - 1]) && Shapes.ContainsKey(word[i]) && word[i] != 'ء';
            if (word[i] == 'ل' && i + 1 < word.Length && LamAlef.TryGetValue(word[i + 1], out int both))
            {
                shaped.Append((char)(both + (right ? 1 : 0)));
                i++;
            }
            else if (Shapes.TryGetValue(word[i], out (int Shape, int Count) letter))
            {
                bool left = letter.Count == 4 && i + 1 < word.Length && word[i + 1] != 'ء'
                    && Shapes.ContainsKey(word[i + 1]);
                shaped.Append((char)(letter.Shape + (right ? 1 : 0) + (left ? 2 : 0)));
            }
            else
            {
                shaped.Append(word[i]);
            }
        }

        return shaped.ToString();
    }

    /// <summary>The letters that a shape stands for, in the order of reading; any other sign is itself.</summary>
    public static string Letters(char shape) =>
        Plain.TryGetValue(shape, out string? letters) ? letters : shape.ToString();

    /// <summary>A line as it is drawn from left to right.</summary>
    /// <param name="words">Its words in the order of reading.</param>
    public static string Visual(IReadOnlyList<string> words)
    {
        var drawn = new List<string>();
        for (int i = 0; i < words.Count; i++)
        {
            // From a Latin word on, Latin words and numbers keep their order; numbers alone follow the line.
            int end = i;
            while (end < words.Count && !IsArabic(words[end])
                   && words[end].Any(end == i ? char.IsLetter : char.IsLetterOrDigit))
            {
                end++;
            }

            if (end > i + 1)
            {
                drawn.Add(LeftToRight(string.Join(' ', words.Skip(i).Take(end - i))));
                i = end - 1;
            }
            else
            {
                drawn.Add(IsArabic(words[i]) ? Reversed(Shape(words[i])) : LeftToRight(words[i]));
            }
        }

        drawn.Reverse();
        return string.Join(' ', drawn);
    }

    /// <summary>True when a word holds an Arabic letter.</summary>
    public static bool IsArabic(string word) => word.Any(letter => letter is >= '\u0620' and <= '\u064A');

    // Punctuation at the end of such a run belongs to the line around it, and stands on its left.
    private static string LeftToRight(string run)
    {
        string bare = run.TrimEnd('.', ',', ':', ';', '،', '؛', '؟', '!');
        return Reversed(run[bare.Length..]) + bare;
    }

    // Numbers inside a word keep their order; brackets turn round.
    private static string Reversed(string text)
    {
        var turned = new StringBuilder(text.Length);
        for (int i = text.Length - 1; i >= 0; i--)
        {
            int first = i;
            while (char.IsAsciiLetterOrDigit(text[first]) && first > 0 && char.IsAsciiLetterOrDigit(text[first - 1]))
                first--;
            if (first < i)
                turned.Append(text, first, i - first + 1);
            else
                turned.Append(text[i] switch { '(' => ')', ')' => '(', var sign => sign });
            i = first;
        }

        return turned.ToString();
    }

    private static bool JoinsToTheLeft(char letter) =>
        Shapes.TryGetValue(letter, out (int Shape, int Count) found) && found.Count == 4;

    private static Dictionary<char, (int Shape, int Count)> Table()
    {
        var table = new Dictionary<char, (int Shape, int Count)>();
        int next = FirstShape;
        foreach (char letter in InOrder)
        {
            int count = letter == 'ء' ? 1 : ToTheRightAlone.Contains(letter) ? 2 : 4;
            table[letter] = (next, count);
            next += count;
        }

        return table;
    }
}
