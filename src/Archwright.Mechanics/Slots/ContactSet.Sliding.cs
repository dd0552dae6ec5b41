using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <content>What the restraints say to a slide of the whole wire.</content>
/// <remarks>An end stop goes along with the wire. A section that is twisted in its rest shape, or bent, turns in its
/// slot as it slides through, and so runs into the walls.</remarks>
internal sealed partial class ContactSet
{
    /// <summary>Adds minus what the restraints' gradient gains by a slide of one, as their gaps change.</summary>
    /// <param name="answer">Longer by that, 8 a node.</param>
    /// <returns>What the merit function gains by a slide of one [N].</returns>
    public double AddSlideAnswer(Span<double> answer)
    {
        double merit = 0;
        for (int i = 0; i < RowCount; i++)
        {
            ref readonly ContactRow row = ref _rows[i];
            if (row.Inside)
            {
                AddInteriorSlideAnswer(i, answer);
                continue;
            }

            if (row.Kind == RowKind.Friction)
            {
                merit += row.Effective;
                if (row.Bound > 0 && !row.Slips)
                    _byRow[i].AddTo(answer, _elementOfRow[i], -Grip);
                continue;
            }

            bool acts = row.Effective != 0 || row.BothWays || (HoldsSet && row.Touched != 0);
            if (!acts || _bySlide[i] == 0)
                continue;

            merit += row.Effective * _bySlide[i];
            _byRow[i].AddTo(answer, _elementOfRow[i], -Penalty * _bySlide[i]);
        }

        return merit;
    }

    private void AddInteriorSlideAnswer(int row, Span<double> answer)
    {
        for (int i = 2 * row; i < 2 * row + 2; i++)
        {
            ref readonly InteriorSide wall = ref _sides[i];
            if (IsFelt(i) && wall.BySlide != 0)
                wall.Derivative.AddTo(answer, _elementOfRow[row], -wall.Force / wall.Slack * wall.BySlide);
        }
    }

    /// <summary>Adds the gradient of the walls for the forces they have now, with the wire slid under its shape: the
    /// directions in which they push change.</summary>
    /// <param name="slid">The mesh with the wire slid.</param>
    /// <param name="shift">How far [mm].</param>
    /// <param name="q">State.</param>
    /// <param name="frames">Slots.</param>
    /// <param name="gradient">Longer by that.</param>
    public void AddSlidGradient(
        RodMesh slid, double shift, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, Span<double> gradient)
    {
        Station at = default;
        int evaluated = -1;
        for (int i = 0; i < RowCount; i++)
        {
            ref readonly ContactRow row = ref _rows[i];
            if (row.Kind != RowKind.Walls || !_stations[row.Station].NeedsTurn || !IsPushed(i))
                continue;

            if (row.Station != evaluated)
            {
                evaluated = row.Station;
                at = _stations[evaluated].Slid(slid, shift, q, frames[row.Slot]);
            }

            AddSlidWalls(i, at, frames[row.Slot], gradient);
        }
    }

    private bool IsPushed(int row) => _rows[row].Inside
        ? Math.Max(_sides[2 * row].Force, _sides[2 * row + 1].Force) > PushedForce
        : Math.Abs(_rows[row].Effective) > PushedForce;

    private void AddSlidWalls(int index, in Station at, in SlotFrame frame, Span<double> gradient)
    {
        ref readonly ContactRow row = ref _rows[index];
        if (!row.Inside)
        {
            AddSlidWall(row, Math.Sign(row.Effective), row.Effective, at, frame, gradient);
            return;
        }

        if (row.Lower)
            AddSlidWall(row, -1, -_sides[2 * index].Force, at, frame, gradient);
        if (row.Upper)
            AddSlidWall(row, 1, _sides[2 * index + 1].Force, at, frame, gradient);
    }

    private static void AddSlidWall(
        in ContactRow row, int side, double force, in Station at, in SlotFrame frame, Span<double> gradient)
    {
        double byTurn = row.Corner * at.Cos - side * row.Across * at.Sin;
        Vector3 m = NormalToWire(Axis(frame, row.Axis), at, frame, byTurn);
        ElementVector derivative = ElementVector.OfPoint(m, at.Shape)
            + ElementVector.OfSlope(at.TurnByP * byTurn, byTurn, at.TurnShape);
        derivative.AddTo(gradient, at.Element, force);
    }

    // Below it [N] a wall's direction does not matter.
    private const double PushedForce = 1e-3;
}
