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
            foreach (string word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
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
}
