using System.Globalization;
using Archwright.Cli.Arches;
using Archwright.Cli.Running;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>arch</c> for people: indices, and how each tooth is off.</summary>
internal static class ArchReport
{
    /// <summary>Writes it.</summary>
    public static void Write(Terminal terminal, CaseFile file, ArchFigures figures, ToothNotation notation)
    {
        var words = new ToothWords(file, notation);
        Layout.Heading(terminal, file.Title.Length > 0 ? file.Title : "Case without a title");
        Layout.Paragraph(terminal, CaseWords.WireAndSlots(file));
        Layout.Gap(terminal);
        foreach (string line in Indices(file, figures))
            Layout.Paragraph(terminal, line);

        foreach (string line in Absent(file))
            Layout.Paragraph(terminal, line);

        Layout.Gap(terminal);
        WriteOffsets(terminal, file, figures, words);
    }

    /// <summary>The indices in sentences.</summary>
    internal static IEnumerable<string> Indices(CaseFile file, ArchFigures figures)
    {
        if (figures.Irregularity is { } index)
        {
            string five = string.Join(", ", index.Displacements.Select(One));
            string analogy = file.Jaw == CaseFile.Upper ? " (made for lower front teeth, used here by analogy)" : "";
            yield return $"Irregularity of the front teeth {One(index.Sum)} mm, {index.Category}{analogy}: contact "
                + $"displacements from right to left {five} mm. Readings scatter; changes below 1 mm are noise.";
        }
        else
        {
            yield return "Irregularity: not known, since it takes all six front teeth.";
        }

        yield return $"Width between canines {OrUnknown(figures.Intercanine)}, between first molars "
            + $"{OrUnknown(figures.Intermolar)}.";
        if (figures.Space is { } space)
        {
            yield return $"Room in front of the first molars {One(space.Available)} mm, needed by average crowns "
                + $"{One(space.Needed)} mm: {RoomWord(space.Crowding)}. Real crowns: two millimetres more or less.";
        }

        if (figures.Spee is { } spee)
        {
            yield return $"Depth of the row between incisors and last molars (curve of Spee) {One(spee.Right)} mm "
                + $"right, {One(spee.Left)} mm left, read at the slots.";
        }
    }

    /// <summary>Crowns without a bracket, teeth that are not there, and those of which nothing is said, in sentences.
    /// </summary>
    internal static IEnumerable<string> Absent(CaseFile file)
    {
        ToothNumber[] bare =
            [.. file.Teeth.Where((_, i) => !file.Arrangement.Slots[i].IsBonded).OfType<ToothNumber>()];
        if (bare.Length > 0)
            yield return $"Without a bracket: {string.Join(", ", bare)}. Crowns touch them; no wire moves them.";
        foreach (var why in file.Absent.GroupBy(one => one.Why))
        {
            yield return $"{char.ToUpperInvariant(why.Key[0])}{why.Key[1..]}: "
                + $"{string.Join(", ", why.Select(one => one.Tooth))}. No crown is there for the neighbours to meet.";
        }

        if (file.Unsaid is { Length: > 0 } unsaid)
        {
            yield return $"Nothing is said of {string.Join(", ", unsaid)}: taken as not there. Say whether extracted, "
                + "unerupted or missing (absent), or there without a bracket (bonded: false).";
        }
    }

    private static void WriteOffsets(Terminal terminal, CaseFile file, ArchFigures figures, ToothWords words)
    {
        int[] displaced =
        [
            .. Enumerable.Range(0, figures.Offsets.Length)
                .Where(i => file.Arrangement.Slots[i].Actual != file.Arrangement.Slots[i].Rest),
        ];
        if (displaced.Length == 0)
        {
            Layout.Paragraph(terminal, "Every tooth stands where it should: the wire is passive.");
            return;
        }

        Table table = Layout.Table(
            (words.Heading, false), ("labial\nmm", true), ("occlusal\nmm", true), ("mesial\nmm", true),
            ("rotation\ndegrees", true), ("tip\ndegrees", true), ("torque\ndegrees", true));
        foreach (int i in displaced)
        {
            ClinicalOffset offset = figures.Offsets[i];
            table.AddRow(
                new Text(words.Number(i)), Millimetres(offset.Labial), Millimetres(offset.Occlusal),
                Millimetres(offset.Mesial), Degrees(offset.Rotation), Degrees(offset.Tip), Degrees(offset.Torque));
        }

        Layout.Write(terminal, table);
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, "How the slots are off their planned places; teeth not listed stand where they "
            + "should. + labial: toward lip or cheek. + occlusal: toward the bite. + mesial: toward the midline. "
            + "+ rotation: mesial side turned labially. + tip: crown toward the midline. + torque: crown labially.",
            style: Layout.Quiet);
    }

    private static Text Millimetres(double value) => new(Signed(value, "0.00"));

    private static Text Degrees(double radians) => new(Signed(Angle.ToDegrees(radians), "0.0"));

    private static string Signed(double value, string format)
    {
        string text = value.ToString($"+{format};−{format};0", CultureInfo.InvariantCulture);
        return text.Trim('+', '−', '0', '.').Length == 0 ? "0" : text;
    }

    private static string RoomWord(double crowding) => Math.Abs(crowding) < 0.05
        ? "just enough"
        : crowding > 0 ? $"{One(crowding)} mm are missing" : $"{One(-crowding)} mm to spare";

    private static string One(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);

    private static string OrUnknown(double? millimetres) => millimetres is { } some ? $"{One(some)} mm" : "not known";
}
