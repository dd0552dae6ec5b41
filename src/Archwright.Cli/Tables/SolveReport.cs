using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Cli.Solving;
using Archwright.Cli.Units;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Sections;

namespace Archwright.Cli.Tables;

/// <summary>The answer of <c>solve</c> for people.</summary>
internal static class SolveReport
{
    /// <summary>Writes it.</summary>
    public static void Write(
        Terminal terminal, SolvedCase solved, ForceUnit unit, ToothNotation notation, ForceCeilings ceilings)
    {
        var words = new ToothWords(solved.Case, notation);
        Layout.Heading(terminal, solved.Case.Title.Length > 0 ? solved.Case.Title : "Case without a title");
        Layout.Paragraph(terminal, CaseWords.WireAndSlots(solved.Case));
        Layout.Gap(terminal);

        if (solved.Law.WhyNotWhole is { } why)
        {
            Layout.Paragraph(terminal, $"With its whole law no answer was found for this wire: {words.Named(why)}. "
                + "The figures are those of its first modulus, and too high.", style: Layout.Warning);
            Layout.Gap(terminal);
        }

        bool anyAbove = WriteState(terminal, solved, solved.Engaged, words, unit, ceilings);
        if (solved.Working is { } working)
            Layout.Paragraph(terminal, WorkingWords(solved.Engaged.Result, working, words, unit));

        for (int i = 0; i < solved.Steps.Length; i++)
        {
            Layout.Gap(terminal);
            Layout.Heading(terminal, $"Step {i + 1}: {CaseWords.Step(solved.Case, i, words)}");
            anyAbove |= WriteState(terminal, solved, solved.Steps[i], words, unit, ceilings);
        }

        Layout.Gap(terminal);
        if (solved.Engaged.Result.Converged)
            LoadsTable.WriteKey(terminal, anyAbove);
        WriteTimes(terminal, solved);
        Layout.Gap(terminal);
        WriteCautions(terminal, solved);
    }

    private static bool WriteState(
        Terminal terminal, SolvedCase solved, SolvedState state, ToothWords words, ForceUnit unit,
        ForceCeilings ceilings)
    {
        if (!state.IsEngaged)
        {
            Layout.Paragraph(terminal, WhyNot(state, words), style: Layout.Warning);
            if (!state.Result.Converged)
                return false;
            Layout.Gap(terminal);
        }

        CeilingCheck check = CeilingCheck.Of(solved.Case.Teeth, state.Loads, ceilings);
        LoadsTable.Write(terminal, solved, state, words, unit, check);
        Layout.Gap(terminal);
        foreach (string finding in Findings.Of(solved.Case, state, words, unit, check))
            Layout.Paragraph(terminal, finding);
        return !check.Above.IsEmpty;
    }

    // The tables are on engagement; this is the other form.
    private static string WorkingWords(
        EngagementResult engaged, EngagementResult working, ToothWords words, ForceUnit unit)
    {
        int worst = 0;
        for (int i = 1; i < engaged.Slots.Length; i++)
        {
            if (engaged.Slots[i].OnTooth.Force.Length > engaged.Slots[worst].OnTooth.Force.Length)
                worst = i;
        }

        string relief = Engager.Relief.ToString("0 %", CultureInfo.InvariantCulture);
        return $"Working: once every displaced tooth has come {relief} of its way, the force on {words.Name(worst)} is "
            + $"{unit.Force(working.Slots[worst].OnTooth.Force.Length)}; on engagement it is "
            + $"{unit.Force(engaged.Slots[worst].OnTooth.Force.Length)}.";
    }

    /// <summary>Why a wire is not in.</summary>
    internal static string WhyNot(SolvedState state, ToothWords words)
    {
        Obstacle? obstacle = state.Result.Obstacle;
        string place = obstacle is { Slot: >= 0 } ? $" at {words.Name(obstacle.Slot)}" : "";
        string reason = obstacle is not null
            ? words.Named(obstacle.Reason)
            : "no equilibrium was found; nothing below can be trusted.";
        return $"The wire cannot be engaged{place}: {reason}";
    }

