using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Crowns;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Numerics;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Forecasts;

/// <summary>One step of time, implicit: teeth, wire and neighbouring crowns find their new places together.</summary>
/// <remarks>
/// Each tooth's motion ξ over the step Δt, in the axes of its slot at its centre of resistance, is what remodelling
/// and the elastic ligament give under the load W at the <b>end</b> of the step (u₀: what the ligament gave at its
/// start):
/// <code>
///     ξ = Δt · m(W) D W + C(W) W − u₀   ⇔   Z (ξ + u₀) − W = 0,   Z = (Δt m D + C)⁻¹ diagonal,
///     W = W_wire − S ξ + W_crowns(ξ) + W_lips(ξ) + W_applied.
/// </code>
/// m &gt; 0 is the mobility of <see cref="ToothAnswer"/>, C the compliance of a ligament that stiffens. Both are
/// taken from the last iterate, so each iteration solves
/// (Z + S + K_crowns) δ = −residual with a positive definite matrix: the energy of wire and crowns cannot grow,
/// however long the step. The wire is linear here, S its stiffness where it was engaged last; <see cref="March"/>
/// engages it at the places found and goes on from there (Newton's method, with walls that are touched or not).
/// </remarks>
internal sealed class MovementStep : IGivingSlots
{
    private const int MostIterations = 100;
    private const double Tolerance = 1e-5;
    private const int CarefulAtFirst = 2;
    private const int CarefulAgain = 3;
    private const int Patience = 15;
    private const double LeastShare = 0.125;
    private const double Overshoot = 0.3;
    private const double LeastOfStep = 0.1;
    private const double MostOfStep = 0.9;
    private const double LeastFound = 0.02;

    private readonly MovingArch _arch;
    private readonly SymmetricSystem _system;
    private readonly double[] _stiffness;
    private readonly double[] _unknown;
    private readonly Six[] _wireLoad;
    private readonly Six[] _wireAt;
    private readonly Six[] _wireFrom;
    private readonly double[] _maps;
    private readonly Six[] _wanted;
    private readonly Six[] _moved;
    private readonly Six[] _lastStep;
    private readonly Six[] _lastChange;
    private readonly double[] _learnt;
    private readonly Six[] _crowns;
    private readonly Six[] _given;
    private readonly SlotFrame[] _places;
    private readonly int _size;
    private double _soft = 1;
    private bool _knowsWanted;

    public MovementStep(MovingArch arch)
    {
        _arch = arch;
        _size = 6 * arch.Count;
        _system = new SymmetricSystem(_size);
        _stiffness = new double[_size * _size];
        _unknown = new double[_size];
        _wireLoad = new Six[arch.Count];
        _wireAt = new Six[arch.Count];
        _wireFrom = new Six[arch.Count];
        _maps = new double[36 * arch.Count];
        _wanted = new Six[arch.Count];
        _moved = new Six[arch.Count];
        _lastStep = new Six[arch.Count];
        _lastChange = new Six[arch.Count];
        _learnt = new double[_size];
        _crowns = new Six[arch.Count];
        _given = new Six[arch.Count];
        _places = new SlotFrame[arch.Count];
        Motion = new Six[arch.Count];
        Load = new Six[arch.Count];
        LoadBefore = new Six[arch.Count];
        Answered = new Six[arch.Count];
        Start = new SlotFrame[arch.Count];
        Rates = [.. arch.Rates];
    }

    /// <summary>Slots at the start of the step.</summary>
    public SlotFrame[] Start { get; }

    /// <summary>The motion found.</summary>
    public Six[] Motion { get; }

    /// <summary>The whole load on each tooth at the end of the step, with the wire linear.</summary>
    public Six[] Load { get; }

    /// <summary>The whole load on each tooth that <see cref="Motion"/> answers: <see cref="Load"/> as it was before the
    /// wire's true load came in.</summary>
    public Six[] Answered { get; }

    /// <summary>The whole load on each tooth at the start of the step.</summary>
    public Six[] LoadBefore { get; }

    /// <summary>Factor on the law during this step, tooth by tooth: nil for one that stands still.</summary>
    public double[] Rates { get; }

