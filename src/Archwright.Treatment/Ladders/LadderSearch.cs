using System.Collections.Immutable;
using Archwright.Treatment.Decisions;

// What was spent so far and the least that is to come; then which came first.
using Hope = (double First, double Second, double Third, int Order);

namespace Archwright.Treatment.Ladders;

/// <summary>A sequence that was found: the wires in order, each as it goes in.</summary>
/// <param name="Fits">The wires; the first may be in place already, the last is the working wire.</param>
/// <param name="Visits">Visits after today until the working wire is in.</param>
/// <param name="Weeks">Weeks until then.</param>
/// <param name="ComfortIndex">The worst of its engagements.</param>
internal sealed record LadderPath(ImmutableArray<LadderFit> Fits, int Visits, int Weeks, double ComfortIndex)
{
    /// <summary>The comfort index below which a wire was waited for; infinite where none was.</summary>
    public double GentlerThan { get; init; } = double.PositiveInfinity;

    public string Key => string.Join(",", Fits.Select(fit => fit.Wire.Id + (fit.HasLooseTies ? "~" : "")));
}

/// <summary>What a search came to.</summary>
/// <param name="Path">The best sequence; null when none was found.</param>
/// <param name="IsProven">Whether every other one was ruled out, rather than left for want of time.</param>
/// <param name="Farthest">Where none was found: the stiffest wire that was reached, and how.</param>
internal sealed record LadderFinding(LadderPath? Path, bool IsProven, LadderPath? Farthest);

/// <summary>What a search seeks.</summary>
/// <param name="ByWeeks">Fewest weeks; otherwise fewest visits.</param>
/// <param name="MostVisits">No sequence with more is looked at.</param>
/// <param name="GentlerThan">No wire whose comfort index is as high goes in: the wire in place stays on purpose, visit
/// by visit, until it is lower.</param>
internal sealed record LadderAim(bool ByWeeks, int MostVisits, double GentlerThan = double.PositiveInfinity);

/// <summary>Finds the sequence with the fewest visits, or weeks.</summary>
/// <remarks>
/// A wire goes in at the first visit at which no rule speaks against it and it is as gentle as is sought, so a sequence
/// of wires is a ladder. Waiting longer could only help where the wire in place straightens the arch faster than the
/// next one would, which is stiffer; what that misses is measured in tests and told in decision 22. The search
/// goes from the best hope to worse ones: hope is what was spent so far and the lower bound of
/// <see cref="LadderBounds"/>. No bound depends on what teeth do, so the first working wire that comes up is the best,
/// save for three things that are left out. Wires: see <see cref="LadderChoice"/>. Sections: see
/// <see cref="LadderSpace.MayGoIn"/>. States: where the same wire went in no later on another arch of which no crown
/// was farther off (by more than <see cref="LadderSpace.Alike"/>), it is not worn a second time; what is set aside so
/// is taken up again before a search ends with nothing. That a straighter arch lets no less go in is plain where
/// loads grow with offsets, as those of elastic wires do; crowns that touch can break it, and tests hold the search
/// against every sequence.
/// </remarks>
/// <param name="space">Arch, wires, rules.</param>
/// <param name="aim">What is sought.</param>
/// <param name="isOver">Asked between looks: whether to stop with the best so far.</param>
internal sealed class LadderSearch(LadderSpace space, LadderAim aim, Func<bool> isOver)
{
    private const int AtOnce = 4;

    private readonly LadderBounds _bounds = new(space.Wires, space.Working, space.Rules);
    private readonly PriorityQueue<Rung, Hope> _open = new();
    private readonly List<Rung> _worn = [];
    private readonly Queue<Rung> _aside = new();
    private int _order;
    private LadderPath? _farthest;

    public LadderFinding Run()
    {
        Begin();
        while (_open.Count > 0 || TakeUp())
        {
            if (_open.Peek().IsThere(space))
                return new LadderFinding(Told(_open.Dequeue()), IsProven: true, _farthest);
            if (isOver())
                return new LadderFinding(BestOpen(), IsProven: false, _farthest);

            Rung[] batch = [.. Batch()];
            Visited[] visits = Each(batch, rung => rung.Visit(space));
            foreach (Visited visit in visits)
                Go(visit);
        }

        return new LadderFinding(null, IsProven: true, _farthest);
    }

    // Nothing was found: what was set aside is looked at after all.
    private bool TakeUp()
    {
        while (_aside.TryDequeue(out Rung? rung))
            Push(rung with { IsTakenUp = true });
        return _open.Count > 0;
    }

    private void Begin()
    {
        if (space.Staying is { } present)
            Push(new Rung(null, present, space.Today, 0, 0, 0, 1, [.. space.Above(present)]));
        foreach (LadderFit fit in space.First.Where(fit => fit.ComfortIndex < aim.GentlerThan))
            Push(new Rung(null, fit, space.Today, 0, 0, fit.ComfortIndex, 1, [.. space.Above(fit)]));
    }

