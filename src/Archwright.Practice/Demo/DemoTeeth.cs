using System.Text.RegularExpressions;
using Archwright.Dentition.Teeth;

namespace Archwright.Practice.Demo;

/// <summary>Teeth in the texts of the invented practice: "{13}" in the file reads "the upper right canine (13, ISO)".
/// </summary>
internal static partial class DemoTeeth
{
    /// <summary>The text with every tooth named in words beside its number.</summary>
    /// <exception cref="InvalidOperationException">A number in braces is no tooth.</exception>
    public static string InWords(string text) => Numbers().Replace(text, found =>
    {
        ToothNumber tooth = DemoCourse.Tooth(found.Groups["iso"].Value);
        string article = StartsASentence(text, found.Index) ? "The" : "the";
        return $"{article} {tooth.Name} ({tooth.ToIso()}, ISO)";
    });

    private static bool StartsASentence(string text, int at)
    {
        string before = text[..at].TrimEnd();
        return before.Length == 0 || before[^1] is '.' or '?' or '!';
    }

    [GeneratedRegex(@"\{(?<iso>[^}]*)\}")]
    private static partial Regex Numbers();
}
