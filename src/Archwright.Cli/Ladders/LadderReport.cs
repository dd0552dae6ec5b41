using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Cli.Visits;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Ladders;
using Spectre.Console;
using Layout = Archwright.Cli.Tables.Layout;

namespace Archwright.Cli.Ladders;

/// <summary>The answer of <c>ladder</c> for people.</summary>
internal static class LadderReport
{
    /// <summary>Writes it.</summary>
    /// <param name="terminal">Where.</param>
    /// <param name="file">The case.</param>
    /// <param name="advice">What was found.</param>
    /// <param name="unit">Unit of forces.</param>
    /// <param name="notation">Tooth numbers.</param>
    public static void Write(
        Terminal terminal, CaseFile file, LadderAdvice advice, ForceUnit unit, ToothNotation notation)
    {
        Layout.Heading(terminal, file.Title.Length > 0 ? file.Title : "Case without a title");
        Layout.Paragraph(terminal, VisitWords.Today(advice.Question.Today));
        Layout.Paragraph(terminal, $"To {advice.Working.Title}. Wires looked at: {advice.WiresLookedAt}.");
        Layout.Gap(terminal);
        if (advice.Because is { } because)
        {
            Layout.Heading(terminal, "No ladder within the rules");
            Layout.Paragraph(terminal, because);
            Layout.Gap(terminal);
        }

        if (!advice.Considerations.IsEmpty)
        {
            Layout.Heading(terminal, "What might be considered");
            foreach (string one in advice.Considerations)
                Layout.Paragraph(terminal, "- " + one);
            Layout.Gap(terminal);
        }

        foreach (LadderAnswer answer in advice.Answers.Where(one => IsFirst(one, advice)))
            Write(terminal, LadderWords.Headline(answer), answer, unit, notation);
        if (advice.Nearest is { } nearest)
        {
            string times = advice.CeilingFactor!.Value.ToString("0.##", CultureInfo.InvariantCulture); // comes with it
            Write(
                terminal, $"Nearest, with ceilings {times} times as high: {LadderWords.Length(nearest)}", nearest, unit,
                notation);
        }

        WriteAsked(terminal, advice, unit, notation);
        WriteMissing(terminal, advice);
        Layout.Heading(terminal, "Heed");
        foreach (string caution in advice.Cautions)
            Layout.Paragraph(terminal, "- " + caution);
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, $"Ranges: {Patients(advice)}. Judged by the policy {advice.PolicyVersion}. "
            + Tables.Cautions.Decision);
    }

    // What is the same sequence stands once.
    private static bool IsFirst(LadderAnswer answer, LadderAdvice advice) =>
        advice.Answers.First(one => one.Kind == answer.Kind || one.SameAs.Contains(answer.Kind)) == answer;

    private static string Patients(LadderAdvice advice) => advice.Draws == 0
        ? "from a quick patient (one in ten is quicker) to a slow one (one in ten is slower)"
        : FormattableString.Invariant($"8 of 10 among {advice.Draws} patients by chance, seed {advice.Seed}");

    private static void WriteAsked(Terminal terminal, LadderAdvice advice, ForceUnit unit, ToothNotation notation)
    {
        if (advice.Asked is not { } asked)
            return;

        Write(terminal, $"Your own: {LadderWords.Length(asked)}", asked, unit, notation);
        if (advice.Question.Asked[^1].Id != advice.Working.Id)
            Layout.Paragraph(terminal, $"It ends with {advice.Question.Asked[^1].Id}, not with {advice.Working.Id}.");
        foreach (LadderDifference difference in advice.Differences)
            Layout.Paragraph(terminal, difference.Sentence);
        if (!advice.Differences.IsEmpty)
            Layout.Gap(terminal);
    }

    private static void WriteMissing(Terminal terminal, LadderAdvice advice)
    {
        if (advice.Missing.IsEmpty)
            return;

        Layout.Heading(terminal, "Not said, and asked for");
        foreach (MissingFact fact in advice.Missing)
            Layout.Paragraph(terminal, $"- {fact.Question} ({fact.Key})");
        Layout.Gap(terminal);
    }

    private static void Write(
        Terminal terminal, string heading, LadderAnswer answer, ForceUnit unit, ToothNotation notation)
    {
        Layout.Heading(terminal, heading);
        if (!answer.Steps.IsEmpty)
        {
            Table table = Layout.Table(
                ("", true), ("wire", false), ("goes in\nin week", true), ("stays in\nweeks", true),
                ("visits\nevery", true), ($"largest\nforce {unit.Symbol}", true), ("\non", false),
                ("comfort\nindex", true));
            foreach ((int i, LadderStep step) in answer.Steps.Index())
                table.AddRow([.. Row(i, step, i == answer.Steps.Length - 1, unit, notation)]);
            Layout.Write(terminal, table);
        }

        foreach (string note in LadderWords.Notes(answer, notation))
            Layout.Paragraph(terminal, note, "    ");
        Layout.Gap(terminal);
    }

    private static IEnumerable<Text> Row(
        int i, LadderStep step, bool isLast, ForceUnit unit, ToothNotation notation)
    {
        yield return new Text(Layout.Whole(i + 1));
        yield return new Text(step.Wire.Id, Layout.Strong);
        yield return new Text(step.IsInPlace ? "in place" : i == 0 ? "today" : LadderWords.Range(step.FromWeek));
        yield return new Text(isLast ? "" : LadderWords.Range(step.Weeks));
        yield return new Text(isLast ? "" : $"{Layout.Whole(step.Interval)} weeks");
        yield return new Text(unit.Figure(step.Figures.LargestForce));
        yield return new Text(step.LargestForceTooth?.Show(notation) ?? "");
        yield return new Text(step.IsInPlace ? "–" : VisitWords.Figure(step.ComfortIndex, "0.0"));
    }
}
