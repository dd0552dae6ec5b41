using System.Collections.Immutable;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>Where a tooth was found at a visit.</summary>
/// <param name="Week">Weeks since the wire was fitted.</param>
/// <param name="Tooth">Which.</param>
/// <param name="Parts">Against its planned place: labial, occlusal, mesial [mm], rotation, tip, torque [rad]; null
/// for what was not measured.</param>
public sealed record ObservedPlace(double Week, ToothNumber Tooth, ImmutableArray<double?> Parts);

/// <summary>Reads where teeth were found: a table with the columns <c>week</c> and <c>tooth</c> and any of those of
/// <see cref="PositionsReader"/>. An empty cell, or a column left out, means that this was not measured.</summary>
public static class ObservedReader
{
    private const string Week = "week";
    private const string Tooth = "tooth";
    private static readonly string[] Shifts = ["labial_mm", "occlusal_mm", "mesial_mm"];
    private static readonly string[] Turns = ["rotation_deg", "tip_deg", "torque_deg"];

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    public static Read<IReadOnlyList<ObservedPlace>> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    public static Read<IReadOnlyList<ObservedPlace>> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<IReadOnlyList<ObservedPlace>> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || CsvTable.Rows(text, problems) is not { } rows)
            return problems.Settle<IReadOnlyList<ObservedPlace>>(null);

        if (rows.Count < 2)
        {
            problems.Add(
                ProblemCodes.TableEmpty, Problem.WholeFile, "The table has no row below its names.",
                $"Write {Week},{Tooth},{string.Join(",", Shifts)},{string.Join(",", Turns)} and below it one row a "
                + "tooth and visit.");
            return problems.Settle<IReadOnlyList<ObservedPlace>>(null);
        }

        if (CsvColumns.Of(rows[0], [Week, Tooth], [.. Shifts, .. Turns], problems) is not { } columns)
            return problems.Settle<IReadOnlyList<ObservedPlace>>(null);

        var places = ImmutableArray.CreateBuilder<ObservedPlace>();
        foreach (CsvRow row in rows.Skip(1).Where(columns.Fits))
            Add(row, columns, places, problems);
        return problems.Settle<IReadOnlyList<ObservedPlace>>(problems.IsEmpty ? places.ToImmutable() : null);
    }

    private static void Add(
        CsvRow row, CsvColumns columns, ImmutableArray<ObservedPlace>.Builder places, ProblemList problems)
    {
        double? week = columns.Number(row, Week, Quantities.Weeks);
        int before = problems.Count;
        double?[] shifts = [.. Shifts.Select(column => columns.NumberIfAny(row, column, Quantities.Shift))];
        double?[] turns = [.. Turns.Select(column => columns.NumberIfAny(row, column, Quantities.Turn))];
        if (columns.NeedText(row, Tooth) is not { } name)
            return;

        if (!ToothNumber.TryParse(name, out ToothNumber tooth))
        {
            problems.Add(
                ProblemCodes.ToothUnknown, CsvColumns.Path(row, Tooth), $"{Say.Quote(name)} is no tooth.",
                "Write an ISO 3950 number: 13 is the upper right canine.");
            return;
        }

        if (week is null || problems.Count > before)
            return;

        if (places.Any(place => place.Tooth == tooth && place.Week == week))
        {
            problems.Add(
                ProblemCodes.RowTwice, CsvColumns.Path(row, Tooth),
                $"Tooth {tooth} has been given before for this week.", "Keep one of the rows.");
            return;
        }

        places.Add(new ObservedPlace(
            week.Value, tooth, [.. shifts, .. turns.Select(turn => turn is double degrees
                ? Angle.FromDegrees(degrees) : turn)]));
    }
}
