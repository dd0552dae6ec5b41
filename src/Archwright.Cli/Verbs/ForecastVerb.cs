using System.Collections.Immutable;
using System.CommandLine;
using Archwright.Cli.Pictures;
using Archwright.Cli.Running;
using Archwright.Cli.Solving;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Treatment.Calibration;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright forecast</c>: where the teeth will be, week by week.</summary>
internal sealed class ForecastVerb
{
    private const int UsualSeed = 1;

    private readonly Argument<string> _case = Words.Needed("CASE", "case file, as archwright arch makes them");
    private readonly UsualOption<int> _weeks = NumberOption.Whole(
        "--weeks", "How far to look ahead.", 1, ForecastRequest.MostWeeks, 0);

    private readonly Option<string?> _wire = new("--wire")
    {
        Description = "Another wire of the catalogue in place of the one of the case.", HelpName = "ID",
    };

    private readonly UsualOption<int> _draws = NumberOption.Whole(
        "--draws", "Forecasts by chance, for ranges; 200 are plenty. Usual: 0, one forecast at the median rate.", 0,
        DrawSettings.MostDraws, 0);

    private readonly UsualOption<int> _seed = NumberOption.Whole(
        "--seed", $"The same number gives the same draws. Usual: {UsualSeed}.", 0, int.MaxValue, UsualSeed);

    private readonly Option<string?> _observed = new("--observed")
    {
        Description = "Where teeth were found since the wire was fitted: CSV with the columns week, tooth, labial_mm "
            + "and so on. The patient's rate is learnt from it.",
        HelpName = "FILE.csv",
    };

    private readonly Option<bool> _wholeLaw = new("--whole-law")
    {
        Description = "Follow the alloy with its plateau, its unloading and its history; takes several times as long. "
            + "Where that finds no answer, the first modulus is taken, and it is said.",
    };

    private readonly Option<string?> _friction = FrictionOption.Create();

    private readonly Option<string?> _softTissue = SoftTissueOption.Create();

    private readonly Option<string[]> _load = new("--load")
    {
        Description = "A load on a tooth that does not come from the wire, as of a lip, a cheek or a chain: at its "
            + "slot, in N and N·mm; it goes along with the tooth. May be given again.",
        HelpName = "TOOTH:labial=N,…",
    };

    private readonly Option<string?> _plot = CommonOptions.Plot(
        "Draw irregularity and force per tooth over the weeks into this file.");

    private readonly Option<string?> _animate = new("--animate")
    {
        Description = "Draw the arch over the weeks as a moving picture.", HelpName = "FILE.gif",
    };

    private readonly UsualOption<ForceUnit> _unit = CommonOptions.Unit();
    private readonly UsualOption<ToothNotation> _teeth = CommonOptions.Teeth();
    private readonly Option<bool> _json = CommonOptions.Json();

    private ForecastVerb() => _animate.Validators.Add(result =>
    {
        if (result.Tokens is [{ Value: var file }] && !ForecastFilm.CanWrite(file))
            result.AddError($"--animate writes .gif files, not '{file}'.");
    });

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new ForecastVerb();
        var verb = new Verb("forecast", "Where the teeth will be with this wire, week by week.")
        {
            Examples =
            [
                ("archwright forecast case.json --weeks 8", "a table by week, at the median rate of movement"),
                ("archwright forecast case.json --weeks 8 --draws 200 --seed 7 --plot weeks.svg",
                    "with ranges and a picture"),
                ("archwright forecast case.json --weeks 12 --wire niti-016 --animate arch.gif",
                    "another wire, as a moving picture"),
                ("archwright forecast case.json --weeks 8 --observed visits.csv",
                    "with the rate that this patient has shown"),
            ],
        };
        verb.Add(options._case);
        foreach (Option option in new Option[]
        {
            options._weeks, options._wire, options._draws, options._seed, options._observed,
            options._wholeLaw, options._friction, options._softTissue, options._load, options._plot, options._animate,
            options._unit, options._teeth, options._json,
        })
        {
            verb.Add(option);
        }