    /// <summary>Iterations used by the last solve.</summary>
    public int Iterations { get; private set; }

    /// <summary>The last solve failed because the wire, with the stiffness given, would push the teeth on.</summary>
    public bool IsPushedOn { get; private set; }

    /// <summary>Takes the stiffness of the wire at some places of the slots.</summary>
    /// <param name="places">Where they are.</param>
    /// <param name="stiffness">As <see cref="IWireInPlace.ReadStiffness"/> gives it.</param>
    public void SetStiffness(ReadOnlySpan<SlotFrame> places, ReadOnlySpan<double> stiffness)
    {
        SlotTransform.FillMaps(_arch, places, _maps);
        SlotTransform.ToResistance(_arch, _maps, stiffness, _stiffness);
        for (int i = 0; i < _stiffness.Length; i++)
            _stiffness[i] = -_stiffness[i];
    }

    /// <summary>Starts a step.</summary>
    /// <param name="places">Slots now.</param>
    /// <param name="wire">Loads of the wire at the slots now.</param>
    public void Begin(ReadOnlySpan<SlotFrame> places, ReadOnlySpan<Wrench> wire)
    {
        places.CopyTo(Start);
        Array.Clear(Motion);
        _knowsWanted = false;
        for (int i = 0; i < _arch.Count; i++)
        {
            _wireLoad[i] = _arch.AtResistance(i, Start[i], wire[i]);
            _wireFrom[i] = _wireLoad[i];
            _wireAt[i] = default;
        }
    }

    /// <summary>Takes the wire's true load at the present motion in place of the linear one.</summary>
    public void CorrectWire(ReadOnlySpan<Wrench> wire)
    {
        for (int i = 0; i < _arch.Count; i++)
        {
            Six load = TrueLoad(i, wire);
            _lastStep[i] = Motion[i] - _wireAt[i];
            _lastChange[i] = _wireLoad[i] - load;
            _wireLoad[i] = load;
            _wireFrom[i] = load;
            _wireAt[i] = Motion[i];
        }

        UpdateLoads();
    }

    /// <summary>Takes loads that the wire's stiffness goes on from, which are not its true ones: those between walls
    /// that it does not touch yet.</summary>
    /// <param name="places">Slots where the wire was engaged last.</param>
    /// <param name="wire">The loads there.</param>
    public void GoFrom(ReadOnlySpan<SlotFrame> places, ReadOnlySpan<Wrench> wire)
    {
        for (int i = 0; i < _arch.Count; i++)
            _wireFrom[i] = _arch.AtResistance(i, places[i], wire[i]);
    }

    /// <summary>How the slots move from where the wire was engaged last: shift and turn in the frame of the case, six
    /// a slot.</summary>
    public void ReadMotions(Span<double> motions)
    {
        for (int i = 0; i < _size; i++)
            _unknown[i] = Motion[i / 6][i % 6] - _wireAt[i / 6][i % 6];
        ToSlots(_unknown, motions);
    }

    /// <inheritdoc/>
    /// <remarks>As the last solve left it: teeth, neighbours and lips, with the wire's stiffness.</remarks>
    public void Answer(ReadOnlySpan<double> loads, Span<double> motions)
    {
        for (int i = 0; i < _size; i++)
        {
            double sum = 0;
            for (int k = 0; k < 6; k++)
                sum += _maps[6 * (i / 6 * 6 + k) + i % 6] * loads[i / 6 * 6 + k];
            _unknown[i] = sum;
        }

        _system.Solve(_unknown);
        ToSlots(_unknown, motions);
    }

    private void ToSlots(ReadOnlySpan<double> atResistance, Span<double> motions)
    {
        for (int i = 0; i < _size; i++)
        {
            motions[i] = 0;
            for (int k = 0; k < 6; k++)
                motions[i] += _maps[6 * i + k] * atResistance[i / 6 * 6 + k];
        }
    }

