using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Crowns;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Patients;

namespace Archwright.Treatment.Tests.Forecasts;

/// <summary>What must hold of every forecast, whatever the arch.</summary>
[Trait("basis", "law")]
public sealed class ForecastLawTests
{
    [Fact]
    public void A_mirrored_arch_moves_mirrored()
    {
        ArchSetup arch = Samples.Crowded(contacts: [0.4, 0.9, 0.5, 1.1, 0.2]);
        ForecastRequest request = ForecastRequest.Of(arch, weeks: 3);

        Forecast one = WithSprings(request);
        Forecast two = WithSprings(Mirrored(request));

        for (int i = 0; i < arch.Teeth.Length; i++)
        {
            ClinicalOffset offset = one.Last.Teeth[i].Offset;
            ClinicalOffset other = two.Last.Teeth[arch.Teeth.Length - 1 - i].Offset;
            Assert.Equal(offset.Labial, other.Labial, tolerance: 1e-6);
            Assert.Equal(offset.Mesial, other.Mesial, tolerance: 1e-6);
            Assert.Equal(offset.Rotation, other.Rotation, tolerance: 1e-6);
            Assert.Equal(offset.Tip, other.Tip, tolerance: 1e-6);
        }
    }

    /// <summary>Half the error of a step moves the result by less than a hundredth of the movement.</summary>
    [Fact]
    public void Finer_steps_change_the_result_by_less_than_one_percent()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Front(1.5, 2, 1.5, 2.5, 2), weeks: 4);

        Forecast usual = WithSprings(request);
        Forecast finer = WithSprings(request with { StepTolerance = request.StepTolerance / 2 });

        double moved = 0;
        double differ = 0;
        for (int i = 0; i < request.Teeth.Length; i++)
        {
            Vector3 from = usual.Days[0].Teeth[i].Slot.Centre;
            moved = Math.Max(moved, (usual.Last.Teeth[i].Slot.Centre - from).Length);
            differ = Math.Max(
                differ, (usual.Last.Teeth[i].Slot.Centre - finer.Last.Teeth[i].Slot.Centre).Length);
        }

        Assert.True(moved > 0.5);
        Assert.True(differ < 0.01 * moved, $"{differ:0.0000} of {moved:0.00}");
    }

    /// <summary>Arches that lack room, drawn at random. A twentieth of a millimetre is what pressing crowns give;
    /// what overlapped at first counts as touching.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Crowns_never_pass_through_each_other(int draw)
    {
        ForecastRequest request = new CrowdedArch { Seed = 3, Number = draw }.Request(weeks: 6);

        Forecast forecast = WithSprings(request);

        Assert.True(forecast.IsWhole);
        for (int i = 0; i + 1 < request.Teeth.Length; i++)
        {
            Slot first = request.Arrangement.Slots[i];
            Slot second = request.Arrangement.Slots[i + 1];
            var contact = new CrownContact(
                request.Teeth[i], request.Teeth[i + 1], (first.Rest, second.Rest), (first.Actual, second.Actual));
            Assert.All(forecast.Days, day => Assert.True(
                contact.Room(day.Teeth[i].Slot, day.Teeth[i + 1].Slot) > -0.05,
                $"{request.Teeth[i]} and {request.Teeth[i + 1]} on day {day.Day}"));
        }
    }

    [Fact]
    public void No_tooth_moves_faster_than_the_law_allows_and_a_lighter_wire_no_faster_than_a_heavier()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 2) with { CrownsTouch = false };

        Forecast light = Forecaster.Run(request, new SpringWire(request.Arrangement, 0.1, 1), default);
        Forecast heavy = Forecaster.Run(request, new SpringWire(request.Arrangement, 1, 10), default);

        double most = request.Rate.Median * MovementLaw.GreatestSpeed;
        Assert.All(heavy.Days, day => Assert.All(
            day.Teeth, tooth => Assert.InRange(tooth.Movement.Speed, 0, most + 1e-12)));
        foreach ((ToothDay one, ToothDay other) in light.Days[0].Teeth.Zip(heavy.Days[0].Teeth))
            Assert.True(one.Movement.Speed <= other.Movement.Speed + 1e-12);
    }

    /// <summary>Energy that a spring loses day by day; nothing in the model could give it back.</summary>
    [Fact]
    public void The_wire_loses_energy_every_day()
    {
        Forecast forecast = WithSprings(ForecastRequest.Of(Samples.Crowded(), weeks: 6));

        foreach ((ForecastDay before, ForecastDay after) in forecast.Days.Zip(forecast.Days.Skip(1)))
            Assert.True(after.StoredEnergy <= before.StoredEnergy * (1 + 1e-9), $"day {after.Day}");
    }

    /// <summary>The load at the centre of resistance is that of wire and neighbours; without neighbours the two
    /// agree.</summary>
    [Fact]
    public void The_two_places_of_a_load_agree()
    {
        Forecast forecast = WithSprings(
            ForecastRequest.Of(Samples.Crowded(), weeks: 1) with { CrownsTouch = false });

        foreach (ToothDay tooth in forecast.Last.Teeth)
        {
            Wrench moved = tooth.FromWire.MovedTo(tooth.AtResistance.About);
            Assert.True((moved.Force - tooth.AtResistance.Force).Length < 0.01 * (0.1 + moved.Force.Length));
            Assert.True((moved.Moment - tooth.AtResistance.Moment).Length < 0.01 * (1 + moved.Moment.Length));
        }
    }

    [Fact]
    public void Order_of_what_does_not_matter_does_not_matter()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 2);
        ImmutableDictionary<ToothNumber, double> rates = request.Teeth.ToImmutableDictionary(t => t, _ => 1.1);
        ImmutableDictionary<ToothNumber, double> again =
            request.Teeth.Reverse().ToImmutableDictionary(t => t, _ => 1.1);

        Forecast one = WithSprings(request with { ToothRates = rates });
        Forecast two = WithSprings(request with { ToothRates = again });

        Assert.Equal(
            one.Last.Teeth.Select(tooth => tooth.Offset), two.Last.Teeth.Select(tooth => tooth.Offset));
    }

    [Fact]
    public void A_wire_that_cannot_be_followed_stops_the_forecast_and_says_where()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 6);

        Forecast forecast = Forecaster.Run(
            request, new SpringWire(request.Arrangement) { FailsFrom = 12 }, CancellationToken.None);

        Assert.False(forecast.IsWhole);
        Assert.Equal("45", forecast.Stop!.Tooth!.Value.ToIso());
        Assert.Contains("would open", forecast.Stop.Reason, StringComparison.Ordinal);
        Assert.InRange(forecast.Days.Length, 2, 42);
        Assert.All(forecast.Days, day => Assert.True(double.IsFinite(day.StoredEnergy)));
    }

    [Fact]
    public void A_slower_patient_is_behind_a_faster_one()
    {
        ForecastRequest request = ForecastRequest.Of(Samples.Crowded(), weeks: 3);

        Forecast slow = WithSprings(request with { Rate = PatientRate.ForAge(40) });
        Forecast fast = WithSprings(request with { Rate = PatientRate.ForAge(12) });

        Assert.True(fast.AtWeek(1)!.Irregularity < slow.AtWeek(1)!.Irregularity);
    }

    private static Forecast WithSprings(ForecastRequest request) =>
        Forecaster.Run(request, new SpringWire(request.Arrangement), CancellationToken.None);

    // Left and right exchanged: x turns round, teeth and slots come in the other order.
    internal static ForecastRequest Mirrored(ForecastRequest request) => request with
    {
        Teeth = [.. request.Teeth.Reverse().Select(Other)],
        Arrangement = request.Arrangement with
        {
            Slots = [.. request.Arrangement.Slots.Reverse().Select(slot => slot with
            {
                Rest = Mirrored(slot.Rest), Actual = Mirrored(slot.Actual),
            })],
        },
    };

    private static ToothNumber Other(ToothNumber tooth) => ToothNumber.FromIso(
        10 * (tooth.Quadrant switch { 1 => 2, 2 => 1, 3 => 4, _ => 3 }) + tooth.Position);

    private static SlotFrame Mirrored(SlotFrame frame) => SlotFrame.Create(
        Flip(frame.Centre), -Flip(frame.Along), Flip(frame.Outward));

    private static Vector3 Flip(Vector3 v) => v with { X = -v.X };
}
