using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;

namespace Archwright.Treatment.Tests;

/// <summary>Arches that several tests use.</summary>
internal static class Samples
{
    public static ArchSetup Crowded(Jaw jaw = Jaw.Lower, string wire = "niti-014", params double[] contacts) =>
        ArchBuilder.Build(new ArchRequest
        {
            Jaw = jaw,
            Slot = SlotSize.In022,
            WireId = wire,
            Contacts = contacts is [] ? [1.0, 0.8, 0.6, 1.2, 0.9] : [.. contacts],
        });

    public static ArchSetup Passive(Jaw jaw = Jaw.Upper, string wire = "niti-014") =>
        ArchBuilder.Build(new ArchRequest { Jaw = jaw, Slot = SlotSize.In022, WireId = wire });
}
