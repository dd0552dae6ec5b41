using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>Where teeth stand, counted from where they should be; one row of the file a tooth.</summary>
/// <param name="Offsets">Each tooth once.</param>
public sealed record ToothPositions(ImmutableDictionary<ToothNumber, ClinicalOffset> Offsets);

/// <summary>Reads the positions of teeth: a table with the column <c>tooth</c> (ISO 3950) and any of <c>labial_mm</c>,
/// <c>occlusal_mm</c>, <c>mesial_mm</c>, <c>rotation_deg</c>, <c>tip_deg</c> and <c>torque_deg</c>; an empty cell is
/// zero.</summary>
public static class PositionsReader
{
    private const string Tooth = "tooth";
    private static readonly string[] Shifts = ["labial_mm", "occlusal_mm", "mesial_mm"];
    private static readonly string[] Turns = ["rotation_deg", "tip_deg", "torque_deg"];

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    public static Read<ToothPositions> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    public static Read<ToothPositions> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<ToothPositions> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || CsvTable.Rows(text, problems) is not { } rows)
            return problems.Settle<ToothPositions>(null);

        if (rows.Count < 2)
        {
            problems.Add(
                ProblemCodes.TableEmpty, Problem.WholeFile, "The table has no row below its names.",
                $"Write {Tooth},{string.Join(",", Shifts)},{string.Join(",", Turns)} and below it one row a tooth.");
            return problems.Settle<ToothPositions>(null);
        }

        if (CsvColumns.Of(rows[0], [Tooth], [.. Shifts, .. Turns], problems) is not { } columns)
            return problems.Settle<ToothPositions>(null);

        var offsets = ImmutableDictionary.CreateBuilder<ToothNumber, ClinicalOffset>();
        foreach (CsvRow row in rows.Skip(1).Where(columns.Fits))
            Add(row, columns, offsets, problems);
        return problems.Settle(problems.IsEmpty ? new ToothPositions(offsets.ToImmutable()) : null);
    }

    private static void Add(
        CsvRow row, CsvColumns columns, ImmutableDictionary<ToothNumber, ClinicalOffset>.Builder offsets,
        ProblemList problems)
    {
        double?[] shifts = [.. Shifts.Select(column => columns.Number(row, column, Quantities.Shift, fallback: 0))];
        double?[] turns = [.. Turns.Select(column => columns.Number(row, column, Quantities.Turn, fallback: 0))];
        if (columns.NeedText(row, Tooth) is not { } name)
            return;

        if (!ToothNumber.TryParse(name, out ToothNumber tooth))
        {
            problems.Add(
                ProblemCodes.ToothUnknown, CsvColumns.Path(row, Tooth), $"{Say.Quote(name)} is no tooth.",
                "Write an ISO 3950 number: 13 is the upper right canine.");
            return;
        }

        if (shifts.Contains(null) || turns.Contains(null))
            return;

        var offset = ClinicalOffset.FromDegrees(
            shifts[0] ?? 0, shifts[1] ?? 0, shifts[2] ?? 0, turns[0] ?? 0, turns[1] ?? 0, turns[2] ?? 0);
        if (!offsets.TryAdd(tooth, offset))
        {
            problems.Add(
                ProblemCodes.RowTwice, CsvColumns.Path(row, Tooth), $"Tooth {tooth} has been given before.",
                "Keep one of the rows.");
        }
    }
}