    /// <summary>Goes back a part of the way where the last solve went so far that the wire pushes back.</summary>
    /// <remarks>What teeth, neighbours and lips take of the wire is the gradient of a function that grows, and so is
    /// what the wire gives: their difference falls along the step d of Newton's method, and vanishes at the answer.
    /// Between walls it falls in bends, and whole steps may go to and fro between two sets of touched walls for ever.
    /// Where it has changed its sign along d by more than a share, the step is cut to where a straight line between
    /// both ends would have none.</remarks>
    /// <param name="wire">The wire's true load at the motion found last.</param>
    /// <returns>Whether the motion was changed: then the wire has another load.</returns>
    public bool TryShorten(ReadOnlySpan<Wrench> wire)
    {
        double before = 0;
        double after = 0;
        for (int i = 0; i < _arch.Count; i++)
        {
            Six step = Motion[i] - _wireAt[i];
            before += Dot(_wireLoad[i] - _wanted[i], step);
            after += Dot(TrueLoad(i, wire) - WireNow(i), step);
        }

        bool tooFar = _knowsWanted && before > 0 && after < -Overshoot * before;
        double share = tooFar ? Math.Clamp(before / (before - after), LeastOfStep, MostOfStep) : 1;
        for (int i = 0; i < _arch.Count; i++)
        {
            _wanted[i] += (WireNow(i) - _wanted[i]) * share;
            _moved[i] = _wireAt[i] + (Motion[i] - _wireAt[i]) * share;
        }

        _moved.CopyTo(Motion, 0);
        _knowsWanted = true;
        return tooFar;
    }

    /// <summary>Lets the stiffness say what the wire did over the last step s, along it.</summary>
    /// <remarks>Where walls let go and take in by turns, the stiffness at a place is far from that on the way to the
    /// next, and corrections go to and fro. With y the change of load, S − (S s)(S s)ᵀ/(s·S s) + y yᵀ/(s·y) gives y for
    /// s, and resists where S did (the formula of Broyden, Fletcher, Goldfarb and Shanno: J. Nocedal, S. J. Wright,
    /// <i>Numerical Optimization</i>, 2nd ed., 2006, ch. 6, from memory).</remarks>
    public void LearnFromLastStep()
    {
        Span<double> given = _learnt.AsSpan(0, _size);
        double expected = 0;
        double found = 0;
        for (int i = 0; i < _size; i++)
        {
            given[i] = 0;
            for (int j = 0; j < _size; j++)
                given[i] += _stiffness[i * _size + j] * _lastStep[j / 6][j % 6];

            expected += given[i] * _lastStep[i / 6][i % 6];
            found += _lastChange[i / 6][i % 6] * _lastStep[i / 6][i % 6];
        }

        if (!(expected > 0 && found > LeastFound * expected))
            return;

        for (int i = 0; i < _size; i++)
        {
            double change = _lastChange[i / 6][i % 6] / found;
            for (int j = 0; j < _size; j++)
                _stiffness[i * _size + j] += change * _lastChange[j / 6][j % 6] - given[i] * given[j] / expected;
        }
    }

    private Six TrueLoad(int tooth, ReadOnlySpan<Wrench> wire) =>
        _arch.AtResistance(tooth, _arch.Moved(tooth, Start[tooth], Motion[tooth]), wire[tooth]);

    /// <summary>Largest movement of a crown that this error of the wire's load would mean [mm].</summary>
    public double ErrorOf(ReadOnlySpan<Wrench> wire, double days)
    {
        double largest = 0;
        for (int i = 0; i < _arch.Count; i++)
        {
            Six error = TrueLoad(i, wire) - WireNow(i);
            Six give = Give(i, days);
            var motion = new Six(Times(give.Linear, error.Linear), Times(give.Angular, error.Angular));
            largest = Math.Max(largest, ToothAnswer.Size(_arch.Supports[i], motion));
        }

        return largest;
    }

