using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Ladders;

/// <summary>An arch at one visit, as the search sees it. The search knows no mechanics, so that it can be held against
/// every sequence on arches that are made up.</summary>
internal interface ILadderArch
{
    /// <summary>How far each crown is from its planned place [mm].</summary>
    ImmutableArray<double> Distances { get; }

    /// <summary>A wire fitted here, judged.</summary>
    /// <param name="wire">Which.</param>
    /// <param name="present">What is in place; null where nothing is.</param>
    /// <param name="rules">By what.</param>
    LadderFit Fit(CatalogueWire wire, LadderFit? present, LadderRules rules);

    /// <summary>What the rules say here of figures that are known.</summary>
    LadderFit Judge(WireFigures figures, LadderFit? present, LadderRules rules);

    /// <summary>What the wire does from here on.</summary>
    ILadderCourse Wear(LadderFit fit);
}

/// <summary>A wire worn from one visit on.</summary>
internal interface ILadderCourse
{
    /// <summary>Weeks from visit to visit while it is in, arranged for the usual patient.</summary>
    int Interval { get; }

    /// <summary>The arch at a visit, 1 being the next one, for a patient of this rate.</summary>
    ILadderArch At(int visit, double rate);

    /// <summary>Whether later visits find the arch as this one does: the wire is spent, or could not be followed
    /// farther.</summary>
    bool IsLast(int visit, double rate);
}
