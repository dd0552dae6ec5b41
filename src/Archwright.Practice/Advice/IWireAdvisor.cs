namespace Archwright.Practice.Advice;

/// <summary>How far a computation has come.</summary>
/// <param name="Done">Wires done.</param>
/// <param name="Of">Wires in all.</param>
public sealed record AdviceProgress(int Done, int Of);

/// <summary>Gives advice on the wires of one arch. What stands behind it may change; what it is given and what it
/// answers is kept with the visit.</summary>
public interface IWireAdvisor
{
    /// <summary>Version of its rules and ceilings.</summary>
    string PolicyVersion { get; }

    /// <summary>Looks at every wire to choose from.</summary>
    /// <param name="inputs">The arch and what there is.</param>
    /// <param name="progress">Told the number of wires done; from any thread.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The inputs do not hold together; the message says how.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    Recommendation Advise(
        AdviceInputs inputs, IProgress<AdviceProgress>? progress = null, CancellationToken cancellation = default);
}
