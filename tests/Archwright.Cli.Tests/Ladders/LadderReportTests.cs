using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Archwright.Cli.Ladders;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Archwright.Cli.Tests.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Cli.Tests.Ladders;

/// <summary>What people and programs read. The ladders are made by hand, so that another forecast changes no line
/// here.</summary>
[Trait("basis", "ours")]
public sealed class LadderReportTests
{
    private static readonly ArchSetup Arch = ArchBuilder.Build(new ArchRequest
    {
        Jaw = Jaw.Upper, Slot = SlotSize.In022, WireId = "niti-014",
    });

    [Theory]
    [InlineData(80)]
    [InlineData(120)]
    public void Three_ladders_and_ones_own(int width) => Snapshot.Matches($"ladder-{width}", Written(Found(), width));

    [Fact]
    public void Where_there_is_none_the_nearest_is_told() => Snapshot.Matches("ladder-none", Written(None(), 120));

    [Fact]
    public void What_never_ends_is_null_in_JSON()
    {
        using var stream = new MemoryStream();
        LadderJson.Write(stream, Found());

        JsonElement answer = JsonDocument.Parse(stream.ToArray()).RootElement.GetProperty("answers")[0];
        Assert.Equal("fewest-visits", answer.GetProperty("kind").GetString());
        Assert.Equal(2, answer.GetProperty("visits").GetDouble());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("total_weeks").GetProperty("p90").ValueKind);
        Assert.Equal("13", answer.GetProperty("steps")[0].GetProperty("largest_force_tooth").GetString());
        Assert.Equal(0, answer.GetProperty("steps")[2].GetProperty("weeks").GetProperty("p50").GetDouble());
    }

    private static LadderAdvice Found()
    {
        LadderAnswer fewest = Answer(LadderKind.FewestVisits, 6.1, ("niti-016", 4, 4), ("niti-019x025", 6, 6)) with
        {
            Visits = new Percentiles(2, 2, double.PositiveInfinity),
            TotalWeeks = new Percentiles(10, 10, double.PositiveInfinity), Cost = 14.5m,
            SameAs = [LadderKind.Fastest], TiesWith = [LadderKind.Gentlest, LadderKind.Fastest],
        };
        LadderAnswer gentlest = Answer(
            LadderKind.Gentlest, 4.2, ("niti-014", 4, 4), ("niti-016x022", 12, 6), ("niti-019x025", 6, 6)) with
        {
            IsProven = false, Cost = 21, TiesWith = [LadderKind.FewestVisits, LadderKind.Fastest],
        };
        LadderAnswer asked = Answer(LadderKind.Asked, 8.8, ("niti-014", 4, 4)) with { Cost = 7 };
        asked = asked with
        {
            Steps =
            [
                asked.Steps[0] with { PartialTies = [ToothNumber.FromIso(13)] },
                asked.Steps[1] with
                {
                    Against = [new Finding("step", FindingKind.Against, "Too far in one step: 9 times as stiff.")],
                },
            ],
        };
        return Advice() with
        {
            Answers = [fewest, gentlest, fewest with { Kind = LadderKind.Fastest, SameAs = [LadderKind.FewestVisits] }],
            Asked = asked,
            Differences =
            [
                new LadderDifference(LadderKind.FewestVisits, -1, -6, 2.7, "Against fewest visits: 1 visit fewer."),
            ],
        };
    }

    private static LadderAdvice None() => Advice() with
    {
        Because = "Within the rules the ladder ends with niti-018.",
        Nearest = Answer(LadderKind.Nearest, 6.4, ("niti-018", 4, 4)),
        CeilingFactor = 1.5,
        Missing = [new MissingFact("visit.alerts", "Are there alerts?")],
    };

    private static LadderAdvice Advice() => new()
    {
        Question = new LadderQuestion
        {
            Today = new VisitQuestion { Arch = ArchToday.Of(Arch), Choice = [], AgeYears = 14 },
            Asked = [Wire("niti-014"), Wire("bti-019x025")],
        },
        Working = Wire("ss-019x025"), WorkingIsAssumed = false, Answers = [], Cautions = ["A plan to talk about."],
        Missing = [], WiresLookedAt = 9, Forecasts = 17, Draws = 0, Seed = 1, PolicyVersion = "a-policy",
    };

    private static LadderAnswer Answer(
        LadderKind kind, double comfort, params (string Wire, int Weeks, int Interval)[] wires)
    {
        var steps = ImmutableArray.CreateBuilder<LadderStep>();
        int week = 0;
        int visit = 0;
        foreach ((string id, int weeks, int interval) in wires)
        {
            steps.Add(Step(id, week, visit, weeks, interval, comfort));
            week += weeks;
            visit += weeks / interval;
        }

        steps.Add(Step("ss-019x025", week, visit, 0, 0, comfort / 2));
        return new LadderAnswer
        {
            Kind = kind, Steps = steps.ToImmutable(), Visits = new Percentiles(visit, visit, visit + 1),
            TotalWeeks = new Percentiles(week, week, week + 6), ComfortIndex = comfort, LargestForce = 1.5,
        };
    }

    private static LadderStep Step(string id, int week, int visit, int weeks, int interval, double comfort) => new()
    {
        Wire = Wire(id), IsInPlace = false, AtVisit = visit, FromWeek = new Percentiles(week, week, week),
        Weeks = new Percentiles(weeks, weeks, 2 * weeks), Interval = interval, ComfortIndex = comfort,
        Figures = new WireFigures
        {
            Wire = Wire(id), Engaged = true, Set = 0,
            Loads = [.. Arch.Teeth.Select(tooth => new ClinicalLoad(tooth.Iso == 13 ? 1.5 : 0.2, 0, 0, 0, 0, 0))],
        },
        LargestForceTooth = ToothNumber.FromIso(13), PartialTies = [],
        Twins = id == "niti-016" ? [Wire("haniti-016")] : [], Against = [],
    };

    private static CatalogueWire Wire(string id) =>
        WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : throw new ArgumentException(id, nameof(id));

    private static string Written(LadderAdvice advice, int width)
    {
        using var output = new MemoryStream();
        using (var terminal = new Terminal(output, Stream.Null, width))
        {
            LadderReport.Write(
                terminal, CaseFile.Of(Arch, "An upper arch"), advice, ForceUnit.Centinewton, ToothNotation.Iso);
        }

        return Encoding.UTF8.GetString(output.ToArray());
    }
}