    /// <summary>Finds motion and load at the end of the step.</summary>
    /// <param name="days">Length of the step; 0 for the ligament's elastic answer alone.</param>
    /// <param name="before">Whole load on each tooth at the start.</param>
    /// <param name="given">Load that the ligament has given way to at the start: where the last step was taken before
    /// the wire's true load was in it, the rest comes now.</param>
    /// <param name="softBefore">Share of the ligament's compliance at the start: 0 rigid, 1 as it is.</param>
    /// <param name="softAfter">At the end. A wire just fitted is relieved by letting it grow.</param>
    /// <returns>False when no common answer was found.</returns>
    public bool TrySolve(
        double days, ReadOnlySpan<Six> before, ReadOnlySpan<Six> given, double softBefore = 1, double softAfter = 1)
    {
        before.CopyTo(LoadBefore);
        _soft = softAfter;
        for (int i = 0; i < _arch.Count; i++)
            _given[i] = ToothAnswer.Give(_arch.Supports[i], given[i]) * softBefore;

        UpdateLoads();
        double last = double.PositiveInfinity;
        double share = 1;
        int careful = CarefulAtFirst;
        for (Iterations = 1; Iterations <= MostIterations; Iterations++)
        {
            bool sharp = careful == 0;
            Assemble(days, sharp);
            IsPushedOn = !_system.TryFactor();
            if (IsPushedOn)
                return false;

            _system.Solve(_unknown);
            double change = Advance(share);
            if (!double.IsFinite(change))
                return false;

            UpdateLoads();
            if (change < Tolerance)
            {
                Load.CopyTo(Answered, 0);
                return true;
            }

            careful = sharp && change > 0.5 * last ? CarefulAgain : Math.Max(0, careful - 1);
            // Crowns that touch and part by turns: go more slowly.
            share = Iterations > Patience && change > 0.7 * last ? Math.Max(share / 2, LeastShare) : share;
            last = change;
        }

        return false;
    }

    // Adds the correction to the motion; tells the largest movement of a crown in it.
    private double Advance(double share)
    {
        double change = 0;
        for (int i = 0; i < _arch.Count; i++)
        {
            ReadOnlySpan<double> d = _unknown.AsSpan(6 * i, 6);
            var step = new Six(new Vector3(d[0], d[1], d[2]), new Vector3(d[3], d[4], d[5]));
            if (!step.IsFinite)
                return double.NaN;

            Motion[i] += step * share;
            change = Math.Max(change, ToothAnswer.Size(_arch.Supports[i], step));
        }

        return change;
    }

    /// <summary>Slots at the end of the step.</summary>
    public void Places(Span<SlotFrame> places)
    {
        for (int i = 0; i < _arch.Count; i++)
            places[i] = _arch.Moved(i, Start[i], Motion[i]);
    }

    private void UpdateLoads()
    {
        Places(_places);
        Array.Clear(_crowns);
        for (int i = 0; i < _arch.Contacts.Length; i++)
        {
            if (_arch.Contacts[i] is { } contact && contact.TryPush(_places[i], _places[i + 1], out CrownPush push))
            {
                _crowns[i] -= CrownRow(i, push) * push.Force;
                _crowns[i + 1] += CrownRow(i + 1, push) * push.Force;
            }
        }

        for (int i = 0; i < _arch.Count; i++)
            Load[i] = WireNow(i) + _crowns[i] + _arch.Besides(i, _places[i]);
    }

    private Six WireNow(int tooth)
    {
        Span<double> sum = stackalloc double[6];
        for (int j = 0; j < _arch.Count; j++)
        {
            Six moved = Motion[j] - _wireAt[j];
            for (int a = 0; a < 6; a++)
            {
                ReadOnlySpan<double> row = _stiffness.AsSpan((6 * tooth + a) * _size + 6 * j, 6);
                for (int b = 0; b < 6; b++)
                    sum[a] -= row[b] * moved[b];
            }
        }

        return _wireFrom[tooth]
            + new Six(new Vector3(sum[0], sum[1], sum[2]), new Vector3(sum[3], sum[4], sum[5]));
    }

    // Unit push on a crown at the centre of resistance.
    private Six CrownRow(int tooth, in CrownPush push)
    {
        Vector3 arm = push.At - _arch.Supports[tooth].ResistanceOf(_places[tooth]);
        return new Six(
            MovingArch.InAxes(_places[tooth], push.Normal),
            MovingArch.InAxes(_places[tooth], Vector3.Cross(arm, push.Normal)));
    }

