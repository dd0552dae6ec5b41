using System.CommandLine;
using Archwright.Cli.Ladders;
using Archwright.Cli.Running;
using Archwright.Cli.Units;
using Archwright.Cli.Visits;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Treatment.Ladders;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright ladder</c>: sequences of wires from today to the working wire.</summary>
internal sealed class LadderVerb
{
    private const int UsualSeed = 1;

    private readonly Argument<string> _case = Words.Needed("CASE", "case file with a visit object");

    private readonly Option<string?> _to = new("--to")
    {
        Description = "The wire to end with. Usual: the working wire of the case, or the usual one for its slots.",
        HelpName = "ID",
    };

    private readonly Option<string?> _stock = new("--stock")
    {
        Description = "Use only the wires of this file: ids, one a line, or CSV with a column wire.",
        HelpName = "FILE",
    };

    private readonly Option<string?> _sequence = new("--sequence")
    {
        Description = "A sequence of your own, to be followed and set beside what is found.",
        HelpName = "ID,ID,…",
    };

    private readonly Option<string?> _prices = new("--prices")
    {
        Description = "What wires cost: CSV with the columns id and price.", HelpName = "FILE.csv",
    };

    private readonly Option<string?> _policy = new("--policy")
    {
        Description = "The practice's own policy: ceilings, thresholds, intervals, alerts.", HelpName = "FILE.json",
    };

    private readonly Option<string?> _friction = FrictionOption.CreateForMany();
    private readonly Option<string?> _softTissue = SoftTissueOption.Create();

    private readonly UsualOption<int> _draws = NumberOption.Whole(
        "--draws", "Patients by chance over whom weeks are told. Usual: 0, a slow, a usual and a quick one.", 0,
        LadderOptions.MostDraws, 0);

    private readonly UsualOption<int> _seed = NumberOption.Whole(
        "--seed", $"The same number gives the same patients. Usual: {UsualSeed}.", 0, int.MaxValue, UsualSeed);

    private readonly UsualOption<ForceUnit> _unit = CommonOptions.Unit();
    private readonly UsualOption<ToothNotation> _teeth = CommonOptions.Teeth();
    private readonly Option<bool> _json = CommonOptions.Json();

    private LadderVerb()
    {
    }

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new LadderVerb();
        var verb = new Verb("ladder", "Sequences of wires to the working wire: fewest visits, gentlest, fastest.")
        {
            Examples =
            [
                ("archwright ladder case.json --stock drawer.txt", "from today to the working wire"),
                ("archwright ladder case.json --sequence niti-014,niti-018,ss-019x025", "your own beside them"),
                ("archwright ladder case.json --stock drawer.txt --prices prices.csv --draws 100 --seed 7",
                    "with costs, and weeks over a hundred patients"),
            ],
        };
        verb.Add(options._case);
        foreach (Option option in new Option[]
        {
            options._to, options._stock, options._sequence, options._prices, options._policy,
            options._friction, options._softTissue, options._draws, options._seed, options._unit, options._teeth,
            options._json,
        })
        {
            verb.Add(option);
        }

        verb.SetAction((parsed, cancellation) => Task.Run(() => options.Run(terminal, parsed, cancellation)));
        return verb;
    }

    private int Run(Terminal terminal, ParseResult parsed, CancellationToken cancellation)
    {
        CaseFile file = SoftTissueOption.On(
            Cases.Load(parsed.GetRequiredValue(_case)), parsed.GetValue(_softTissue));
        LadderQuestion question = Question(parsed, file);
        ForceUnit unit = _unit.Of(parsed);
        bool isJson = parsed.GetValue(_json);
        var options = new LadderOptions
        {
            Policy = PolicyFiles.Load(parsed.GetValue(_policy)),
            Style = isJson ? SentenceStyle.Default : new SentenceStyle(unit.Force, unit.Moment, _teeth.Of(parsed)),
            Draws = _draws.Of(parsed),
            Seed = _seed.Of(parsed),
        };
        LadderAdvice advice = Find(terminal, question, options, cancellation);
        if (isJson)
            LadderJson.Write(terminal.OutputStream, advice);
        else
            LadderReport.Write(terminal, file, advice, unit, _teeth.Of(parsed));
        return ExitCode.Done;
    }

    private LadderQuestion Question(ParseResult parsed, CaseFile file)
    {
        var stock = parsed.GetValue(_stock) is { } drawer ? Cases.Value(StockReader.Read(drawer), drawer) : null;
        var prices = parsed.GetValue(_prices) is { } list ? Cases.Value(PricesReader.Read(list), list) : null;
        return new LadderQuestion
        {
            Today = VisitCase.Question(file, stock, FrictionOption.Read(parsed.GetValue(_friction))),
            To = parsed.GetValue(_to) is { } to ? WireNames.Find(WireCatalogue.Default, to) : null,
            Asked = SequenceText.Read(parsed.GetValue(_sequence)),
            Prices = prices is null ? null : new WirePrices(prices),
        };
    }

    private static LadderAdvice Find(
        Terminal terminal, LadderQuestion question, LadderOptions options, CancellationToken cancellation)
    {
        using var progress = new LadderProgressLine(terminal);
        return LadderCase.Find(question, options, progress, cancellation);
    }
}
