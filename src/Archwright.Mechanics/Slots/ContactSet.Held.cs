namespace Archwright.Mechanics.Slots;

/// <content>Walls whose touching is held while the rest settles.</content>
internal sealed partial class ContactSet
{
    // Force over slack [N/mm] above which a wall of an interior-point search is taken as touched: about the wire's own
    // stiffness.
    private const double TouchedStiffness = 10;

    /// <summary>Walls push, and pull, just where they are held as touched.</summary>
    public bool HoldsSet { get; set; }

    /// <summary>Takes as touched what carries a force now; after an interior-point search, what carries more than its
    /// slack lets expect. Multipliers take the forces.</summary>
    public void HoldTouched()
    {
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
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

    /// <summary>Lets go of walls that would have to pull, and takes in those that have been run into.</summary>
    /// <param name="tolerance">Depth that does not count [mm].</param>
    /// <returns>Whether anything changed.</returns>
    public bool ReviseTouched(double tolerance)
    {
        bool changed = false;
        int from = 0;
        while (from < RowCount)
        {
            int to = from + 1;
            while (to < RowCount && _rows[to].Slot == _rows[from].Slot)
                to++;

            changed |= ReviseSlot(_rows.AsSpan(from, to - from), tolerance);
            from = to;
        }

        return changed;
    }

    // Of the walls of a slot that have been run into only the deepest on each side is taken in: with that one held the
    // others may stand free.
    private static bool ReviseSlot(Span<ContactRow> rows, double tolerance)
    {
        bool changed = false;
        Span<double> deepest = stackalloc double[6];
        Span<int> row = stackalloc int[6];
        row.Fill(-1);
        deepest.Fill(tolerance);
        for (int i = 0; i < rows.Length; i++)
        {
            ref ContactRow wall = ref rows[i];
            if (!MayLetGo(wall) || wall.BothWays)
                continue;

            if (wall.Touched * wall.Effective < 0)
            {
                wall.Touched = 0;
                wall.Multiplier = 0;
                wall.Effective = 0;
                changed = true;
            }
            else if (wall.Touched == 0)
            {
                Deepest(wall.Upper ? wall.Over : 0, 2 * wall.Axis + 1, i, deepest, row);
                Deepest(wall.Lower ? wall.Under : 0, 2 * wall.Axis, i, deepest, row);
            }
        }

        for (int k = 0; k < row.Length; k++)
        {
            if (row[k] < 0)
                continue;

            rows[row[k]].Touched = k % 2 == 1 ? 1 : -1;
            changed = true;
        }

        return changed;
    }

    private static void Deepest(double depth, int side, int index, Span<double> deepest, Span<int> row)
    {
        if (depth <= deepest[side])
            return;

        deepest[side] = depth;
        row[side] = index;
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