    private void Go(Visited visit)
    {
        Rung rung = visit.Rung;
        List<LadderFit> goIn = visit.MayGoIn.FindAll(fit => fit.ComfortIndex < aim.GentlerThan);
        foreach (LadderFit fit in goIn)
        {
            Push(new Rung(
                rung, fit, visit.Arch, rung.Visits + rung.Look, visit.Weeks, Math.Max(rung.Worst, fit.ComfortIndex), 1,
                [.. space.Above(fit)]));
        }

        // What may go in and is not gentle enough is waited for.
        LadderWire[] still = [.. rung.Still.Where(one => !goIn.Exists(fit => Same(one, fit)))];
        if (!visit.IsLast && still.Length > 0)
            Push(rung with { Look = rung.Look + 1, Still = [.. still] });
    }

    private static bool Same(LadderWire one, LadderFit fit) =>
        one.Wire.Id == fit.Wire.Id || one.Twins.Any(twin => twin.Id == fit.Wire.Id);

    private void Push(Rung rung)
    {
        if (_farthest is not { } far
            || WireSize.Stiffness(rung.Fit.Wire) > WireSize.Stiffness(far.Fits[^1].Wire))
        {
            _farthest = rung.Path();
        }

        int changes = _bounds.Changes(rung.Fit.Wire);
        if (changes >= LadderBounds.Never)
            return;

        bool there = rung.IsThere(space);
        int visits = there ? rung.Visits : rung.Visits + rung.Look + changes - 1;
        if (visits > aim.MostVisits)
            return;

        int least = rung.Course is { } course ? course.Interval
            : space.Rules.Policy.Interval(Intervals.KindOf(rung.Fit.Wire)).Low;
        int weeks = there ? rung.Weeks : rung.Weeks + rung.Look * least + _bounds.Weeks(rung.Fit.Wire);
        double stiffness = WireSize.Stiffness(rung.Fit.Wire);
        _open.Enqueue(
            rung,
            aim.ByWeeks ? (weeks, visits, -stiffness, _order++)
                : (visits, weeks, -stiffness, _order++));
    }

    // Equals in what counts most are looked at side by side; how many does not depend on the number of threads.
    private List<Rung> Batch()
    {
        List<Rung> batch = [];
        _open.TryPeek(out _, out Hope first);
        while (batch.Count < AtOnce && _open.TryPeek(out Rung? next, out Hope hope) && hope.First == first.First
            && !next.IsThere(space))
        {
            if (IsWorn(_open.Dequeue()))
                _aside.Enqueue(next);
            else
                batch.Add(next);
        }

        return batch;
    }

    private LadderPath? BestOpen()
    {
        while (_open.TryDequeue(out Rung? rung, out _))
        {
            if (rung.IsThere(space))
                return Told(rung);
        }

        return null;
    }

    private LadderPath Told(Rung rung) => rung.Path() with { GentlerThan = aim.GentlerThan };

    private bool IsWorn(Rung rung)
    {
        if (rung.Look > 1 || rung.IsTakenUp || space.Exhaustive)
            return false;
        if (_worn.Exists(worn => worn.IsNoWorseThan(rung, space.Alike)))
            return true;

        _worn.Add(rung);
        return false;
    }

    private TOut[] Each<TIn, TOut>(TIn[] which, Func<TIn, TOut> find)
    {
        var found = new TOut[which.Length];
        LadderThreads.Each(space, which.Length, i => found[i] = find(which[i]));
        return found;
    }

    // The next look at a rung: the arch then, and what may go in.
    private sealed record Visited(Rung Rung, ILadderArch Arch, int Weeks, bool IsLast, List<LadderFit> MayGoIn);

    // A wire that went in at a visit, to be looked at again at the next, or at a later one.
    private sealed record Rung(
        Rung? Before, LadderFit Fit, ILadderArch Arch, int Visits, int Weeks, double Worst, int Look,
        ImmutableArray<LadderWire> Still)
    {
        public ILadderCourse? Course { get; private set; }

        public bool IsThere(LadderSpace space) => Fit.Wire.Id == space.Working.Id && !Fit.HasLooseTies;

        /// <summary>Whether it is looked at although the same wire was worn on an arch no worse.</summary>
        public bool IsTakenUp { get; init; }

        public Visited Visit(LadderSpace space)
        {
            Course ??= Arch.Wear(Fit);
            ILadderArch arch = Course.At(Look, space.Rate);
            return new Visited(
                this, arch, Weeks + Look * Course.Interval, Course.IsLast(Look, space.Rate),
                space.MayGoIn(arch, Fit, Still));
        }

        public bool IsNoWorseThan(Rung other, double alike) =>
            Fit.Wire.Id == other.Fit.Wire.Id && Visits <= other.Visits && Weeks <= other.Weeks
            && Fit.Figures.TiedAtDistance.SequenceEqual(other.Fit.Figures.TiedAtDistance)
            && Arch.Distances.Zip(other.Arch.Distances).All(pair => pair.First <= pair.Second + alike);

        public LadderPath Path()
        {
            List<LadderFit> fits = [];
            for (Rung? rung = this; rung is not null; rung = rung.Before)
                fits.Add(rung.Fit);
            fits.Reverse();
            return new LadderPath([.. fits], Visits, Weeks, Worst);
        }
    }
}
