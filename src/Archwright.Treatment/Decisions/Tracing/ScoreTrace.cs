using Archwright.Dentition.Comparison;
using Archwright.Treatment.Comfort;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions.Tracing;

/// <summary>How the score of a wire comes about:
/// <code>
///     index = 10 F/(F + half),
///     progress = ln(stiffness/softest) / ln(working/softest), from 0 to 1,
///     score = w_d · share + w_p · progress − w_c · index/10.
/// </code>
/// </summary>
/// <param name="FittingForce">Sum of the forces on all teeth when it goes, or went, in, F [N].</param>
/// <param name="HalfForce">At which the index stands at 5 [N].</param>
/// <param name="ComfortIndex">Of 10.</param>
/// <param name="Stiffness">Of the wire [N·mm²].</param>
/// <param name="SoftestStiffness">Of the softest of the catalogue [N·mm²].</param>
/// <param name="WorkingStiffness">Of the working wire, or the stiffest of the catalogue where none is named
/// [N·mm²].</param>
/// <param name="Progress">From 0 to 1.</param>
/// <param name="DeliveredShare">By the next visit, usual patient; 1 on an aligned arch; null where not
/// followed.</param>
/// <param name="WeightDelivered">w_d.</param>
/// <param name="WeightProgress">w_p.</param>
/// <param name="WeightComfort">w_c.</param>
/// <param name="Score">Null where the wire is not allowed, or was not followed.</param>
/// <param name="Uncertainty">Either way.</param>
public sealed record ScoreTrace(
    double FittingForce, double HalfForce, double ComfortIndex, double Stiffness, double SoftestStiffness,
    double WorkingStiffness, double Progress, double? DeliveredShare, double WeightDelivered, double WeightProgress,
    double WeightComfort, double? Score, double Uncertainty)
{
    /// <summary>The chain of a wire of an advice.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="option">One of its wires.</param>
    /// <param name="policy">The policy that was judged by.</param>
    public static ScoreTrace Of(VisitAdvice advice, WireOption option, VisitPolicy policy)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(option);
        ArgumentNullException.ThrowIfNull(policy);
        WireFigures wire = option.Figures;
        var view = new VisitView(advice.Question, policy, SentenceStyle.Default, advice.Figures.Present);
        (double softest, double top) = Scores.Ends(advice.Question.WorkingWire);
        return new ScoreTrace(
            wire.FittingForce,
            policy.ComfortHalfForce,
            Comfort.ComfortIndex.Of(wire, policy),
            WireSize.Stiffness(wire.Wire),
            softest,
            top,
            Scores.Progress(wire.Wire, advice.Question.WorkingWire),
            view.IsAligned ? 1 : wire.Delivery?.Share.P50,
            policy.WeightDelivered,
            policy.WeightProgress,
            policy.WeightComfort,
            option.Score,
            option.ScoreUncertainty);
    }
}
