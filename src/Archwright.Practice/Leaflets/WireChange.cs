using Archwright.Dentition.Catalogue;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Leaflets;

/// <summary>What a decision means to the one who wears the wire.</summary>
public enum WireChange
{
    /// <summary>The first wire of the arch.</summary>
    First,

    /// <summary>The wire stayed.</summary>
    Kept,

    /// <summary>A stiffer wire.</summary>
    Stronger,

    /// <summary>A softer wire.</summary>
    Lighter,

    /// <summary>A new piece of the same wire.</summary>
    Same,

    /// <summary>Another wire of about the same stiffness, or one that the catalogue does not know.</summary>
    Other,

    /// <summary>No wire.</summary>
    None,
}

/// <summary>Tells what a decision means to the one who wears the wire.</summary>
public static class WireChanges
{
    // Stated sizes of a wire allow its stiffness to differ by about a tenth; less is no change that anyone feels.
    private const double AboutTheSame = 1.1;

    /// <summary>What was decided for an arch, against the wire that was found.</summary>
    /// <returns>Null while nothing is decided.</returns>
    public static WireChange? Of(ArchVisit arch) => arch.Decided switch
    {
        null => null,
        { Act: WireAct.Keep } => WireChange.Kept,
        { Act: WireAct.LeaveOut } => WireChange.None,
        var fitted => arch.Found is { } found ? Between(found.WireId, fitted.WireId) : WireChange.First,
    };

    /// <summary>From one wire to another, by the stiffness in bending up and down at the start of the bend.</summary>
    public static WireChange Between(string before, string after)
    {
        if (before == after)
            return WireChange.Same;
        if (!WireCatalogue.Default.TryFind(before, out CatalogueWire? old)
            || !WireCatalogue.Default.TryFind(after, out CatalogueWire? now))
        {
            return WireChange.Other;
        }

        double ratio = WireStiffness.Of(now).BendingUpDown / WireStiffness.Of(old).BendingUpDown;
        return ratio > AboutTheSame ? WireChange.Stronger
            : ratio < 1 / AboutTheSame ? WireChange.Lighter
            : WireChange.Other;
    }
}
