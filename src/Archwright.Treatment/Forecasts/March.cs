using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Forecasts;

/// <summary>Goes through time with steps that adapt, and tells a listener of each.</summary>
/// <remarks>
/// A step is solved with the stiffness that the wire has where it lies; then the wire is engaged at the new places.
/// Where its true load differs by more than a share of the tolerance, the step is solved again with load and stiffness
/// from there, and after some such corrections with a stiffness that learns from them; where that does not settle, or
/// the wire is not engaged, the step is halved. The next step is as long as the change of speed allows: the error of an
/// implicit Euler step is about half of it times the step.
/// </remarks>
internal sealed class March
{
    private const double FirstStep = 0.5;
    private const double LongestStep = 7;
    private const double ShortestStep = 1.0 / 128;
    private const int MostCorrections = 20;
    private const int ReadingPasses = 5;
    private const int MostForesights = 6;
    private const int MostSteps = 4000;
    private const double WireShare = 0.5;
    private const double LeastShare = 1.0 / 64;

    private readonly MovingArch _arch;
    private readonly Waiting _waiting;
    private readonly IWireInPlace _wire;
    private readonly double _tolerance;
    private readonly MovementStep _step;
    private readonly SlotFrame[] _places;
    private readonly SlotFrame[] _tried;
    private readonly Six[] _loads;
    private readonly Six[] _given;
    private readonly Wrench[] _wrenches;
    private readonly Wrench[] _foreseen;
    private readonly double[] _motions;
    private readonly double[] _stiffness;
    private EngagementResult _engaged;
    private double _soft;

    public March(
        MovingArch arch, IWireInPlace wire, ReadOnlySpan<SlotFrame> places, double tolerance, Waiting waiting)
    {
        _arch = arch;
        _waiting = waiting;
        _wire = wire;
        _tolerance = tolerance;
        _step = new MovementStep(arch);
        _places = places.ToArray();
        _tried = new SlotFrame[arch.Count];
        _loads = new Six[arch.Count];
        _given = new Six[arch.Count];
        _wrenches = new Wrench[arch.Count];
        _foreseen = new Wrench[arch.Count];
        _motions = new double[6 * arch.Count];
        _stiffness = new double[36 * arch.Count * arch.Count];
        _engaged = null!;
    }

    /// <summary>Time reached [days].</summary>
    public double Day { get; private set; }

    public int Steps { get; private set; }

    public int Engagements { get; private set; }

    /// <summary>Why it could not go on.</summary>
    public Obstacle? Obstacle { get; private set; }

    /// <summary>State of the wire now.</summary>
    public EngagementResult Engaged => _engaged;

    /// <summary>Slots now.</summary>
    public ReadOnlySpan<SlotFrame> Places => _places;

    /// <summary>Whole load on each tooth now.</summary>
    public ReadOnlySpan<Six> Loads => _loads;

    /// <summary>Engages the wire where the teeth stand.</summary>
    public bool TryBegin(CancellationToken cancellation)
    {
        _engaged = _wire.Engage(cancellation);
        Engagements++;
        if (!IsGood(_engaged))
            return Blocked(_engaged);

        _wire.Keep();
        for (int i = 0; i < _arch.Count; i++)
        {
            _loads[i] = _arch.AtResistance(i, _places[i], _engaged.Slots[i].OnTooth)
                + _arch.Besides(i, _places[i]);
            _given[i] = _loads[i];
        }

        return true;
    }

    /// <summary>Goes on to a day.</summary>
    /// <param name="day">[days]</param>
    /// <param name="told">Told each step before it becomes the present: its start and length, and the step with
    /// motion and load.</param>
    /// <param name="cancellation">Gives up between and inside engagements.</param>
    /// <returns>False when the wire could not be followed.</returns>
    public bool TryReach(double day, Action<double, double, MovementStep, EngagementResult> told,
        CancellationToken cancellation)
    {
        if (!TryRelieve(told, cancellation))
            return false;

        _waiting.Pass(0, _loads);
        double length = FirstStep;
        var before = new Six[_arch.Count];
        while (Day < day - 1e-9)
        {
            cancellation.ThrowIfCancellationRequested();
            if (++Steps > MostSteps)
                return Give("The forecast takes too many steps; the teeth move too unevenly to be followed.");

            for (int i = 0; i < _arch.Count; i++)
                _step.Rates[i] = _waiting.Stands(i) ? 0 : _arch.Rates[i];
            double days = Math.Min(Math.Min(length, ToWeekEnd(day)), _waiting.UntilNext);
            _loads.CopyTo(before, 0);
            StepEnd end = TryStep(days, before, soft: 1, cancellation, out EngagementResult tried);
            if (end != StepEnd.Taken)
            {
                _wire.TakeBack();
                if (days <= ShortestStep)
                    return Blocked(tried);

                length = days / 2;
                continue;
            }

            double error = ErrorInTime(days, before);
            if (error > 3 * _tolerance && days > ShortestStep)
            {
                _wire.TakeBack();
                length = Math.Max(ShortestStep, days * Math.Max(0.3, 0.8 * Math.Sqrt(_tolerance / error)));
                continue;
            }

            _wire.Keep();
            told(Day, days, _step, tried);
            Accept(tried);
            Day += days;
            _waiting.Pass(days, _loads);
            if (days >= length - 1e-9)
                length = Math.Min(LongestStep, days * Growth(error));
        }

        return true;
    }

