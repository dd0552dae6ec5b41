using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Tests.Decisions;

/// <summary>Visits that several tests ask about.</summary>
internal static class VisitSamples
{
    public static CatalogueWire Wire(string id) => WireCatalogue.Default.TryFind(id, out CatalogueWire? wire)
        ? wire : throw new ArgumentException($"No wire '{id}'.", nameof(id));

    public static ImmutableArray<CatalogueWire> Wires(params string[] ids) => [.. ids.Select(Wire)];

    /// <summary>A visit of which everything is known, on an upper arch in 0.022 in slots.</summary>
    public static VisitQuestion Question(
        string? present, double weeks = 8, double[]? contacts = null, string[]? choice = null,
        params (int Tooth, ClinicalOffset Offset)[] offsets)
    {
        ArchSetup arch = ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Upper,
            Slot = SlotSize.In022,
            WireId = "niti-014",
            Contacts = [.. contacts ?? []],
            Positions = offsets.ToImmutableDictionary(
                one => ToothNumber.FromIso(one.Tooth), one => one.Offset),
        });
        return new VisitQuestion
        {
            Arch = ArchToday.Of(arch),
            Present = present is null ? null : new PresentWire(Wire(present), weeks),
            Choice = Wires(choice ?? Usual),
            WorkingWire = Wire("ss-019x025"),
            Alerts = [],
            Discomfort = 2,
            AgeYears = 14,
        };
    }

    /// <summary>A drawer as many practices have it.</summary>
    public static string[] Usual { get; } =
    [
        "niti-012", "niti-014", "niti-016", "niti-018", "niti-016x022", "niti-019x025", "ss-016", "ss-018",
        "ss-019x025", "bti-016", "bti-019x025",
    ];

    public static double[] Straight { get; } = [0, 0, 0, 0, 0];

    public static ClinicalOffset High(double mm) => new(Occlusal: -mm);
}
