using System.Collections.Immutable;
using Archwright.Cli.Solving;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;

namespace Archwright.Cli.Pictures;

/// <summary>The picture of <c>compare</c>: the ranking, and what the best wire does.</summary>
internal static class ComparePicture
{
    private const int Shown = 14;
    private const double HeadHeight = 62;

    /// <summary>Draws a comparison into a file.</summary>
    public static void Write(
        string path, CaseFile file, IReadOnlyList<ComparedWire> ranked, ForceUnit unit, ToothNotation notation)
    {
        var words = new ToothWords(file, notation);
        RankingPanel ranking = Ranking(ranked, words, unit);
        ComparedWire? best = ranked.FirstOrDefault(wire => wire.Engaged);
        string title = file.Title.Length > 0 ? file.Title : "Case without a title";
        if (best is null)
        {
            double height = HeadHeight + ranking.Height + Sheet.Margin;
            PictureFile.Write(path, height, title, "No wire can go in.", canvas =>
            {
                canvas.Fill(new Box(0, 0, canvas.Width, canvas.Height), Colours.Paper);
                Sheet.Head(canvas, title, "");
                ranking.Draw(canvas,
                    new Box(Sheet.Margin, HeadHeight, Sheet.Width - 2 * Sheet.Margin, ranking.Height));
            });
            return;
        }

        ArchPicture picture = Best(file, best, words, unit);
        PictureFile.Write(path, Sheet.HeightWith(ranking), title, CasePicture.Description(picture),
            canvas => Sheet.Draw(canvas, picture, ranking));
    }

    private static ArchPicture Best(CaseFile file, ComparedWire best, ToothWords words, ForceUnit unit)
    {
        CaseFile withBest = file with
        {
            WireId = best.Wire.Id, AlloyId = null,
            Arrangement = file.Arrangement with { Wire = best.IsWholeLaw ? best.Wire.WholeWire : best.Wire.Wire },
        };
        EngagementResult result = best.Result
            ?? throw new InvalidOperationException("An engaged wire has a result.");
        ImmutableArray<Mechanics.Slots.SlotFrame> actual = [.. file.Arrangement.Slots.Select(slot => slot.Actual)];
        ImmutableArray<ClinicalLoad> loads =
            [.. result.Slots.Select((load, i) => file.Axes[i].Resolve(actual[i], load.OnTooth))];
        var check = new CeilingCheck(best.TeethAboveCeiling);
        ArchPicture picture = CasePicture.Of(
            withBest, new SolvedState(result, actual, loads), words, unit, check);
        return picture with
        {
            Subtitle = "The first of them: " + picture.Subtitle,
            Findings = [.. Findings.Of(withBest, new SolvedState(result, actual, loads), words, unit, check)],
        };
    }

    private static RankingPanel Ranking(IReadOnlyList<ComparedWire> ranked, ToothWords words, ForceUnit unit)
    {
        ImmutableArray<RankedLine> lines =
        [
            .. ranked.Take(Shown).Select(wire => new RankedLine(
                wire.Wire.Id,
                CompareWords.Of(wire.Verdict),
                wire.Verdict == WireVerdict.WithinLimits,
                wire.Engaged ? wire.LargestForce : double.NaN,
                wire.Engaged ? words.Number(wire.LargestForceSlot) : "",
                wire.Engaged ? CompareWords.TeethAbove(wire, words) : Short(wire.WhyNot ?? ""),
                wire.Working?.LargestForce ?? double.NaN)),
        ];
        var rest = ranked.Skip(Shown).GroupBy(wire => wire.Verdict).OrderBy(group => group.Key)
            .Select(group => CompareWords.Count(group.Key, group.Count()));
        string others = ranked.Count > Shown ? "Not shown: " + string.Join(", ", rest) + "." : "";
        return new RankingPanel(lines, others, unit, LastingChart.Of(ranked, unit));
    }

    private static string Short(string reason) => reason.Length > 110 ? reason[..107] + "…" : reason;
}
