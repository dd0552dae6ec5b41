using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Forecasts;

namespace Archwright.Treatment.Tests.Forecasts;

/// <summary>An arch that is straight but for one tooth: the wire floats between the walls of most slots, and next to
/// nothing drives it along.</summary>
[Trait("basis", "ours")]
public sealed class NearlyPassiveTests
{
    [Theory]
    [InlineData("niti-016")]
    [InlineData("ss-018")]
    public void One_tooth_a_little_high_is_followed_to_its_end(string wire)
    {
        var lateral = ToothNumber.FromIso(12);
        ArchSetup arch = ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Upper,
            Slot = SlotSize.In022,
            WireId = wire,
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty.Add(
                lateral, ClinicalOffset.Zero with { Occlusal = -0.2 }),
        });

        Forecast forecast = Forecaster.Run(ForecastRequest.Of(arch, weeks: 4));

        Assert.True(forecast.IsWhole, forecast.Stop?.Reason);
    }

    /// <summary>A stiff rectangular wire on an arch that a round one has nearly straightened touches one wall or the
    /// other of most slots. Its first week took 226 engagements where each correction forgot the one before.</summary>
    [Fact]
    public void A_stiff_wire_on_a_nearly_straight_arch_is_followed_without_going_to_and_fro()
    {
        ArchSetup arch = Samples.Crowded(Jaw.Upper, contacts: [0.5, 0.7, 0.4, 0.6, 0.3]);
        Forecast round = Forecaster.Run(ForecastRequest.Of(arch, weeks: 8));
        ForecastRequest request = ForecastRequest.Of(arch, weeks: 1);

        Forecast stiff = Forecaster.Run(request with
        {
            StepTolerance = 0.05,
            Arrangement = request.Arrangement with
            {
                Wire = WireCatalogue.Default.Wires.Single(wire => wire.Id == "bti-019x025").Wire,
                Slots =
                [
                    .. request.Arrangement.Slots.Select(
                        (slot, i) => slot with { Actual = round.Last.Teeth[i].Slot }),
                ],
            },
        });

        TestContext.Current.TestOutputHelper?.WriteLine($"{stiff.Engagements} engagements, {stiff.Steps} steps");
        Assert.True(stiff.IsWhole, stiff.Stop?.Reason);
        Assert.InRange(stiff.Engagements, 1, 60);
    }

    /// <summary>The walls are foreseen, so that little is left to correct: before they were, three engagements a step
    /// or more.</summary>
    [Theory]
    [InlineData("niti-016")]
    [InlineData("ss-014")]
    [InlineData("bti-017x017")]
    public void A_step_takes_about_one_engagement(string wire)
    {
        ArchSetup arch = Samples.Crowded(Jaw.Upper, contacts: [0.5, 0.7, 0.4, 0.6, 0.3]);
        ForecastRequest request = ForecastRequest.Of(arch, weeks: 8);

        Forecast forecast = Forecaster.Run(request with
        {
            Arrangement = request.Arrangement with
            {
                Wire = WireCatalogue.Default.Wires.Single(one => one.Id == wire).Wire,
            },
        });
        TestContext.Current.TestOutputHelper?.WriteLine($"{forecast.Engagements} engagements, {forecast.Steps} steps");

        Assert.True(forecast.IsWhole, forecast.Stop?.Reason);
        Assert.InRange(forecast.Engagements, forecast.Steps, 2 * forecast.Steps);
    }
}
