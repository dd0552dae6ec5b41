namespace Archwright.Mechanics.Slots;

/// <summary>One wall in an interior-point search: gap h of the wire to it, slack s that stands for it, and force z,
/// with s and z positive and s·z led to nil.</summary>
/// <remarks>S. J. Wright, <i>Primal-Dual Interior-Point Methods</i>, SIAM 1997 (from memory).</remarks>
internal struct InteriorSide
{
    private const double ToBoundary = 0.99;
    private const double LeastSlack = 2e-3;

    public double Gap, Slack, Force, Acting, SlackStep, ForceStep;
    public ElementVector Derivative;

    /// <summary>Change of the restraint when the wire slides by one.</summary>
    public double BySlide;

    /// <summary>First slack and force.</summary>
    /// <param name="aim">μ [N·mm].</param>
    /// <param name="force">Force that is known already from an earlier solution, or zero [N].</param>
    public void Begin(double aim, double force)
    {
        Slack = Math.Max(Gap, LeastSlack);
        Force = Math.Max(force, aim / Slack);
    }

    /// <summary>Steps of slack and force that go with an opening of the gap to first order.</summary>
    public void Plan(double aim, double opening)
    {
        SlackStep = opening + Gap - Slack;
        ForceStep = aim / Slack - Force - Force / Slack * SlackStep;
    }

    /// <summary>Share of a step that keeps a positive value positive.</summary>
    public static double Share(double value, double step) =>
        step < 0 ? Math.Min(1, -ToBoundary * value / step) : 1;
}
