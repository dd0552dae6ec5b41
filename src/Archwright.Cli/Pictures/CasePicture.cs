using System.Collections.Immutable;
using Archwright.Cli.Solving;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Outlines;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Pictures;

/// <summary>The picture of <c>solve</c>.</summary>
internal static class CasePicture
{
    /// <summary>Draws the last state of a case into a file.</summary>
    public static void Write(
        string path, SolvedCase solved, ForceUnit unit, ToothNotation notation, ForceCeilings ceilings)
    {
        ArchPicture picture = Of(solved, unit, notation, ceilings);
        PictureFile.Write(path, Sheet.Height, picture.Title, Description(picture), c => Sheet.Draw(c, picture));
    }

    /// <summary>What is drawn.</summary>
    internal static ArchPicture Of(
        SolvedCase solved, ForceUnit unit, ToothNotation notation, ForceCeilings ceilings)
    {
        var words = new ToothWords(solved.Case, notation);
        SolvedState state = solved.Last;
        CeilingCheck check = state.Result.Converged
            ? CeilingCheck.Of(solved.Case.Teeth, state.Loads, ceilings)
            : new CeilingCheck([]);
        ImmutableArray<string> findings = state.Result.Converged
            ? [.. Findings.Of(solved.Case, state, words, unit, check)]
            : [];
        return Of(solved.Case, state, words, unit, check) with
        {
            Findings = state.IsEngaged ? findings : [SolveReport.WhyNot(state, words), .. findings],
        };
    }

    /// <summary>What is drawn of a case and a state, without findings.</summary>
    internal static ArchPicture Of(
        CaseFile file, SolvedState state, ToothWords words, ForceUnit unit, CeilingCheck check)
    {
        Section section = file.Arrangement.Wire.Section;
        return new ArchPicture
        {
            Title = file.Title.Length > 0 ? file.Title : "Case without a title",
            Subtitle = CaseWords.WireAndSlots(file) + (words.NumberedBy.Length > 0 ? " · " + words.NumberedBy : ""),
            Side = file.Jaw switch
            {
                CaseFile.Upper => PictureSide.Upper,
                CaseFile.Lower => PictureSide.Lower,
                _ => PictureSide.Bench,
            },
            Teeth = [.. Enumerable.Range(0, state.Actual.Length).Select(i => Tooth(file, state, i, words, check))],
            CentreLine = state.Result.Converged ? state.Result.CentreLine : [],
            WireWidth = section.Width,
            WireThickness = section.Thickness,
            Unit = unit,
            Notes = Notes(file, state.Result.LargestStrain, !check.Above.IsEmpty),
        };
    }

    /// <summary>What the picture says, for those who cannot see it.</summary>
    internal static string Description(ArchPicture picture) =>
        picture.Subtitle + ". Force on each tooth: "
        + string.Join(", ", picture.Teeth.Select(tooth => $"{tooth.Label} {picture.Unit.Force(tooth.Force.Length)}"))
        + ". " + string.Join(" ", picture.Findings);

    private static PictureTooth Tooth(
        CaseFile file, SolvedState state, int i, ToothWords words, CeilingCheck check)
    {
        Slot slot = file.Arrangement.Slots[i];
        bool known = state.Result.Converged;
        ClinicalLoad load = known ? state.Loads[i] : new ClinicalLoad(0, 0, 0, 0, 0, 0);
        return new PictureTooth
        {
            Label = words.Number(i),
            Rest = slot.Rest,
            Actual = state.Actual[i],
            SlotWidth = slot.Width,
            SlotHeight = slot.Height > 0 ? slot.Height : file.Arrangement.Wire.Section.Thickness,
            SlotDepth = slot.Depth > 0 ? slot.Depth : file.Arrangement.Wire.Section.Width,
            IsTied = slot.Tie.Kind != TieKind.None || !slot.IsBonded,
            IsBonded = slot.IsBonded,
            Crown = file.Teeth[i] is { } tooth ? Crowns.Of(tooth) : null,
            Force = known ? state.Result.Slots[i].OnTooth.Force : default,
            Labial = load.LabialForce,
            Occlusal = load.OcclusalForce,
            Mesial = load.MesialForce,
            IsAboveCeiling = check.IsAbove(i),
        };
    }

    private static ImmutableArray<string> Notes(CaseFile file, double strain, bool anyAbove)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        if (CaseWords.Alloy(file) is { InitialModulusOnly: true } alloy && !WholeLaw.Holds(file)
            && strain > alloy.ElasticStrain.Value)
        {
            notes.Add(Cautions.InitialModulus);
        }

        if (anyAbove)
            notes.Add("Ceilings are teaching values to warn at, not limits of safety.");
        notes.Add(Cautions.LeftOutOf(file));
        notes.Add(Cautions.Decision);
        return notes.ToImmutable();
    }
}
