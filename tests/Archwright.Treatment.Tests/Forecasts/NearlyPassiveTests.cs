using System.Collections.Immutable;
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
}