    // A wire was engaged on rigid teeth; now their ligaments give, all at once if it goes, or by shares.
    private bool TryRelieve(
        Action<double, double, MovementStep, EngagementResult> told, CancellationToken cancellation)
    {
        double share = 1;
        var before = new Six[_arch.Count];
        while (_soft < 1)
        {
            cancellation.ThrowIfCancellationRequested();
            Steps++;
            _loads.CopyTo(before, 0);
            double soft = Math.Min(1, _soft + share);
            if (TryStep(days: 0, before, soft, cancellation, out EngagementResult tried) != StepEnd.Taken)
            {
                _wire.TakeBack();
                share /= 2;
                if (share < LeastShare)
                    return Blocked(tried);
                continue;
            }

            _wire.Keep();
            told(0, 0, _step, tried);
            Accept(tried);
            _soft = soft;
        }

        return true;
    }

    private double Growth(double error) =>
        Math.Clamp(0.9 * Math.Sqrt(_tolerance / Math.Max(error, 1e-12)), 0.5, 2);

    private enum StepEnd
    {
        Taken,
        NotSettled,
        NotEngaged,
    }

    private StepEnd TryStep(
        double days, Six[] before, double soft, CancellationToken cancellation, out EngagementResult tried)
    {
        tried = _engaged;
        ReadWire(_engaged);
        _step.Begin(_places, _wrenches);
        ReadStiffness(_places);
        for (int pass = 0; pass <= MostCorrections; pass++)
        {
            ReadOnlySpan<SlotFrame> engagedAt = pass == 0 ? _places : _tried;
            if (!TrySolve(days, before, soft, engagedAt))
                return StepEnd.NotSettled;
            if (pass < ReadingPasses && !TryForesee(days, before, soft, engagedAt))
                return StepEnd.NotSettled;
            if (!TryMove(days, cancellation, out tried))
                return StepEnd.NotEngaged;

            bool isTrue = _step.ErrorOf(_wrenches, days) <= WireShare * _tolerance;
            if (!isTrue && _step.TryShorten(_wrenches) && !TryMove(days, cancellation, out tried))
                return StepEnd.NotEngaged;

            _step.CorrectWire(_wrenches);
            if (isTrue)
                return StepEnd.Taken;

            // Corrections that still go to and fro meet other walls each time: the way between tells more.
            if (pass < ReadingPasses)
                ReadStiffness(_tried);
            else
                _step.LearnFromLastStep();
        }

        return StepEnd.NotSettled;
    }

    private bool TrySolve(double days, Six[] before, double soft, ReadOnlySpan<SlotFrame> engagedAt)
    {
        if (_step.TrySolve(days, before, _given, _soft, soft))
            return true;
        if (!_step.IsPushedOn)
            return false;

        // A wire that is loaded like a column may push on for a while: the stiffer idea of it makes shorter steps.
        _wire.ReadHeldStiffness(_stiffness);
        _step.SetStiffness(engagedAt, _stiffness);
        return _step.TrySolve(days, before, _given, _soft, soft);
    }

    // Solves again with the walls that the wire will touch, until no others are foreseen. Where teeth and wire have no
    // common answer with those, the walls touched now have to do.
    private bool TryForesee(double days, Six[] before, double soft, ReadOnlySpan<SlotFrame> engagedAt)
    {
        for (int pass = 0; pass < MostForesights; pass++)
        {
            _step.ReadMotions(_motions);
            if (!_wire.TryForesee(_motions, _step, _stiffness, _foreseen))
                return true;

            _step.SetStiffness(engagedAt, _stiffness);
            _step.GoFrom(engagedAt, _foreseen);
            if (_step.TrySolve(days, before, _given, _soft, soft))
                continue;

            ReadStiffness(engagedAt);
            _step.GoFrom(engagedAt, _wrenches);
            return TrySolve(days, before, soft, engagedAt);
        }

        return true;
    }

    private bool TryMove(double days, CancellationToken cancellation, out EngagementResult tried)
    {
        _step.Places(_tried);
        _wire.GoTo(Day + days);
        tried = _wire.MoveTo(_tried, cancellation);
        Engagements++;
        if (!IsGood(tried))
            return false;

        ReadWire(tried);
        return true;
    }

    private void ReadStiffness(ReadOnlySpan<SlotFrame> places)
    {
        _wire.ReadStiffness(_stiffness);
        _step.SetStiffness(places, _stiffness);
    }

    private void Accept(EngagementResult tried)
    {
        _step.Places(_places);
        _engaged = tried;
        _step.Load.CopyTo(_loads, 0);
        _step.Answered.CopyTo(_given, 0);
    }

    // Half of the change of speed over the step, times the step: the error of the implicit Euler rule.
    private double ErrorInTime(double days, Six[] before)
    {
        double largest = 0;
        for (int i = 0; i < _arch.Count && days > 0; i++)
        {
            Six change = ToothAnswer.Twist(_arch.Supports[i], _step.Load[i], _step.Rates[i])
                - ToothAnswer.Twist(_arch.Supports[i], before[i], _step.Rates[i]);
            largest = Math.Max(largest, ToothAnswer.Size(_arch.Supports[i], change) * days / 2);
        }

        return largest;
    }

    private void ReadWire(EngagementResult engaged)
    {
        for (int i = 0; i < _arch.Count; i++)
            _wrenches[i] = engaged.Slots[i].OnTooth;
    }

    // A step ends with the week, so that weekly figures are computed, not interpolated.
    private double ToWeekEnd(double day)
    {
        double week = 7 * (Math.Floor(Day / 7 + 1e-9) + 1);
        return Math.Min(day, week) - Day;
    }

    private static bool IsGood(EngagementResult engaged) => engaged is { Converged: true, Obstacle: null };

    private bool Blocked(EngagementResult engaged)
    {
        Obstacle = engaged.Obstacle
            ?? new Obstacle(-1, double.NaN, double.NaN, "No common answer of wire and teeth was found.");
        return false;
    }

    private bool Give(string reason)
    {
        Obstacle = new Obstacle(-1, double.NaN, double.NaN, reason);
        return false;
    }
}
