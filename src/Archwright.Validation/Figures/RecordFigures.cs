using Archwright.Validation.Record;

namespace Archwright.Validation.Figures;

/// <summary>All pictures of the record.</summary>
public static class RecordFigures
{
    /// <summary>Computes them.</summary>
    /// <param name="results">All checks, computed.</param>
    public static IReadOnlyList<RecordFigure> Of(IReadOnlyList<CheckResult> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        return
        [
            Agreement.Of(results),
            BeamFigures.Elastica(results),
            BracketFigures.Geometries(results),
            BracketFigures.Torque(results),
            BracketFigures.Play(results),
            BendFigures.Kinds(results),
            BendFigures.Temperatures(),
            BendFigures.Sizes(results),
            TeethFigures.Dose(),
            TeethFigures.Alignment(results),
            SlidingFigures.Resistance(),
        ];
    }
}
