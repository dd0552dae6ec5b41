using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Values;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Policies;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Practice.Ladders;

/// <summary>Finds the ladders of an arch: those of <see cref="LadderAdvisor"/> on what the practice noted, among the
/// wires that it keeps.</summary>
/// <param name="policy">By what each visit is judged.</param>
/// <param name="clock">The time.</param>
/// <param name="style">How forces and teeth read in sentences at the time; null for what files hold.</param>
public sealed class LadderPlanner(VisitPolicy policy, TimeProvider clock, Func<SentenceStyle>? style = null)
{
    // Half of the machine, so that the screens of others answer meanwhile.
    private static readonly int Threads = Math.Max(1, Environment.ProcessorCount / 2);

    /// <summary>Version of its policy.</summary>
    public string PolicyVersion => policy.Version;

    /// <summary>The ladders.</summary>
    /// <param name="basis">What they rest on.</param>
    /// <param name="progress">Told of forecasts made; from any thread.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The basis does not hold together; the message says how.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public KeptLadder Find(
        LadderBasis basis, IProgress<LadderProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(basis);
        cancellation.ThrowIfCancellationRequested();
        LadderAdvice advice = LadderAdvisor.Find(
            new LadderQuestion { Today = AdviceQuestion.Of(basis.Inputs), PresentStays = basis.WireStays },
            new LadderOptions
            {
                Policy = policy, Style = style?.Invoke() ?? SentenceStyle.Default, Threads = Threads,
            },
            progress,
            cancellation);
        return new KeptLadder
        {
            Basis = basis,
            WorkingWire = advice.Working.Id,
            WorkingIsAssumed = advice.WorkingIsAssumed,
            IsAtWorkingWire = advice.IsAtWorkingWire,
            AgainstPresent = Listing<string>.Of(advice.AgainstPresent.Select(finding => finding.Sentence)),
            Sequences = Listing<KeptSequence>.Of(Once(advice).Select(Kept)),
            Because = advice.Because ?? "",
            Considerations = Listing<string>.Of(advice.Considerations),
            CeilingFactor = advice.CeilingFactor,
            Cautions = Listing<string>.Of(advice.Cautions),
            Missing = Listing<string>.Of(advice.Missing.Select(fact => fact.Question)),
            PolicyVersion = advice.PolicyVersion,
            ProgramVersion = ProgramVersion.Text,
            ComputedAt = clock.GetUtcNow(),
        };
    }

    // What is the same sequence stands once.
    private static IEnumerable<LadderAnswer> Once(LadderAdvice advice) => advice.Answers
        .Where(answer => advice.Answers
            .First(one => one.Kind == answer.Kind || one.SameAs.Contains(answer.Kind)) == answer)
        .Concat(advice.Nearest is { } nearest ? [nearest] : []);

    private static KeptSequence Kept(LadderAnswer answer) => new()
    {
        Kinds = Listing<LadderKind>.Of(answer.SameAs.Prepend(answer.Kind)),
        TiesWith = Listing<LadderKind>.Of(answer.TiesWith.Except(answer.SameAs)),
        Wires = Listing<KeptWire>.Of(answer.Steps.Select(Kept)),
        Visits = Spread(answer.Visits),
        Weeks = Spread(answer.TotalWeeks),
        ComfortIndex = answer.ComfortIndex,
        LargestForceN = answer.LargestForce,
        Stop = answer.Stop ?? "",
        IsProven = answer.IsProven,
    };

    private static KeptWire Kept(LadderStep step) => new()
    {
        WireId = step.Wire.Id,
        IsInPlace = step.IsInPlace,
        AtVisit = step.AtVisit,
        FromWeek = Spread(step.FromWeek),
        Weeks = Spread(step.Weeks),
        Interval = step.Interval,
        LargestForceN = step.Figures.Engaged ? step.Figures.LargestForce : null,
        LargestForceTooth = step.LargestForceTooth?.ToIso() ?? "",
        ComfortIndex = step.IsInPlace ? null : step.ComfortIndex,
        PartialTies = Listing<ToothNumber>.Of(step.PartialTies),
        Twins = Listing<string>.Of(step.Twins.Select(twin => twin.Id)),
        Against = Listing<string>.Of(step.Against.Select(finding => finding.Sentence)),
    };

    private static LadderSpread Spread(Percentiles range) =>
        new(Known(range.P10), Known(range.P50), Known(range.P90));

    private static double? Known(double value) => double.IsFinite(value) ? value : null;
}