        verb.SetAction((parsed, cancellation) => Task.Run(() => options.Run(terminal, parsed, cancellation)));
        return verb;
    }

    private int Run(Terminal terminal, ParseResult parsed, CancellationToken cancellation)
    {
        if (parsed.GetResult(_weeks) is null)
            throw new Refusal("forecast needs --weeks.", "As in: archwright forecast case.json --weeks 8");

        CaseFile file = FrictionOption.On(
            Replaced(Cases.Load(parsed.GetRequiredValue(_case)), parsed.GetValue(_wire)), parsed.GetValue(_friction));
        file = SoftTissueOption.On(file, parsed.GetValue(_softTissue));
        ForecastAnswer Answered(CaseFile with) => Answer(terminal, parsed, with, cancellation);
        try
        {
            ForecastAnswer answer = parsed.GetValue(_wholeLaw)
                ? WithWholeLaw(file, Answered) : Answered(file);
            if (answer.Law == LawTaken.FirstForWantOfWhole)
                terminal.Error.WriteLine(Cautions.NoWholeLaw);
            return Tell(terminal, parsed, answer);
        }
        catch (ArgumentException fault)
        {
            throw new Refusal(
                "the forecast cannot be set up: " + Plainly.Message(fault),
                "Check the slots and the teeth of the case.");
        }
    }

    /// <summary>An answer with the whole law of the alloy, or with its first modulus where that does not reach the
    /// end.</summary>
    internal static ForecastAnswer WithWholeLaw(CaseFile file, Func<CaseFile, ForecastAnswer> answered)
    {
        ForecastAnswer whole = answered(WholeLaw.Of(file, [file.Arrangement.Temperature]));
        return whole.Forecast.IsWhole
            ? whole with { Law = LawTaken.Whole }
            : answered(file) with { Law = LawTaken.FirstForWantOfWhole };
    }

    private ForecastAnswer Answer(
        Terminal terminal, ParseResult parsed, CaseFile file, CancellationToken cancellation)
    {
        ForecastRequest request = Request(file, _weeks.Of(parsed)) with
        {
            AppliedLoads = LoadNote.Read(file, parsed.GetValue(_load) ?? []),
        };
        bool isLearnt = false;
        if (parsed.GetValue(_observed) is { } observed)
        {
            request = Learnt(request, Cases.Value(ObservedReader.Read(observed), observed), cancellation);
            isLearnt = true;
        }

        return Answer(
            terminal, file, request, _draws.Of(parsed), _seed.Of(parsed), cancellation) with { IsLearnt = isLearnt };
    }

    private int Tell(Terminal terminal, ParseResult parsed, ForecastAnswer answer)
    {
        if (parsed.GetValue(_plot) is { } picture)
        {
            OutputFiles.Write("--plot", picture,
                path => ForecastPicture.Write(path, answer, _unit.Of(parsed), _teeth.Of(parsed)));
        }

        if (parsed.GetValue(_animate) is { } film)
            OutputFiles.Write("--animate", film, path => ForecastFilm.Write(path, answer, _teeth.Of(parsed)));

        if (parsed.GetValue(_json))
            ForecastJson.Write(terminal.OutputStream, answer);
        else
            ForecastReport.Write(terminal, answer, _unit.Of(parsed), _teeth.Of(parsed));

        return answer.Forecast.IsWhole ? ExitCode.Done : ExitCode.NotPossible;
    }

    private static ForecastAnswer Answer(
        Terminal terminal, CaseFile file, ForecastRequest request, int draws, int seed, CancellationToken cancellation)
    {
        if (draws == 0)
            return new ForecastAnswer(file, request, Forecaster.Run(request, cancellation), Drawn: null);

        using var progress = new ProgressLine(terminal, "Forecasting", draws);
        DrawnForecast drawn = Forecaster.RunDraws(
            request, new DrawSettings { Draws = draws, Seed = seed }, progress, cancellation);
        return new ForecastAnswer(file, request, drawn.Median, drawn);
    }

    private static ForecastRequest Learnt(
        ForecastRequest request, IReadOnlyList<ObservedPlace> places, CancellationToken cancellation) =>
        request with
        {
            Rate = RateCalibration.Update(
                request,
                [
                    .. places.GroupBy(place => place.Week).OrderBy(week => week.Key).Select(week => new ObservedArch(
                        week.Key, week.ToImmutableDictionary(place => place.Tooth, Seen))),
                ],
                cancellation: cancellation),
        };

    private static ObservedTooth Seen(ObservedPlace place) => new(
        place.Parts[0], place.Parts[1], place.Parts[2], place.Parts[3], place.Parts[4], place.Parts[5]);

    /// <summary>The case with another wire of the catalogue.</summary>
    /// <exception cref="Refusal">A bench set-up, or no such wire.</exception>
    internal static CaseFile Replaced(CaseFile file, string? wireId)
    {
        if (file.Jaw == CaseFile.Bench || file.Teeth.Any(tooth => tooth is null))
        {
            throw new Refusal("the case is a bench set-up: it has no teeth that could move.",
                "Name a case with teeth, as archwright arch makes them.");
        }

        if (wireId is null)
            return file;

        CatalogueWire wire = WireNames.Find(WireCatalogue.Default, wireId);
        return file with { WireId = wire.Id, Arrangement = file.Arrangement with { Wire = wire.Wire } };
    }

    /// <summary>What a case says of a forecast.</summary>
    internal static ForecastRequest Request(CaseFile file, int weeks) => new()
    {
        Arrangement = file.Arrangement,
        Teeth = [.. file.Teeth.Select(tooth => tooth!.Value)],
        SoftTissue = new SoftTissue(file.SoftTissue),
        Weeks = weeks,
        Rate = PatientRate.ForAge(VisitFigures.Age(file)),
        WeeksInPlace = VisitFigures.WeeksInPlace(file),
    };
}
