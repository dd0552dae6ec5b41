namespace Archwright.Cli.Pictures;

/// <summary>The colours of the pictures. Readable for people who confuse red and green, and in grey: no meaning hangs
/// on colour alone.</summary>
internal static class Colours
{
    /// <summary>Background.</summary>
    public static readonly Ink Paper = new("#ffffff");

    /// <summary>Background of a panel.</summary>
    public static readonly Ink Panel = new("#fafaf7");

    /// <summary>Text.</summary>
    public static readonly Ink Text = new("#1d2733");

    /// <summary>Lesser text, 7 : 1 on paper.</summary>
    public static readonly Ink Quiet = new("#4d5866");

    /// <summary>Hair lines.</summary>
    public static readonly Ink Hair = new("#d4d8d6");

    /// <summary>Inside of a crown.</summary>
    public static readonly Ink Crown = new("#f3ead9");

    /// <summary>Edge of a crown.</summary>
    public static readonly Ink CrownEdge = new("#a8977a");

    /// <summary>Where a tooth would rest.</summary>
    public static readonly Ink Ghost = new("#8fa3b5");

    /// <summary>Rim of a slot.</summary>
    public static readonly Ink Slot = new("#3c4753");

    /// <summary>Inside of a slot.</summary>
    public static readonly Ink SlotInside = new("#b9c4cf");

    /// <summary>The wire.</summary>
    public static readonly Ink Wire = new("#12566b");

    /// <summary>A force within the ceiling.</summary>
    public static readonly Ink Force = new("#1f6fb2");

    /// <summary>A force above the ceiling.</summary>
    public static readonly Ink Heavy = new("#b8400f");

    /// <summary>Labial part of a force.</summary>
    public static readonly Ink Labial = new("#1f6fb2");

    /// <summary>Occlusal part of a force.</summary>
    public static readonly Ink Occlusal = new("#e0a030");

    /// <summary>Mesial part of a force.</summary>
    public static readonly Ink Mesial = new("#6d7f8d");
}