    private static void WriteTimes(Terminal terminal, SolvedCase solved)
    {
        string line = solved.Last.Result.Converged
            ? $"Equilibrium to {solved.Last.Result.Residual.ToString("0e0", CultureInfo.InvariantCulture)} N, "
                + $"found in {Milliseconds(solved.ElapsedMilliseconds)}."
            : $"Given up after {Milliseconds(solved.ElapsedMilliseconds)}.";
        if (solved.Repeated is { } repeated)
        {
            line += $" Medians of {repeated.Repeats}: cold {Milliseconds(repeated.ColdMilliseconds)}, "
                + $"warm {Milliseconds(repeated.WarmMilliseconds)}.";
        }

        Layout.Paragraph(terminal, line, style: Layout.Quiet);
    }

    private static void WriteCautions(Terminal terminal, SolvedCase solved)
    {
        CaseFile file = solved.Case;
        if (HasFirstModulus(solved))
            Layout.Paragraph(terminal, Cautions.InitialModulus);
        if (file.Jaw != CaseFile.Bench)
            Layout.Paragraph(terminal, Cautions.Ceilings);
        Layout.Paragraph(terminal, Cautions.LeftOutOf(file));
        Layout.Paragraph(terminal, Cautions.Decision);
    }

    /// <summary>Whether the figures are those of an alloy that transforms, as if it did not.</summary>
    internal static bool HasFirstModulus(SolvedCase solved) =>
        solved.Law.Kind == LawKind.FirstModulus && CaseWords.Alloy(solved.Case)?.InitialModulusOnly == true;

    private static string Milliseconds(double value) => double.IsNaN(value)
        ? "none"
        : value.ToString(value < 10 ? "0.00" : "0", CultureInfo.InvariantCulture) + " ms";
}

/// <summary>Parts of a case in words.</summary>
internal static class CaseWords
{
    /// <summary>The catalogue wire of a case; null when it is written out.</summary>
    public static CatalogueWire? Wire(CaseFile file) =>
        file.WireId is { } id && WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : null;

    /// <summary>The catalogue alloy of a case; null when it is written out.</summary>
    public static CatalogueAlloy? Alloy(CaseFile file) => Wire(file)?.Alloy
        ?? (file.AlloyId is { } id && WireCatalogue.Default.TryFindAlloy(id, out CatalogueAlloy? alloy) ? alloy : null);

    /// <summary>One line: wire, ends, number of slots, temperature.</summary>
    public static string WireAndSlots(CaseFile file)
    {
        int held = file.Arrangement.Slots.Length;
        string jaw = file.Jaw == CaseFile.Bench ? "bench set-up" : $"{file.Jaw} arch";
        string ends = file.Arrangement.Ends switch
        {
            Mechanics.Rods.WireEnds.Stopped => "ends stopped",
            Mechanics.Rods.WireEnds.Cinched => "ends cinched",
            _ => "ends free",
        };
        return $"{WireTitle(file)} · {ends} · {jaw}, {held} slots · "
            + $"{file.Arrangement.Temperature.ToString("0.#", CultureInfo.InvariantCulture)} °C";
    }

    /// <summary>The wire: id and title, or section and alloy written out.</summary>
    public static string WireTitle(CaseFile file)
    {
        if (Wire(file) is { } wire)
            return $"{wire.Id}, {wire.Title}";

        Section section = file.Arrangement.Wire.Section;
        string size = section.IsRound
            ? $"round {Length(section.Thickness)} mm"
            : $"{Length(section.Thickness)} × {Length(section.Width)} mm";
        string alloy = Alloy(file)?.Title
            ?? $"alloy of {Short(file.Arrangement.Wire.Alloy.Young / 1000)} GPa";
        return $"{alloy}, {size}";
    }

    /// <summary>A step in words.</summary>
    public static string Step(CaseFile file, int step, ToothWords words)
    {
        Step one = file.Then[step];
        var parts = new List<string>();
        if (one.Temperature is { } degrees)
            parts.Add($"{degrees.ToString("0.#", CultureInfo.InvariantCulture)} °C");
        if (one.Moves.Length > 0)
            parts.Add("moved " + string.Join(", ", one.Moves.Select(move => words.Number(move.Slot))));
        return string.Join(", ", parts);
    }

    private static string Short(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Length(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);
}
