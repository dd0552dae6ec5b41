namespace Archwright.Mechanics.Engagement;

/// <content>Friction: what it can hold follows the walls' forces.</content>
public sealed partial class Engager
{
    // Coefficients are known to half their value; a bound this near to what the walls say [share of the largest force]
    // is settled.
    private const double SettledBound = 1e-3;
    private const int MostBounds = 12;

    private bool _rubs;

    // As it is tied in the wire finds its place freely; from here on what moves it along the slots meets friction.
    private void BeginFriction()
    {
        _rod.Contacts.TakeBounds(_rod.State, _rod.Frames, _rod.Mesh);
        _rod.Contacts.CommitFriction();
    }

    // The wire settles with the bounds held, and the bounds follow, until both agree.
    private SearchEnd SettleFriction(CancellationToken cancellation)
    {
        for (int pass = 0; pass < MostBounds; pass++)
        {
            double change = _rod.Contacts.TakeBounds(_rod.State, _rod.Frames, _rod.Mesh);
            if (change <= SettledBound * _rod.Contacts.LargestForce())
                return SearchEnd.Converged;
            if (!TryHeld(loose: false, cancellation) && Settle(StepIterations, near: false, cancellation)
                != SearchEnd.Converged)
            {
                return SearchEnd.Stalled;
            }
        }

        return SearchEnd.Stalled;
    }
}
