namespace Archwright.Mechanics.Engagement;

/// <content>What a wire with memory needs beyond an elastic one: a tangent that does not promise too much.</content>
/// <remarks>A fibre on its line is some thirty times as soft as one that turns back from it. Newton's tangent knows
/// only one of the two, and where many fibres have to turn back its step is far too long. So a share of the elastic
/// stiffness is put in its place, raised where steps had to be cut short and lowered where they were taken whole, and
/// every step has to go down in energy.</remarks>
internal sealed partial class Equilibrium
{
    private int _fallsSlowly;

    private const double LeastStiffening = 0.1;
    private const double NoStiffening = 0.02;

    // Returns the next shift.
    private double NextStiffening(double shift, double share)
    {
        double before = Law.Stiffening;
        if (share >= 1)
        {
            Law.Stiffening = before < NoStiffening ? 0 : before / 4;
            return Math.Max(BaseShift, shift / 10);
        }

        if (share >= 0.3)
            return shift;

        Law.Stiffening = Math.Min(1, Math.Max(LeastStiffening, 4 * before));
        return before >= 1 ? Math.Max(100 * BaseShift, 10 * shift) : shift;
    }

    // From afar, and with the walls held, there is no line search: a residual that does not fall says that the tangent
    // promised too much.
    private void Stiffen(double residual, ref double before)
    {
        _fallsSlowly = residual <= Slow * before && residual >= Fast * before ? _fallsSlowly + 1 : 0;
        if (residual > Slow * before)
            Law.Stiffening = Math.Min(1, Math.Max(LeastStiffening, 2 * Law.Stiffening));
        else if (residual < Fast * before || _fallsSlowly >= LongEnough)
            Law.Stiffening = Law.Stiffening < NoStiffening ? 0 : Law.Stiffening / 4;
        before = residual;
    }

    // A residual that falls slowly for so many steps is held up by the stiffening itself.
    private const int LongEnough = 3;
    private const double Slow = 0.9;
    private const double Fast = 0.5;
}
