using System.CommandLine;
using Archwright.Cli.Pictures;
using Archwright.Cli.Running;
using Archwright.Cli.Solving;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright solve</c>: engages the wire of a case.</summary>
internal static class SolveVerb
{
    private const int MostRepeats = 100_000;

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        Argument<string> file = Words.Needed("CASE", "case file, as archwright arch makes them");
        UsualOption<int> repeat = NumberOption.Whole(
            "--repeat", "Solve N times cold and N times warm in one process and give both medians.", 1, MostRepeats,
            usual: 0);
        UsualOption<double[]> history = NumberOption.List(
            "--history", "Temperatures the wire goes through: put in at the first, then the others.",
            "degC,degC,…", "°C", -5, 80, []);
        var firstModulus = new Option<bool>("--first-modulus")
        {
            Description = "As if the wire were elastic without end, with its first modulus: too strong a force where "
                + "it transforms or yields.",
        };
        firstModulus.Validators.Add(result =>
        {
            if (result.GetValue(firstModulus) && result.GetResult(history) is { Implicit: false })
                result.AddError("--history needs the memory that --first-modulus leaves out. Give one of them.");
        });
        Option<string?> friction = FrictionOption.Create();
        Option<string?> limits = LimitFiles.Option();
        Option<string?> plot = CommonOptions.Plot(
            "Draw forces on every tooth, occlusal and frontal view to scale, into this file.");
        UsualOption<ForceUnit> unit = CommonOptions.Unit();
        UsualOption<ToothNotation> teeth = CommonOptions.Teeth();
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("solve", "Engage the wire of a case: force and moment on every tooth.")
        {
            Examples =
            [
                ("archwright solve case.json", "force and moment on every tooth"),
                ("archwright solve case.json --unit gf --teeth palmer --plot forces.svg",
                    "in grams, with the numbers UR8 to LR8, and a picture"),
                ("archwright solve case.json --history 22,36,10,36", "put in at 22 degrees, warmed, a cold drink"),
                ("archwright solve case.json --json > forces.json", "for another program"),
            ],
        };
        verb.Add(file);
        foreach (Option option in new Option[]
        {
            history, firstModulus, friction, plot, limits, repeat, unit, teeth, json,
        })
        {
            verb.Add(option);
        }

        verb.SetAction((parsed, cancellation) => Task.Run(() => Run(
            terminal,
            new Request(
                parsed.GetRequiredValue(file), history.Of(parsed), parsed.GetValue(firstModulus),
                parsed.GetValue(friction), repeat.Of(parsed), parsed.GetValue(limits), parsed.GetValue(plot),
                unit.Of(parsed), teeth.Of(parsed), parsed.GetValue(json)),
            cancellation)));
        return verb;
    }

    private static int Run(Terminal terminal, Request request, CancellationToken cancellation)
    {
        CaseFile file = FrictionOption.On(Cases.Load(request.File), request.Friction);
        ForceCeilings ceilings = LimitFiles.Load(request.Limits);
        SolvedCase solved = Solved(file, request, cancellation);
        if (request.Plot is { } picture)
        {
            OutputFiles.Write("--plot", picture,
                path => CasePicture.Write(path, solved, request.Unit, request.Teeth, ceilings));
        }

        if (request.Json)
            SolveJson.Write(terminal.OutputStream, solved);
        else
            SolveReport.Write(terminal, solved, request.Unit, request.Teeth, ceilings);

        return solved.IsEngaged ? ExitCode.Done : ExitCode.NotPossible;
    }

    private static SolvedCase Solved(CaseFile file, Request request, CancellationToken cancellation)
    {
        if (request.History.Length == 0 && !request.FirstModulus)
            return WholeLaw.Solve(file, request.Repeat, cancellation);

        CaseFile asked = request.History.Length > 0 ? WholeLaw.Of(file, request.History) : file;
        return CaseSolver.Solve(asked, request.Repeat, cancellation) with { Law = WholeLaw.Written(asked) };
    }

    private sealed record Request(
        string File, double[] History, bool FirstModulus, string? Friction, int Repeat, string? Limits, string? Plot,
        ForceUnit Unit, ToothNotation Teeth, bool Json);
}
