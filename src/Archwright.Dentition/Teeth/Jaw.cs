namespace Archwright.Dentition.Teeth;

/// <summary>Which arch.</summary>
public enum Jaw
{
    /// <summary>The upper arch.</summary>
    Upper,

    /// <summary>The lower arch.</summary>
    Lower,
}

/// <summary>Words and teeth of an arch.</summary>
public static class Jaws
{
    /// <summary>"upper" or "lower".</summary>
    public static string Word(this Jaw jaw) => jaw == Jaw.Upper ? "upper" : "lower";

    /// <summary>All sixteen teeth from the patient's right to the left.</summary>
    public static IReadOnlyList<ToothNumber> Teeth(this Jaw jaw) =>
        jaw == Jaw.Upper ? ToothNumber.UpperArch : ToothNumber.LowerArch;

    /// <summary>The six front teeth from the patient's right canine to the left.</summary>
    public static IReadOnlyList<ToothNumber> FrontTeeth(this Jaw jaw) =>
        [.. jaw.Teeth().Where(tooth => tooth.IsAnterior)];
}
