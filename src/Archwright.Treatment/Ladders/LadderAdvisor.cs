using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Rules;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Ladders;

/// <summary>Finds sequences of wires from today to the working wire: fewest visits, gentlest, fastest.</summary>
/// <remarks>It recommends; the clinician decides at every visit anew. See <see cref="LadderSearch"/> for what is looked
/// at and what is left out.</remarks>
public static class LadderAdvisor
{
    private static readonly double[] Factors = [1.25, 1.5, 2, 3, 4, 6, 8, 12, 16];

    /// <summary>The ladders.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="options">By which policy, and how much is looked at.</param>
    /// <param name="progress">Told of wires followed; from any thread.</param>
    /// <param name="cancellation">Gives up between and inside forecasts and engagements.</param>
    /// <exception cref="ArgumentException">Question or options do not hold together; the message says how.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static LadderAdvice Find(
        LadderQuestion question,
        LadderOptions? options = null,
        IProgress<LadderProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        options ??= new LadderOptions();
        question.Today.Check();
        options.Check();
        return new Computation(question, options, progress, cancellation).Run();
    }

    private sealed class Computation
    {
        private readonly LadderQuestion _question;
        private readonly LadderOptions _options;
        private readonly VisitPolicy _policy;
        private readonly LadderRun _run;
        private readonly LadderArch _today;
        private readonly LadderSpace _space;
        private readonly LadderPatients _patients;
        private readonly CatalogueWire _working;
        private readonly bool _isAssumed;

        public Computation(
            LadderQuestion question, LadderOptions options, IProgress<LadderProgress>? progress,
            CancellationToken cancellation)
        {
            _question = question;
            _options = options;
            _policy = options.Policy;
            (_working, _isAssumed) = question.Working;
            VisitQuestion today = question.Today with
            {
                WorkingWire = _working,
                Choice = question.Today.Choice.Contains(_working) ? question.Today.Choice
                    : question.Today.Choice.Add(_working),
            };
            _run = new LadderRun
            {
                Policy = _policy, UsualRate = today.Rate.Median, WeeksInPlace = today.Present?.Weeks ?? 0,
                Cancellation = cancellation, Progress = progress,
            };
            var rules = new LadderRules(today, _policy, options.Style);
            _today = new LadderArch(_run, today.Arch, isToday: true);
            LadderFit? inPlace = today.Present is { } present ? InPlace(present, rules) : null;
            _space = new LadderSpace
            {
                Today = _today,
                Present = inPlace,
                PresentStays = question.PresentStays && inPlace is { Figures.Engaged: true },
                Wires = LadderChoice.Of(Suiting(today, _policy), _working, today.Arch.Friction),
                Working = _working,
                Rules = rules,
                Rate = _run.UsualRate,
                MostVisits = _policy.LadderVisits,
                Threads = options.Threads,
                Cancellation = cancellation,
                Loosen = Loosened,
            };
            _patients = new LadderPatients(today.Rate, options.Draws, options.Seed);
        }

        public LadderAdvice Run()
        {
            bool isThere = _space.Staying is { } present && WireSize.Compare(present.Wire, _working) <= 0;
            LadderFinding fewest = isThere ? new LadderFinding(null, true, null)
                : Search(_space, new LadderAim(false, _policy.LadderVisits), Share);
            ImmutableArray<LadderAnswer> answers = fewest.Path is null ? [] : Answers(fewest);
            (LadderAnswer? nearest, double? factor) = fewest.Path is null && !isThere ? Nearest() : (null, null);
            LadderAnswer? asked = Asked();
            LadderAnswer[] besides = [.. answers.Concat(nearest is null ? [] : [nearest])];
            (string? because, ImmutableArray<string> considered) = isThere
                ? ($"{_space.Present!.Wire.Id} is in place: no lighter than the working wire.", []) // it is
                : answers.IsEmpty ? WhyNone(fewest) : (null, []);
            return new LadderAdvice
            {
                Question = _question,
                Working = _working,
                WorkingIsAssumed = _isAssumed,
                IsAtWorkingWire = isThere,
                AgainstPresent = _space.Present?.Against ?? [],
                Answers = LadderTies.Marked(answers, _policy),
                Asked = asked is null ? null : asked with
                {
                    SameAs = [.. besides.Where(asked.IsSameSequence).Select(one => one.Kind)],
                    TiesWith =
                    [
                        .. besides.Where(one => LadderTies.IsTie(asked, one, _policy)).Select(one => one.Kind),
                    ],
                },
                Differences = asked is null ? []
                    : [.. besides.Select(one => LadderTies.Difference(asked, one, _policy))],
                Nearest = nearest,
                CeilingFactor = factor,
                Because = because,
                Considerations = considered,
                Cautions = [.. LadderCautions.Of(_question.Today, _policy, _working, _isAssumed)],
                Missing = [.. MissingFacts.Of(_question.Today with { WorkingWire = _working })],
                WiresLookedAt = _space.Wires.Length,
                Forecasts = _run.Forecasts,
                Draws = _options.Draws,
                Seed = _options.Seed,
                PolicyVersion = _policy.Version,
            };
        }

        // What each of the three searches may spend.
        private int Share => _policy.LadderForecasts / 3;

        private ImmutableArray<LadderAnswer> Answers(LadderFinding fewest)
        {
            LadderPath path = fewest.Path!; // the caller has looked
            LadderFinding fastest = Search(_space, new LadderAim(true, _policy.LadderVisits), Share);
            LadderFinding gentlest = Gentlest(path);
            LadderPath soonest = fastest.Path ?? path;
            if (path.Weeks <= soonest.Weeks)
                soonest = path;
            return
            [
                Answer(LadderKind.FewestVisits, path, fewest.IsProven),
                Answer(LadderKind.Gentlest, gentlest.Path!, gentlest.IsProven),
                Answer(LadderKind.Fastest, soonest, fastest.IsProven),
            ];
        }

        // Each time: is there one that is gentler by more than forces are known?
        private LadderFinding Gentlest(LadderPath start)
        {
            int limit = Math.Min(_policy.LadderVisits, start.Visits + _policy.LadderExtraVisits);
            int end = _run.Forecasts + Share;
            LadderPath best = start;
            while (true)
            {
                double below = best.ComfortIndex * (1 - _policy.ForceAccuracy);
                LadderFinding found = Search(
                    _space, new LadderAim(false, limit, below), Math.Max(1, end - _run.Forecasts));
                if (found.Path is not { } gentler)
                    return new LadderFinding(best, found.IsProven, null);

                best = gentler;
            }
        }

        private (LadderAnswer? Answer, double? Factor) Nearest()
        {
            int end = _run.Forecasts + _policy.LadderForecasts;
            foreach (double factor in Factors)
            {
                LadderSpace space = _space.Under(
                    new LadderRules(_space.Rules.Today, _policy, _options.Style, factor));
                LadderFinding found = Search(
                    space, new LadderAim(false, _policy.LadderVisits), Math.Max(1, end - _run.Forecasts));
                if (found.Path is { } path)
                {
                    LadderAnswer answer = Telling(space).Of(LadderKind.Nearest, path.Fits[0], Others(path));
                    return (answer with { IsProven = found.IsProven }, factor);
                }
            }

            return (null, null);
        }

        private LadderAnswer? Asked()
        {
            if (_question.Asked.IsEmpty)
                return null;

            CatalogueWire wire = _question.Asked[0];
            LadderFit first;
            if (_space.Present is { } present && present.Wire.Id == wire.Id)
            {
                first = present;
            }
            else
            {
                first = _today.Fit(wire, _space.Present, _space.Rules);
                first = first.IsRuledOut && Loosened([first], _space.Rules) is [{ } loosened, ..] ? loosened : first;
            }

            return Telling(_space).Of(LadderKind.Asked, first, [.. _question.Asked.Skip(1)], insists: true);
        }

        private LadderAnswer Answer(LadderKind kind, LadderPath path, bool isProven) =>
            Telling(_space).Of(kind, path.Fits[0], Others(path), gentlerThan: path.GentlerThan) with
            {
                IsProven = isProven,
            };

        private LadderTelling Telling(LadderSpace space) =>
            new(space, _space.Rules, _patients, _question.Today.Arch.Teeth, _question.Prices);

        private LadderFinding Search(LadderSpace space, LadderAim aim, int forecasts)
        {
            int end = _run.Forecasts + Math.Max(1, forecasts);
            return new LadderSearch(space, aim, () => _run.Forecasts >= end).Run();
        }

        private LadderFit InPlace(PresentWire present, LadderRules rules)
        {
            WireFigures figures = _today.Figures(present.Wire) with { IsPresent = true };
            return _today.Judge(figures, new LadderFit { Figures = figures }, rules);
        }

        // As at a visit: the gentlest few with the teeth let go that are farthest off.
        private IReadOnlyList<LadderFit> Loosened(IReadOnlyList<LadderFit> tried, LadderRules rules)
        {
            if (rules.Policy.PartialTeeth == 0)
                return [];

            LadderFit? present = _space.Present;
            VisitView view = rules.View(_today.Arch, present, isToday: true);
            LadderFit[] gentlest =
            [
                .. tried.Where(fit => VisitJudge.MayBeTied(fit.Figures, view))
                    .OrderBy(fit => WithinCeilings.Nearest(fit.Figures, view)?.Ratio ?? 0).Take(MostLoosened),
            ];
            var found = new WireFigures?[gentlest.Length];
            LadderThreads.Each(_space, found.Length, i =>
                found[i] = PartialTies.Find(gentlest[i].Wire, gentlest[i].Figures, view, _run.Cancellation));
            return
            [
                .. found.OfType<WireFigures>().Select(figures => _today.Judge(figures, present, rules))
                    .Where(fit => fit.Allowed),
            ];
        }

        private (string Because, ImmutableArray<string> Considered) WhyNone(LadderFinding none)
        {
            if (none.Farthest is not { } far)
            {
                LadderFit lightest = _today.Fit(_space.Wires[0].Wire, _space.Present, _space.Rules);
                return (
                    "No wire may go in today." + (lightest.Against.IsEmpty ? ""
                        : $" Not even {lightest.Wire.Id}: {lightest.Against[0].Sentence}"),
                    Considered(lightest, _today, _space.Present));
            }

            LadderFit last = far.Fits[^1];
            string reached = $"Within the rules the ladder ends with {last.Wire.Id}.";
            if (_space.Above(last).FirstOrDefault() is not { } next)
                return (reached, []);

            FollowedSequence followed = LadderFollower.Follow(
                _space, far.Fits[0], [.. Others(far), next.Wire], _space.Rate, insists: false);
            return (
                followed.Stop is { } stop ? $"{reached} {stop}" : reached,
                followed.Refused is { } refused ? Considered(refused.Fit, refused.Arch, last) : []);
        }

        private ImmutableArray<string> Considered(LadderFit refused, ILadderArch arch, LadderFit? present) =>
            arch is LadderArch there && Considerations.Of(
                refused.Figures, _space.Rules.View(there.Arch, present, there.IsToday), present?.Wire).ToArray()
                is { Length: > 0 } some
                ? [.. some, "Ceilings are the practice's to set; the nearest ladder shows what it would take."]
                : [];

        private static IReadOnlyList<CatalogueWire> Others(LadderPath path) =>
            [.. path.Fits.Skip(1).Select(fit => fit.Wire)];
    }

    private const int MostLoosened = 4;

    // What a fact of the patient bars for good is not looked at.
    private static IEnumerable<CatalogueWire> Suiting(VisitQuestion today, VisitPolicy policy)
    {
        bool noNickel = policy.Alerts.Any(alert => alert.Act == AlertAct.NoNickel && today.Has(alert.Alert));
        return today.Choice.Where(wire => !noNickel || wire.Alloy.Nickel.Value <= policy.MostNickel);
    }
}
