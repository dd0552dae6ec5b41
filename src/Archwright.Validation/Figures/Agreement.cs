using Archwright.Validation.Record;

namespace Archwright.Validation.Figures;

/// <summary>All physical checks at once: computed over published.</summary>
internal static class Agreement
{
    // What narrower checks compare is mathematics, and would lie on the line of one.
    private const double NarrowShare = 0.03;

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
                + "(the middle of a published range); in the order of the tables, checks of pure mathematics left out.",
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
        double published = result.Check.Published.Middle;
        return published > 0 && (accept.High - accept.Low) / 2 > NarrowShare * published;
    }

    private static Interval Share(PublishedCheck check) =>
        new(check.Accept.Low / check.Published.Middle, check.Accept.High / check.Published.Middle);
}
