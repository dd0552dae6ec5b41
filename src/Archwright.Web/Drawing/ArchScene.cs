using System.Collections.Immutable;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;

namespace Archwright.Web.Drawing;

/// <summary>Which way an arch is looked at.</summary>
public enum ArchView
{
    /// <summary>On the biting surfaces, the patient's right on the left.</summary>
    Occlusal,

    /// <summary>From the lips, unrolled so that the back teeth are seen too; the patient's right on the left.</summary>
    Frontal,
}

/// <summary>A point of a picture [mm].</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Down.</param>
public readonly record struct ScenePoint(double X, double Y);

/// <summary>A tooth of a picture.</summary>
public sealed record SceneTooth
{
    /// <summary>Which.</summary>
    public required ToothNumber Tooth { get; init; }

    /// <summary>Outline of the crown where it stands.</summary>
    public required string Outline { get; init; }

    /// <summary>Outline where it should stand; empty when it stands there.</summary>
    public required string Planned { get; init; }

    /// <summary>The slot; empty where there is no bracket.</summary>
    public required string Slot { get; init; }

    /// <summary>The slot's centre.</summary>
    public required ScenePoint Centre { get; init; }

    /// <summary>Where its number stands.</summary>
    public required ScenePoint Label { get; init; }

    /// <summary>Arrow of the force in the plane of the picture; empty when there is none.</summary>
    public required string Force { get; init; }

    /// <summary>Head of that arrow.</summary>
    public required string ForceHead { get; init; }

    /// <summary>Where the figure of the force stands, or the word on a tooth without a bracket.</summary>
    public required ScenePoint ForceLabel { get; init; }

    /// <summary>Arrow of the moment about the line of sight; empty when it is small.</summary>
    public required string Turn { get; init; }

    /// <summary>Size of the force [N]; null when nothing is known.</summary>
    public required double? ForceN { get; init; }

    /// <summary>True when a load is above its ceiling.</summary>
    public required bool IsAbove { get; init; }

    /// <summary>Why there is no bracket; null where there is one. An absent tooth is drawn at its place.</summary>
    public BareTooth? Bare { get; init; }

    /// <summary>True when the wire is tied in.</summary>
    public required bool IsTied { get; init; }
}

/// <summary>A picture of an arch with its wire, as paths for SVG. Units are millimetres of the patient.</summary>
/// <param name="View">Which way it is looked at.</param>
/// <param name="Left">Left edge.</param>
/// <param name="Top">Upper edge.</param>
/// <param name="Width">Across.</param>
/// <param name="Height">Down.</param>
/// <param name="Teeth">From the patient's right to the left.</param>
/// <param name="Wire">The wire; empty when it is not engaged.</param>
public sealed record ArchScene(
    ArchView View,
    double Left,
    double Top,
    double Width,
    double Height,
    ImmutableArray<SceneTooth> Teeth,
    string Wire);
