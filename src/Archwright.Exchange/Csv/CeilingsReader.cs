using Archwright.Dentition.Comparison;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.Files;
using Archwright.Exchange.Json;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Csv;

/// <summary>Reads a practice's own ceilings: a table with the columns <c>tooth</c> or <c>group</c>, <c>movement</c>,
/// <c>force_N</c> or <c>moment_N_mm</c>, and <c>source</c>.</summary>
/// <remarks>A row for a tooth goes before a row for its group; teeth and movements that the table does not name keep
/// the ceilings of <see cref="ForceCeilings.Default"/>. A row without a source is refused.</remarks>
public static class CeilingsReader
{
    private const string Tooth = "tooth";
    private const string Group = "group";
    private const string Movement = "movement";
    private const string Force = "force_N";
    private const string Moment = "moment_N_mm";
    private const string Source = "source";

    private static readonly Quantity ForceLimit = new("ceiling", "N", 0.01, 50, "Give newtons; 1 N is 102 gf.");

    private static readonly Quantity MomentLimit = new(
        "ceiling", "N·mm", 0.1, 500, "Give newton millimetres; 10 N·mm is 1020 gf·mm.");

    private static readonly (string Word, LoadKind Kind)[] Movements =
    [
        ("labiolingual", LoadKind.LabiolingualForce), ("mesiodistal", LoadKind.MesiodistalForce),
        ("extrusion", LoadKind.ExtrusionForce), ("intrusion", LoadKind.IntrusionForce),
        ("rotation", LoadKind.RotationMoment), ("tip", LoadKind.TipMoment), ("torque", LoadKind.TorqueMoment),
    ];

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    /// <returns>The library's ceilings with those of the file in their place.</returns>
    public static Read<ForceCeilings> Read(string path)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(path, problems), problems);
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    /// <returns>The library's ceilings with those of the stream in their place.</returns>
    public static Read<ForceCeilings> Read(Stream stream)
    {
        var problems = new ProblemList();
        return Read(InputFile.Load(stream, problems), problems);
    }

    private static Read<ForceCeilings> Read(byte[]? text, ProblemList problems)
    {
        if (text is null || CsvTable.Rows(text, problems) is not { } rows)
            return problems.Settle<ForceCeilings>(null);

        if (rows.Count < 2)
        {
            problems.Add(
                ProblemCodes.TableEmpty, Problem.WholeFile, "The table has no row below its names.",
                $"Write {Tooth},{Movement},{Force},{Source} and below it one row a ceiling.");
            return problems.Settle<ForceCeilings>(null);
        }

        string[] optional = [Tooth, Group, Movement, Force, Moment];
        if (CsvColumns.Of(rows[0], [Source], optional, problems) is not { } columns
            || !OneOf(rows[0], columns, Tooth, Group, problems) | !OneOf(rows[0], columns, Force, Moment, problems))
        {
            return problems.Settle<ForceCeilings>(null);
        }

        var own = new Dictionary<(ToothNumber, LoadKind), (bool IsTooth, ForceCeiling Ceiling)>();
        foreach (CsvRow row in rows.Skip(1).Where(columns.Fits))
            Add(row, columns, own, problems);
        return problems.Settle(problems.IsEmpty ? ForceCeilings.Default.With(own.Values.Select(o => o.Ceiling)) : null);
    }

    private static bool OneOf(CsvRow head, CsvColumns columns, string one, string other, ProblemList problems)
    {
        if (columns.Has(one) || columns.Has(other))
            return true;

        problems.Add(
            ProblemCodes.ColumnMissing, $"line {head.Line}",
            $"Neither the column {Say.Quote(one)} nor {Say.Quote(other)} is there.", "Add one of the two.");
        return false;
    }

    private static void Add(
        CsvRow row,
        CsvColumns columns,
        Dictionary<(ToothNumber, LoadKind), (bool IsTooth, ForceCeiling Ceiling)> own,
        ProblemList problems)
    {
        bool isTooth = columns.Text(row, Tooth).Length > 0;
        IReadOnlyList<ToothNumber>? teeth = Teeth(row, columns, isTooth, problems);
        IReadOnlyList<LoadKind>? kinds = Kinds(row, columns, problems);
        string? source = columns.NeedText(row, Source);
        if (teeth is null || kinds is null || source is null || Figure(row, columns, kinds, problems) is not { } figure)
            return;

        bool reported = false;
        foreach (ToothNumber tooth in teeth)
        {
            foreach (LoadKind kind in kinds)
            {
                var limit = new Sourced(figure, kind.Unit(), "", source, "given by the practice");
                var ceiling = new ForceCeiling(tooth, kind, limit);
                bool isNew = !own.TryGetValue((tooth, kind), out (bool IsTooth, ForceCeiling) present);
                if (isNew || isTooth && !present.IsTooth)
                    own[(tooth, kind)] = (isTooth, ceiling);
                else if (isTooth == present.IsTooth && !reported)
                    reported = Twice(row, tooth, kind, problems);
            }
        }
    }

    private static bool Twice(CsvRow row, ToothNumber tooth, LoadKind kind, ProblemList problems)
    {
        problems.Add(
            ProblemCodes.RowTwice, $"line {row.Line}",
            $"The ceiling of tooth {tooth} for {kind.Words()} has been given before.",
            "Keep one of the rows; a row for a tooth may stand beside one for its group and goes before it.");
        return true;
    }

    private static IReadOnlyList<ToothNumber>? Teeth(CsvRow row, CsvColumns columns, bool isTooth, ProblemList problems)
    {
        string name = columns.Text(row, isTooth ? Tooth : Group);
        if (isTooth && columns.Text(row, Group).Length > 0)
            name = $"{name} and {columns.Text(row, Group)}";
        else if (isTooth && ToothNumber.TryParse(name, out ToothNumber tooth))
            return [tooth];
        else if (!isTooth && ToothGroups.Teeth(name) is { } teeth)
            return teeth;

        problems.Add(
            ProblemCodes.CeilingWhose, CsvColumns.Path(row, isTooth ? Tooth : Group),
            name.Length == 0
                ? "The row names neither a tooth nor a group."
                : $"{Say.Quote(name)} is no tooth and no group.",
            $"Write an ISO 3950 number (13) under “tooth”, or a group under “group”: {Say.Choice(ToothGroups.Names)}.");
        return null;
    }

    // Without a movement a row holds for all forces, or for all moments.
    private static IReadOnlyList<LoadKind>? Kinds(CsvRow row, CsvColumns columns, ProblemList problems)
    {
        string movement = columns.Text(row, Movement);
        bool isMoment = columns.Text(row, Moment).Length > 0;
        if (movement.Length == 0)
            return [.. LoadKinds.All.Where(kind => kind.IsForce() != isMoment)];

        if (LoadKinds.TryParse(movement, out LoadKind byCode))
            return [byCode];

        foreach ((string word, LoadKind kind) in Movements)
        {
            if (word.Equals(movement, StringComparison.OrdinalIgnoreCase))
                return [kind];
        }

        string[] words = [.. Movements.Select(m => m.Word)];
        problems.Add(
            ProblemCodes.CeilingMovement, CsvColumns.Path(row, Movement),
            $"{Say.Quote(movement)} is no movement.{Nearest.Hint(movement, words)}",
            $"Write {Say.Choice(words)}, or leave the cell empty: "
            + "the row then holds for all forces, or for all moments.");
        return null;
    }

    private static double? Figure(CsvRow row, CsvColumns columns, IReadOnlyList<LoadKind> kinds, ProblemList problems)
    {
        bool force = kinds[0].IsForce();
        string other = force ? Moment : Force;
        if (columns.Text(row, other).Length == 0)
            return columns.Number(row, force ? Force : Moment, force ? ForceLimit : MomentLimit);

        problems.Add(
            ProblemCodes.CeilingMovement, CsvColumns.Path(row, other),
            $"{(force ? "A force" : "A moment")} has its ceiling under “{(force ? Force : Moment)}”, not under "
            + $"“{other}”.",
            "Rotation, tip and torque are moments [N·mm]; labiolingual, mesiodistal, extrusion and intrusion are "
            + "forces [N].");
        return null;
    }
}
