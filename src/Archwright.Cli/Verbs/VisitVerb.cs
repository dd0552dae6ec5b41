using System.CommandLine;
using Archwright.Cli.Running;
using Archwright.Cli.Units;
using Archwright.Cli.Visits;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Policies;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright visit</c>: keep, step up or step down.</summary>
internal sealed class VisitVerb
{
    private const int UsualTop = 10;

    private readonly Argument<string> _case = Words.Needed("CASE", "case file with a visit object");

    private readonly Option<string?> _stock = new("--stock")
    {
        Description = "Choose only among the wires of this file: ids, one a line, or CSV with a column wire.",
        HelpName = "FILE",
    };

    private readonly Option<string?> _policy = new("--policy")
    {
        Description = "The practice's own policy: ceilings, thresholds, weights, intervals, alerts.",
        HelpName = "FILE.json",
    };

    private readonly Option<string?> _explain = new("--explain")
    {
        Description = "Tell the chain of figures of this tooth (ISO number), from place to verdict.",
        HelpName = "TOOTH",
    };

    private readonly Option<string?> _whyNot = new("--why-not")
    {
        Description = "Tell what each rule finds on this wire, and its score; --explain then takes this wire.",
        HelpName = "WIRE",
    };

    private readonly Option<string?> _friction = FrictionOption.CreateForMany();
    private readonly Option<string?> _softTissue = SoftTissueOption.Create();

    private readonly Option<bool> _sensitivity = new("--sensitivity")
    {
        Description = "Tell which inputs would turn the recommendation, and how far they are from it.",
    };

    private readonly UsualOption<int> _top = NumberOption.Whole(
        "--top", $"Wires to show, the best first. Usual: {UsualTop}.", 1, 1000, UsualTop);

    private readonly Option<bool> _all = new("--all") { Description = "Show every wire." };
    private readonly UsualOption<ForceUnit> _unit = CommonOptions.Unit();
    private readonly UsualOption<ToothNotation> _teeth = CommonOptions.Teeth();
    private readonly Option<bool> _json = CommonOptions.Json();

    private VisitVerb()
    {
    }

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new VisitVerb();
        var verb = new Verb("visit", "Keep, step up or step down: what may go in today, ranked, with reasons.")
        {
            Examples =
            [
                ("archwright visit case.json", "what is recommended, and why not the others"),
                ("archwright visit case.json --stock drawer.txt", "only what is in the drawer"),
                ("archwright visit case.json --explain 13 --why-not ss-018", "figures to check by hand"),
            ],
        };
        verb.Add(options._case);
        foreach (Option option in new Option[]
        {
            options._stock, options._policy, options._explain, options._whyNot, options._sensitivity,
            options._friction, options._softTissue, options._top, options._all, options._unit, options._teeth,
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
        var stock = parsed.GetValue(_stock) is { } name ? Cases.Value(StockReader.Read(name), name) : null;
        VisitQuestion question = VisitCase.Question(file, stock, FrictionOption.Read(parsed.GetValue(_friction)));
        var asked = TraceRequest.Of(
            question, parsed.GetValue(_explain), parsed.GetValue(_whyNot), parsed.GetValue(_sensitivity));
        ForceUnit unit = _unit.Of(parsed);
        bool isJson = parsed.GetValue(_json);
        var options = new VisitOptions
        {
            Policy = PolicyFiles.Load(parsed.GetValue(_policy)),
            Style = isJson ? SentenceStyle.Default : new SentenceStyle(unit.Force, unit.Moment, _teeth.Of(parsed)),
        };
        VisitAdvice advice = Advise(terminal, question, options, cancellation);
        var traces = VisitTraces.Of(advice, options, asked, cancellation);
        if (isJson)
        {
            VisitJson.Write(terminal.OutputStream, advice, traces.Write);
            return ExitCode.Done;
        }

        VisitReport.Write(
            terminal, file, advice, unit, _teeth.Of(parsed), parsed.GetValue(_all) ? int.MaxValue : _top.Of(parsed));
        traces.Write(new TraceReport(terminal, unit, _teeth.Of(parsed)));
        return ExitCode.Done;
    }

    private static VisitAdvice Advise(
        Terminal terminal, VisitQuestion question, VisitOptions options, CancellationToken cancellation)
    {
        using var progress = new VisitProgressLine(terminal);
        try
        {
            return VisitAdvisor.Advise(question, options, progress, cancellation);
        }
        catch (ArgumentException fault)
        {
            throw new Refusal("the case cannot be set up: " + Plainly.Message(fault), "Check the slots of the case.");
        }
    }
}
