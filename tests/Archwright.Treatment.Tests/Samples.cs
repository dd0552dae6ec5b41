using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;

namespace Archwright.Treatment.Tests;

/// <summary>Arches that several tests use.</summary>
internal static class Samples
{
    public static ArchSetup Crowded(Jaw jaw = Jaw.Lower, string wire = "niti-014", double[]? contacts = null) =>
        ArchBuilder.Build(new ArchRequest
        {
            Jaw = jaw,
            Slot = SlotSize.In022,
            WireId = wire,
            Contacts = [.. contacts ?? [1.0, 0.8, 0.6, 1.2, 0.9]],
        });

    /// <summary>The six front teeth alone.</summary>
    public static ArchSetup Front(params double[] contacts) => ArchBuilder.Build(new ArchRequest
    {
        Jaw = Jaw.Lower,
        Slot = SlotSize.In022,
        WireId = "niti-014",
        Contacts = [.. contacts],
        Without = [.. Jaw.Lower.Teeth().Where(tooth => !tooth.IsAnterior && tooth.Position < 8)],
    });

    public static ArchSetup Passive(Jaw jaw = Jaw.Upper, string wire = "niti-014") =>
        ArchBuilder.Build(new ArchRequest { Jaw = jaw, Slot = SlotSize.In022, WireId = wire });
}
