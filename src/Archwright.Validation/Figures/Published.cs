using Archwright.Validation.Record;

namespace Archwright.Validation.Figures;

/// <summary>Looks published figures up for the pictures, so that none is written twice.</summary>
internal static class Published
{
    /// <summary>The checks whose set-up has these words, by a figure of it.</summary>
    public static FigureMark Marks(
        string name, IEnumerable<CheckResult> results, Func<SetUp, double> x) =>
        new(name, [.. results.Select(result => (x(result.Check.With), result.Check.Published))
            .OrderBy(point => point.Item1)]);

    /// <summary>The check of this id.</summary>
    public static PublishedCheck Check(IReadOnlyList<CheckResult> results, string id) =>
        results.Single(result => result.Check.Id == id).Check;
}
