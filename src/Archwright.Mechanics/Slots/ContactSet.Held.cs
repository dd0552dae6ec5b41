namespace Archwright.Mechanics.Slots;

/// <content>Walls whose touching is held while the rest settles.</content>
internal sealed partial class ContactSet
{
    /// <summary>Force over slack above which a wall of an interior-point search is taken as touched: about the wire's
    /// own stiffness [N/mm].</summary>
    public double TouchedStiffness { get; set; } = 10;

    /// <summary>Walls push, and pull, just where they are held as touched.</summary>
    public bool HoldsSet { get; set; }

    /// <summary>Takes as touched what carries a force now; after an interior-point search, what carries more than its
    /// slack lets expect. Multipliers take the forces.</summary>
    public void HoldTouched()
    {
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            if (row.Kind == RowKind.Friction)
                row.Touched = row.Slips ? Math.Sign(row.Effective) : 0;
            if (!MayLetGo(row))
                continue;

            if (row.Inside)
            {
                ref readonly InteriorSide lower = ref _sides[2 * i];
                ref readonly InteriorSide upper = ref _sides[2 * i + 1];
                bool above = row.Upper && upper.Force > TouchedStiffness * upper.Slack;
                bool below = row.Lower && lower.Force > TouchedStiffness * lower.Slack;
                row.Touched = above && !(below && lower.Force > upper.Force) ? 1 : below ? -1 : 0;
                row.Multiplier = row.Touched > 0 ? upper.Force : row.Touched < 0 ? -lower.Force : 0;
                row.Inside = false;
            }
            else
            {
                row.Touched = Math.Sign(row.Multiplier);
            }
        }
    }

    // Force of a wall held as touched: it may pull, for a step.
    private double HeldForce(in ContactRow row) => row.Touched switch
    {
        > 0 => row.Multiplier + Penalty * row.Over,
        < 0 => row.Multiplier - Penalty * row.Under,
        _ => 0,
    };

    private static bool MayLetGo(in ContactRow row) => row.CanTouch || row.EndStop;
}
