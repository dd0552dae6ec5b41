using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Prescriptions;

/// <summary>Usual brackets and tubes: the mesiodistal length of the slot.</summary>
public static class Brackets
{
    private static readonly Lazy<ToothTable> Embedded = new(
        () => new ToothTable("brackets", Table.Embedded("Prescriptions/brackets.csv"), unit: "mm"));

    /// <summary>Mesiodistal length of the slot of a usual twin bracket, or of a full-size molar tube [mm].</summary>
    /// <exception cref="TableException">The table has no such tooth: third molars carry none.</exception>
    public static Sourced SlotWidth(ToothNumber tooth) => Embedded.Value.Of(tooth, "slot_width");
}
