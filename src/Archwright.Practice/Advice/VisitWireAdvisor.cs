using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Policies;

namespace Archwright.Practice.Advice;

/// <summary>Keep, step up, step down or look first, for the chair: the advice of <see cref="VisitAdvisor"/> on what the
/// practice noted, among the wires in its drawer.</summary>
/// <param name="policy">By what it is judged.</param>
/// <param name="clock">The time of the advice.</param>
/// <param name="style">How forces and teeth read in sentences at the time; null for what files hold.</param>
public sealed class VisitWireAdvisor(
    VisitPolicy policy, TimeProvider clock, Func<SentenceStyle>? style = null) : IWireAdvisor
{
    // Half of the machine, so that the screens of others answer while one advice is computed.
    private static readonly int Threads = Math.Max(1, Environment.ProcessorCount / 2);

    /// <inheritdoc/>
    public string PolicyVersion => policy.Version;

    /// <inheritdoc/>
    public Recommendation Advise(
        AdviceInputs inputs, IProgress<AdviceProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        cancellation.ThrowIfCancellationRequested();
        VisitAdvice advice = VisitAdvisor.Advise(
            AdviceQuestion.Of(inputs),
            new VisitOptions
            {
                Policy = policy,
                Style = style?.Invoke() ?? SentenceStyle.Default,
                Threads = Threads,
                LooksBeyondStock = false,
            },
            progress is null ? null : new Counting(progress),
            cancellation);
        return new Recommendation
        {
            Kind = Kind(advice.Step),
            WireId = advice.Wire?.Figures.Wire.Id ?? "",
            Because = advice.Because,
            Considerations = Listing<string>.Of(advice.Considerations),
            Interval = new AdvisedInterval(advice.Interval.Low, advice.Interval.Mid, advice.Interval.High),
            PartialTies = Listing<ToothNumber>.Of(advice.PartialTies),
            Missing = Listing<string>.Of(advice.Missing.Select(fact => fact.Question)),
            Options = Listing<AdvisedWire>.Of(advice.Options.Select(option => Option(option, advice))),
            Cautions = Listing<string>.Of(advice.Cautions),
            Inputs = inputs,
            PolicyVersion = advice.PolicyVersion,
            ProgramVersion = ProgramVersion.Text,
            GivenAt = clock.GetUtcNow(),
        };
    }

    private static AdviceKind Kind(AdvisedStep step) => step switch
    {
        AdvisedStep.Keep => AdviceKind.Keep,
        AdvisedStep.StepUp => AdviceKind.StepUp,
        AdvisedStep.StepDown => AdviceKind.StepDown,
        _ => AdviceKind.LookFirst,
    };

    private static AdvisedWire Option(WireOption option, VisitAdvice advice)
    {
        WireFigures wire = option.Figures;
        string sentence = (option.FirstAgainst ?? Telling(option)).Sentence;
        return new AdvisedWire(
            wire.Wire.Id,
            Fitness(option),
            wire.Engaged ? wire.LargestForce : null,
            wire.LargestForceSlot >= 0 ? advice.Question.Tooth(wire.LargestForceSlot).ToIso() : "",
            sentence)
        {
            GivenForceN = wire.LargestGiven,
            WhyNot = option.WhyNotThis == sentence ? "" : option.WhyNotThis,
            Findings = Listing<string>.Of(option.Findings.Select(finding => finding.Sentence)),
            TiesWithFirst = option.TiesWithBest && wire.Wire.Id != advice.Wire?.Figures.Wire.Id,
            ComfortIndex = option.ComfortIndex,
        };
    }

    // What it delivers where that was computed, else how it loads the teeth.
    private static Finding Telling(WireOption option) =>
        option.Findings.FirstOrDefault(finding => finding.Rule == VisitRuleNames.Delivers)
        ?? option.Findings.FirstOrDefault(finding => finding.Rule == VisitRuleNames.Ceilings)
        ?? option.Findings[0]; // the first rule has always something to say

    private static WireFitness Fitness(WireOption option) => option.FirstAgainst?.Rule switch
    {
        null => WireFitness.Fits,
        VisitRuleNames.GoesIn when option.Figures is { ThickerThan: null, IsUnanswered: false } =>
            WireFitness.CannotGoIn,
        VisitRuleNames.SpringsBack => WireFitness.Bends,
        VisitRuleNames.Ceilings => WireFitness.TooStrong,
        VisitRuleNames.Alerts => WireFitness.AgainstAnAlert,
        _ => WireFitness.NotNow,
    };

    private sealed class Counting(IProgress<AdviceProgress> outer) : IProgress<VisitProgress>
    {
        public void Report(VisitProgress value) => outer.Report(new AdviceProgress(value.Done, value.Of));
    }
}