    private Six Give(int tooth, double days)
    {
        ToothSupport support = _arch.Supports[tooth];
        double moved = days * ToothAnswer.Mobility(support, Load[tooth], Rates[tooth]);
        double given = _soft * ToothAnswer.ShareGiven(support, Load[tooth]);
        Vector3 squares = support.TurningSquares;
        return new Six(
            given * support.ShiftCompliance + new Vector3(moved, moved, moved),
            given * support.TurnCompliance + new Vector3(moved / squares.X, moved / squares.Y, moved / squares.Z));
    }

    private void Assemble(double days, bool sharp)
    {
        Span<double> matrix = _system.Matrix;
        _stiffness.CopyTo(matrix);
        for (int i = 0; i < _arch.Count; i++)
        {
            Six give = Give(i, days);
            for (int a = 0; a < 6; a++)
            {
                int row = 6 * i + a;
                matrix[row * _size + row] += 1 / give[a];
                _unknown[row] = Load[i][a] - (Motion[i][a] + _given[i][a]) / give[a];
            }

            if (sharp)
                Sharpen(matrix, i, days, give);
        }

        AddCrowns(matrix);
        AddLipsAndCheeks(matrix);
    }

    // Along the load the speed grows less than the secant mobility says: J = B − κ b bᵀ with b = D W and κ such that
    // Wᵀ J W is the true derivative. J⁻¹ = Z + h (Z b)(Z b)ᵀ, h = κ/(1 − κ bᵀ Z b), takes the place of Z.
    private void Sharpen(Span<double> matrix, int tooth, double days, Six give)
    {
        ToothSupport support = _arch.Supports[tooth];
        Six load = Load[tooth];
        Six b = ToothAnswer.Direction(support, load);
        double power = 0;
        double held = 0;
        for (int a = 0; a < 6; a++)
        {
            power += load[a] * b[a];
            held += b[a] * b[a] / give[a];
        }

        if (!(power > 1e-15))
            return;

        double stress = ToothAnswer.Stress(support, load);
        double kappa = days * ToothAnswer.Mobility(support, load, Rates[tooth])
            * (1 - MovementLaw.Sensitivity(stress)) / power;
        double weight = kappa / (1 - kappa * held);
        double along = 0;
        for (int a = 0; a < 6; a++)
            along += b[a] * _unknown[6 * tooth + a];

        for (int a = 0; a < 6; a++)
        {
            int row = 6 * tooth + a;
            double zb = b[a] / give[a];
            _unknown[row] += weight * along * zb;
            for (int c = 0; c <= a; c++)
                matrix[row * _size + 6 * tooth + c] += weight * zb * b[c] / give[c];
        }
    }

    private void AddCrowns(Span<double> matrix)
    {
        Span<double> row = stackalloc double[12];
        for (int i = 0; i < _arch.Contacts.Length; i++)
        {
            if (_arch.Contacts[i] is not { } contact
                || !contact.TryPush(_places[i], _places[i + 1], out CrownPush push))
            {
                continue;
            }

            Six first = CrownRow(i, push);
            Six second = CrownRow(i + 1, push);
            for (int a = 0; a < 6; a++)
            {
                row[a] = -first[a];
                row[a + 6] = second[a];
            }

            for (int a = 0; a < 12; a++)
            {
                for (int b = 0; b <= a; b++)
                    matrix[(6 * i + a) * _size + 6 * i + b] += push.Stiffness * row[a] * row[b];
            }
        }
    }

    private void AddLipsAndCheeks(Span<double> matrix)
    {
        for (int i = 0; i < _arch.Count; i++)
        {
            double stiffness = _arch.LipsAndCheeks.Stiffness(i, _places[i]);
            if (stiffness == 0)
                continue;

            Six row = _arch.LipsAndCheeks.Row(i, _places[i]);
            for (int a = 0; a < 6; a++)
            {
                for (int b = 0; b <= a; b++)
                    matrix[(6 * i + a) * _size + 6 * i + b] += stiffness * row[a] * row[b];
            }
        }
    }

    private static double Dot(Six a, Six b) => Vector3.Dot(a.Linear, b.Linear) + Vector3.Dot(a.Angular, b.Angular);

    private static Vector3 Times(Vector3 a, Vector3 b) => new(a.X * b.X, a.Y * b.Y, a.Z * b.Z);
}
