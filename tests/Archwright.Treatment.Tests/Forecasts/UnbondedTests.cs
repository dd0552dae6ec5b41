using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Tests.Forecasts;

/// <summary>Crowns without a bracket: no wire acts on them; neighbours do.</summary>
[Trait("basis", "law")]
public sealed class UnbondedTests
{
    private static readonly ToothNumber Lateral = ToothNumber.FromIso(12);
    private static readonly ToothNumber Canine = ToothNumber.FromIso(13);

    [Fact]
    public void No_wire_acts_on_it_and_alone_it_stays()
    {
        ForecastRequest request = ForecastRequest.Of(Arch(labial: -3), weeks: 4);

        Forecast forecast = Forecaster.Run(request with { CrownsTouch = false });

        Assert.True(forecast.IsWhole, forecast.Stop?.Reason);
        Assert.All(forecast.Days, day => Assert.Equal(0, On(day, Lateral).FromWire.Force.Length));
        Assert.All(forecast.Days, day => Assert.Equal(0, On(day, Lateral).FromWire.Moment.Length));
        Assert.Equal(On(forecast.Days[0], Lateral).Slot, On(forecast.Last, Lateral).Slot);
    }

    /// <summary>What the wire does to the others is what it does without that tooth: engaged with its place left out
    /// as a point of the rest shape it would run a little otherwise there, so the places are kept.</summary>
    [Fact]
    public void The_others_bear_the_same_as_if_its_slot_were_not_tied()
    {
        ArchSetup arch = Arch(labial: -3, canine: 0.8);
        Arrangement untied = arch.Arrangement with
        {
            Slots = [.. arch.Slots.Select(slot => slot with { IsBonded = true })],
        };

        EngagementResult bare = new Engager(arch.Arrangement).Engage();
        EngagementResult loose = new Engager(untied).Engage();

        Assert.True(bare.Converged);
        Assert.Equal(
            loose.Slots.Select(slot => slot.OnTooth.Force), bare.Slots.Select(slot => slot.OnTooth.Force));
    }

    /// <summary>A chain draws the canine toward the midline; the bare crown in its way is pushed along, moves no faster
    /// than the law allows, and holds the canine up.</summary>
    [Fact]
    public void Its_neighbour_pushes_it_and_it_holds_its_neighbour_up()
    {
        ForecastRequest request = ForecastRequest.Of(Arch(), weeks: 8) with
        {
            AppliedLoads = ImmutableDictionary<ToothNumber, ClinicalLoad>.Empty.Add(
                Canine, new ClinicalLoad(0, 0, 1, 0, 0, 0)),
            OverloadedTeethWait = false,
        };

        Forecast touching = Forecaster.Run(request);
        Forecast passing = Forecaster.Run(request with { CrownsTouch = false });

        Assert.True(touching.IsWhole && passing.IsWhole);
        double pushed = (On(touching.Last, Lateral).Slot.Centre - On(touching.Days[0], Lateral).Slot.Centre).Length;
        Assert.True(pushed > 0.02, $"{pushed:0.000} mm");
        Assert.Equal(0, (On(passing.Last, Lateral).Slot.Centre - On(passing.Days[0], Lateral).Slot.Centre).Length);
        Assert.True(On(touching.Last, Canine).Offset.Mesial < On(passing.Last, Canine).Offset.Mesial - 0.02);
        Assert.All(touching.Days, day => Assert.InRange(
            On(day, Lateral).Movement.Speed, 0, request.Rate.Median * MovementLaw.GreatestSpeed));
    }

    [Fact]
    public void It_counts_in_the_irregularity_of_every_week()
    {
        double straight = Arch().Irregularity!.Sum;
        double off = Arch(labial: -2).Irregularity!.Sum;
        Forecast forecast = Forecaster.Run(ForecastRequest.Of(Arch(labial: -2), weeks: 1));

        Assert.True(off > straight + 2);
        Assert.Equal(off, forecast.Days[0].Irregularity!.Value, tolerance: 1e-9);
        Assert.NotNull(forecast.Last.Irregularity);
    }

    /// <summary>Where its slot would be it leaves the crown as it is; without the crown the same push meets nobody.
    /// </summary>
    [Fact]
    public void Into_the_place_of_a_tooth_that_is_not_there_the_neighbour_goes_freely()
    {
        ForecastRequest Drawn(ArchSetup arch) => ForecastRequest.Of(arch, weeks: 8) with
        {
            AppliedLoads = ImmutableDictionary<ToothNumber, ClinicalLoad>.Empty.Add(
                Canine, new ClinicalLoad(0, 0, 1, 0, 0, 0)),
            OverloadedTeethWait = false,
        };

        Forecast there = Forecaster.Run(Drawn(Arch()));
        Forecast gone = Forecaster.Run(Drawn(ArchBuilder.Build(Request() with { Unbonded = [], Without = [Lateral] })));

        Assert.True(gone.IsWhole, gone.Stop?.Reason);
        Assert.True(On(gone.Last, Canine).Offset.Mesial > On(there.Last, Canine).Offset.Mesial + 0.05);
        Assert.Null(gone.Last.Irregularity);
    }

    [Fact]
    public void A_visit_neither_ties_it_nor_waits_for_it_and_says_that_it_has_no_bracket()
    {
        VisitAdvice advice = VisitAdvisor.Advise(new VisitQuestion
        {
            Arch = ArchToday.Of(Arch(labial: -4)),
            Choice = [.. WireCatalogue.Default.Wires.Where(wire => wire.Id is "niti-014")],
        });

        Assert.Empty(advice.PartialTies);
        Assert.True(advice.Question.Arch.Farthest < 1e-9);
        Assert.NotEqual("12", advice.Question.Arch.Teeth[advice.Question.Arch.FarthestOff].ToIso());
        Assert.Contains(
            advice.Cautions,
            caution => caution.StartsWith(
                "Without a bracket: the upper right lateral incisor (12).", StringComparison.Ordinal));
    }

    [Fact]
    public void A_tooth_of_which_nothing_is_said_is_asked_for()
    {
        var question = new VisitQuestion
        {
            Arch = ArchToday.Of(Arch()) with { Unsaid = [ToothNumber.FromIso(14)] },
            Choice = [.. WireCatalogue.Default.Wires.Where(wire => wire.Id is "niti-014")],
        };

        MissingFact fact = Assert.Single(VisitAdvisor.Advise(question).Missing, one => one.Key == "absent");

        Assert.Contains("14", fact.Question, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_without_a_bracket_that_holds_the_wire_is_refused()
    {
        ArchSetup arch = Arch();
        var contradiction = arch.Arrangement with
        {
            Slots = [.. arch.Slots.Select(slot => slot with { Tie = Mechanics.Slots.Tie.Closed() })],
        };

        Assert.Contains("no bracket", Assert.Throws<ArgumentException>(() => new Engager(contradiction)).Message,
            StringComparison.Ordinal);
    }

    private static ToothDay On(ForecastDay day, ToothNumber tooth) => day.Teeth.Single(one => one.Tooth == tooth);

    private static ArchRequest Request() => new()
    {
        Jaw = Jaw.Upper, Slot = SlotSize.In022, WireId = "niti-014", Unbonded = [Lateral],
    };

    private static ArchSetup Arch(double labial = 0, double canine = 0) => ArchBuilder.Build(Request() with
    {
        Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty
            .Add(Lateral, new ClinicalOffset(Labial: labial)).Add(Canine, new ClinicalOffset(Labial: canine)),
    });
}
