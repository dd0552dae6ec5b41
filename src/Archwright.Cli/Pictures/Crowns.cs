using Archwright.Dentition.Teeth;

namespace Archwright.Cli.Pictures;

/// <summary>Sizes of crowns for drawing.</summary>
internal static class Crowns
{
    public static Crown Of(ToothNumber tooth) => new(tooth.Position, 7, 8, 7, 4, 1);
}
