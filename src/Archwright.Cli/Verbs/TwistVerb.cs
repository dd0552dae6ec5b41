using System.CommandLine;
using Archwright.Cli.Pictures;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Results;
using Archwright.Mechanics.Bench;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright twist</c>: torque against twist between two slots.</summary>
internal static class TwistVerb
{
    /// <summary>Depth of a slot when none is given: deep enough for every wire of the catalogue [in].</summary>
    private const double UsualDepthInches = 0.030;

    /// <summary>Free wire between two brackets when none is given [mm]. Common practice, no source.</summary>
    private const double UsualGap = 5;

    private static readonly double[] UsualTwists = [0, 5, 10, 15, 20, 25, 30, 25, 20, 15, 10, 5, 0];

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        var file = new Option<string?>("--case")
        {
            Description = "A twist case file; in place of the other figures.", HelpName = "FILE",
        };
        var wire = new Option<string?>("--wire") { Description = "A wire of the catalogue.", HelpName = "ID" };
        Option<double> slot = NumberOption.Real(
            "--slot", "Height of both slots, as 0.018 or 0.022.", "in", 0.010, 0.040);
        UsualOption<double> depth = NumberOption.Real(
            "--depth", "Depth of both slots.", "in", 0.015, 0.060, UsualDepthInches);
        UsualOption<double> gap = NumberOption.Real(
            "--gap", "Free wire between the two slots.", "mm", 0.5, 50, UsualGap);
        UsualOption<double[]> twists = NumberOption.List(
            "--twists", "Twists of one slot against the other, in order. Usual: to 30 by fives, and back.", "deg,deg,…",
            "degrees", -80, 80, UsualTwists);
        UsualOption<double> compliance = NumberOption.Real(
            "--compliance", "What the brackets give way by, for each N·mm of torque; 0 is rigid, one rig had 0.555.",
            "deg", 0, 20, 0);
        Option<string?> plot = CommonOptions.Plot("Draw torque against twist into this file.");
        UsualOption<ForceUnit> unit = CommonOptions.Unit();
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("twist", "Twist a wire between two slots: how much play, then how much torque.")
        {
            Examples =
            [
                ("archwright twist --wire ss-019x025 --slot 0.022", "play and torque of a working wire"),
                ("archwright twist --wire bti-017x025 --slot 0.018 --gap 4 --twists 0,5,10,20 --plot torque.svg",
                    "with 4 mm of free wire, at these angles, and a picture"),
                ("archwright twist --wire ss-019x025 --slot 0.022 --compliance 0.555",
                    "with brackets that give way as those of one rig did"),
                ("archwright twist --case bench.json --json", "a bench case, for another program"),
            ],
        };
        foreach (Option option in new Option[] { file, wire, slot, depth, gap, twists, compliance, plot, unit, json })
            verb.Add(option);
        verb.SetAction(parsed =>
        {
            string? casePath = parsed.GetValue(file);
            Option[] figures = [wire, slot, depth, gap, twists, compliance];
            Option? given = figures.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false });
            if (casePath is not null && given is { } both)
            {
                throw new Refusal($"{both.Name} and --case do not go together.",
                    "A twist case holds all its figures: leave out one of the two.");
            }

            if (casePath is null && (parsed.GetResult(wire) is null || parsed.GetResult(slot) is null))
            {
                throw new Refusal("twist needs --case FILE, or --wire ID with --slot INCHES.",
                    "As in: archwright twist --wire ss-019x025 --slot 0.022");
            }

            TwistCase test = casePath is not null
                ? Cases.Value(TwistCaseReader.Read(casePath), casePath)
                : FromOptions(parsed.GetRequiredValue(wire)!, parsed.GetValue(slot), depth.Of(parsed),
                    gap.Of(parsed), twists.Of(parsed)) with { ComplianceDegrees = compliance.Of(parsed) };
            return Run(terminal, test, unit.Of(parsed), parsed.GetValue(plot), parsed.GetValue(json));
        });
        return verb;
    }

    private static int Run(Terminal terminal, TwistCase test, ForceUnit unit, string? plot, bool json)
    {
        double[] torques = Torques(test);
        if (plot is not null)
            OutputFiles.Write("--plot", plot, path => TwistPicture.Write(path, test, torques, unit));

        if (json)
        {
            TwistJson.Write(test, torques, terminal.OutputStream);
            terminal.OutputStream.Flush();
        }
        else
        {
            TwistReport.Write(terminal, test, torques, unit);
        }

        return ExitCode.Done;
    }

    private static double[] Torques(TwistCase test)
    {
        try
        {
            return TwistTest.Run(
                test.Wire, test.SlotHeight, test.SlotDepth, test.EdgeGap, test.Twists.AsSpan(),
                compliance: Angle.FromDegrees(test.ComplianceDegrees));
        }
        catch (ArgumentException fault)
        {
            throw new Refusal("the twist test cannot be set up: " + Plainly.Message(fault),
                "Check the figures of the slots, the gap and the twists.");
        }
        catch (InvalidOperationException fault)
        {
            throw new Refusal(ExitCode.NotPossible, [new Complaint(fault.Message, Mend: "Try smaller twists.")]);
        }
    }

    private static TwistCase FromOptions(
        string wireId, double slotInches, double depthInches, double gap, double[] twists)
    {
        CatalogueWire wire = WireNames.Find(WireCatalogue.Default, wireId);
        double height = Millimetres.FromInches(slotInches);
        double depth = Millimetres.FromInches(depthInches);
        if (wire.Section.Thickness > height)
        {
            throw new Refusal($"{wire.Id} is {wire.Section.Thickness:0.000} mm thick and does not go into a slot "
                + $"{height:0.000} mm ({slotInches} in) high.", "Choose a thinner wire or a higher slot.");
        }

        if (wire.Section.Width > depth)
        {
            throw new Refusal($"{wire.Id} is {wire.Section.Width:0.000} mm wide and does not go into a slot "
                + $"{depth:0.000} mm ({depthInches} in) deep.", "Choose a narrower wire or give --depth.");
        }

        return new TwistCase
        {
            Wire = wire.WholeWire, WireId = wire.Id, SlotHeight = height, SlotDepth = depth, EdgeGap = gap,
            TwistsDegrees = [.. twists],
        };
    }
}
