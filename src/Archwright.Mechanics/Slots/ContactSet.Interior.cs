using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Slots;

/// <content>Walls as an interior-point search sees them.</content>
internal sealed partial class ContactSet
{
    /// <summary>Keeps the forces of the rows as they are, for <see cref="RestoreForces"/>.</summary>
    public void KeepForces()
    {
        for (int i = 0; i < RowCount; i++)
            _rows[i].Kept = _rows[i].Effective;
    }

    /// <summary>Puts kept forces back; what is below <paramref name="least"/> [N] was never touched.</summary>
    public void RestoreForces(double least)
    {
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            row.Effective = Math.Abs(row.Kept) < least ? 0 : row.Kept;
            row.Multiplier = row.Effective;
        }
    }

    /// <summary>Ends an interior-point search: walls that are touched keep their force as multiplier, the others lose
    /// what little they carried.</summary>
    /// <param name="least">Force that counts as touching [N].</param>
    public void LeaveInterior(double least)
    {
        Interior = 0;
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            if (row.IsSpring)
                continue;

            if (row.Inside && Math.Abs(row.Effective) < least)
                row.Effective = 0;

            row.Inside = false;
            row.Multiplier = row.Effective;
        }
    }

    // One side of a pair of walls as an interior-point method sees it: slack s, force z, both positive, s·z near μ.
    // With the slack and the force eliminated the side acts with p = μ/s − (z/s)(h − s) and the stiffness z/s.
    private double ApplyInterior(
        ref ContactRow row, int index, in Station at, in SlotFrame frame, Vector3 axis, double middle, double clearance,
        Span<double> gradient, BlockTridiagonal tangent)
    {
        bool turns = row.Corner != 0 || row.Across != 0;
        (double sin, double cos) = turns ? (at.Sin, at.Cos) : (0, 1);
        double net = 0;
        double worst = 0;
        double merit = 0;
        double bothP = 0;
        double bothStiffness = 0;
        for (int side = -1; side <= 1; side += 2)
        {
            if (side > 0 ? !row.Upper : !row.Lower)
                continue;

            ref InteriorSide wall = ref Side(index, side, clearance - side * middle, out double p,
                out double stiffness);
            net += side * wall.Force;
            worst = Math.Max(worst, Math.Abs(wall.Gap - wall.Slack));
            merit -= Interior * Math.Log(wall.Slack);
            bothP += side * p;
            bothStiffness += stiffness;
            if (!turns)
                continue;

            double across = side * row.Across;
            AddAtStation(
                index, at, frame, axis, side * p, side * wall.Force, row.Corner * cos - across * sin,
                -row.Corner * sin - across * cos, gradient, tangent, stiffness);
            wall.Derivative = _byRow[index];
            wall.BySlide = _bySlide[index];
        }

        Register(ref row, index, at.Element, net, tangent);
        row.Violation = worst;
        if (!turns)
        {
            // Without a turn the two walls push along one and the same line.
            AddAtStation(index, at, frame, axis, bothP, net, 0, 0, gradient, tangent, bothStiffness);
            for (int side = 0; side < 2; side++)
            {
                _sides[2 * index + side].Derivative = _byRow[index];
                _sides[2 * index + side].BySlide = 0;
            }
        }

        return merit;
    }

    private ref InteriorSide Side(int index, int side, double gap, out double acting, out double stiffness)
    {
        ref InteriorSide wall = ref _sides[2 * index + (side > 0 ? 1 : 0)];
        wall.Gap = gap;
        if (Starting)
            wall.Begin(Interior, Math.Max(0, side * _rows[index].Multiplier));

        stiffness = wall.Force / wall.Slack;
        acting = Interior / wall.Slack - stiffness * (gap - wall.Slack);
        wall.Acting = acting;
        return ref wall;
    }

    /// <summary>Steps of slacks and forces that go with a step of the wire, and how much of them keeps both
    /// positive.</summary>
    /// <param name="step">Step of the unknowns.</param>
    /// <param name="slide">Slide of the whole wire that goes with it [mm].</param>
    /// <returns>Shares for slacks (and the wire) and for forces.</returns>
    public (double Slacks, double Forces) InteriorStep(ReadOnlySpan<double> step, double slide)
    {
        double slacks = 1;
        double forces = 1;
        for (int i = 0; i < 2 * RowCount; i++)
        {
            if (!IsFelt(i))
                continue;

            ref InteriorSide wall = ref _sides[i];
            double change = wall.Derivative.Dot(step, _elementOfRow[i / 2]) + wall.BySlide * slide;
            wall.Plan(Interior, -Sign(i) * change);
            slacks = Math.Min(slacks, InteriorSide.Share(wall.Slack, wall.SlackStep));
            forces = Math.Min(forces, InteriorSide.Share(wall.Force, wall.ForceStep));
        }

        return (slacks, forces);
    }

    /// <summary>The part of a slide that the stops leave room for: most of a stop's slack, so that its force can grow
    /// as it comes near.</summary>
    /// <param name="answer">What the unknowns do for a slide of one.</param>
    /// <param name="slide">Wanted [mm].</param>
    public double WithinStops(ReadOnlySpan<double> answer, double slide)
    {
        for (int i = 0; i < 2 * RowCount; i++)
        {
            if (!_rows[i / 2].EndStop || !IsFelt(i))
                continue;

            ref readonly InteriorSide wall = ref _sides[i];
            double opening = Sign(i) * (1 - wall.Derivative.Dot(answer, _elementOfRow[i / 2])) * slide;
            double room = ShareOfStop * wall.Slack;
            if (opening < -room)
                slide *= room / -opening;
        }

        return slide;
    }

    private const double ShareOfStop = 0.8;

    /// <summary>Turns a gradient with the eliminated forces into the one with the forces themselves, the true residual
    /// of an interior-point search.</summary>
    public void WithInteriorForces(Span<double> gradient)
    {
        for (int i = 0; i < 2 * RowCount; i++)
        {
            if (!IsFelt(i))
                continue;

            ref InteriorSide wall = ref _sides[i];
            wall.Derivative.AddTo(gradient, _elementOfRow[i / 2], Sign(i) * (wall.Force - wall.Acting));
        }
    }

    /// <summary>Takes the planned steps of slacks and forces.</summary>
    /// <returns>Mean of slack times force [N·mm].</returns>
    public double TakeInteriorStep(double slacks, double forces)
    {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < 2 * RowCount; i++)
        {
            if (!IsFelt(i))
                continue;

            ref InteriorSide wall = ref _sides[i];
            wall.Slack += slacks * wall.SlackStep;
            wall.Force += forces * wall.ForceStep;
            sum += wall.Slack * wall.Force;
            count++;
        }

        return count > 0 ? sum / count : 0;
    }

    // Sides stand two a row, the lower wall first.
    private bool IsFelt(int side)
    {
        ref readonly ContactRow row = ref _rows[side / 2];
        return row.Inside && (side % 2 == 1 ? row.Upper : row.Lower);
    }

    private static int Sign(int side) => side % 2 == 1 ? 1 : -1;
}
