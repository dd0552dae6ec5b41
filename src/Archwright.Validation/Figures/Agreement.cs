using Archwright.Validation.Record;

namespace Archwright.Validation.Figures;

/// <summary>All physical checks at once: computed over published.</summary>
internal static class Agreement
{
    // What narrower checks compare is mathematics, and would lie on the line of one.
    private const double NarrowShare = 0.03;

    // A wider published range is a direction or a rank, without a middle.
    private const double WideRange = 5;

    public static RecordFigure Of(IReadOnlyList<CheckResult> results)
    {
        CheckResult[] shown = [.. results.Where(IsPhysical)];
        (double, double)[] Dots(Func<CheckResult, bool> which) =>
        [
            .. shown.Index().Where(one => which(one.Item))
                .Select(one => (one.Index + 1.0, one.Item.Computed / one.Item.Check.Published.Middle)),
        ];
        return new RecordFigure
        {
            Name = "agreement",
            Title = "Real wires and brackets: computed over published",
            Caption = "Each bar is what a check accepts, each dot what was computed, both over the published figure "
                + "(the middle of a published range); in the order of the tables. Left out: pure mathematics, ranks "
                + "and directions.",
            Across = "check, in the order of the tables",
            Up = "computed / published",
            Lines =
            [
                new FigureLine("computed, accepted", Dots(one => one.Verdict == Verdict.In), IsDots: true),
                new FigureLine("computed, difference explained", Dots(one => one.Verdict != Verdict.In), IsDashed: true,
                    IsDots: true),
            ],
            Marks =
            [
                new FigureMark("accepted", [.. shown.Index().Select(one => (one.Index + 1.0, Share(one.Item.Check)))]),
            ],
        };
    }

    private static bool IsPhysical(CheckResult result)
    {
        Interval accept = result.Check.Accept;
        Interval published = result.Check.Published;
        return published.Low > 0 && published.High < WideRange * published.Low
            && (accept.High - accept.Low) / 2 > NarrowShare * published.Middle;
    }

    private static Interval Share(PublishedCheck check) =>
        new(check.Accept.Low / check.Published.Middle, check.Accept.High / check.Published.Middle);
}
