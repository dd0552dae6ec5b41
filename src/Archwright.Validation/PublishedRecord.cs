using System.Collections.Concurrent;
using Archwright.Dentition.Tables;
using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation;

/// <summary>The published record: every figure of the literature that the engine is held against, in one list for the
/// command <c>validate</c>, the page <c>docs/validation.md</c> and the tests.</summary>
/// <remarks>What may be expected of each is written beside it, and was settled before it was computed. A published
/// figure that a constant was fitted to is no check; it stands in <see cref="Fits"/>.</remarks>
public static class PublishedRecord
{
    private static readonly Lazy<IReadOnlyList<PublishedCheck>> AllChecks = new(() => RecordTables.Checks());

    private static readonly Lazy<IReadOnlyList<KnownDifference>> AllDifferences =
        new(() => RecordTables.Differences(AllChecks.Value));

    private static readonly Lazy<IReadOnlyList<Fit>> AllFits = new(() => RecordTables.Fits());

    /// <summary>All checks, chapter by chapter.</summary>
    /// <exception cref="TableException">A table is faulty.</exception>
    public static IReadOnlyList<PublishedCheck> Checks => AllChecks.Value;

    /// <summary>The differences that are known.</summary>
    /// <exception cref="TableException">A table is faulty.</exception>
    public static IReadOnlyList<KnownDifference> Differences => AllDifferences.Value;

    /// <summary>What was fitted, and to what.</summary>
    /// <exception cref="TableException">A table is faulty.</exception>
    public static IReadOnlyList<Fit> Fits => AllFits.Value;

    // Same check, same figure: a run that writes a page and pictures asks more than once.
    private static readonly ConcurrentDictionary<string, double> Computed = new(StringComparer.Ordinal);

    /// <summary>Computes one check and judges it. Safe on several threads.</summary>
    /// <exception cref="TableException">Its set-up is faulty.</exception>
    /// <exception cref="InvalidOperationException">The engine found no equilibrium.</exception>
    public static CheckResult Compute(PublishedCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (!Computations.All.TryGetValue(check.Compute, out Func<SetUp, double>? compute))
            throw new TableException($"The check '{check.Id}' wants '{check.Compute}', which nobody computes.");

        double computed = Computed.GetOrAdd($"{check.Compute}({check.With})", _ => compute(check.With));
        return Judge(check, computed, Differences);
    }

    /// <summary>Judges a computed figure.</summary>
    internal static CheckResult Judge(PublishedCheck check, double computed, IReadOnlyList<KnownDifference> known)
    {
        if (check.Accept.Holds(computed))
            return new CheckResult(check, computed, Verdict.In, "");

        KnownDifference? difference = known.FirstOrDefault(one => one.Check == check.Id);
        if (difference is not null)
        {
            return difference.Computed.Holds(computed)
                ? new CheckResult(check, computed, difference.Verdict, difference.Reason)
                : new CheckResult(check, computed, Verdict.Out, "");
        }

        return check.IsFromMemory && double.IsFinite(computed)
            ? new CheckResult(check, computed, Verdict.Explained, FromMemory)
            : new CheckResult(check, computed, Verdict.Out, "");
    }

    private const string FromMemory =
        "The published figure is remembered, not seen, so it decides nothing alone. It wants looking up.";
}
