using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;

namespace Archwright.Cli.Tables;

/// <summary>The loads of a case against ceilings.</summary>
/// <param name="Above">All that are above.</param>
internal sealed record CeilingCheck(ImmutableArray<ToothAboveCeiling> Above)
{
    /// <summary>Compares every load with every ceiling of its tooth.</summary>
    public static CeilingCheck Of(
        ImmutableArray<ToothNumber?> teeth, ImmutableArray<ClinicalLoad> loads, ForceCeilings ceilings)
    {
        var above = ImmutableArray.CreateBuilder<ToothAboveCeiling>();
        for (int i = 0; i < loads.Length; i++)
        {
            if (teeth[i] is not { } tooth)
                continue;

            foreach (LoadKind kind in LoadKinds.All)
            {
                double figure = kind.Of(loads[i]);
                if (ceilings.Find(tooth, kind) is { } ceiling && figure > ceiling.Limit.Value)
                    above.Add(new ToothAboveCeiling(i, kind, figure, ceiling.Limit.Value));
            }
        }

        return new CeilingCheck(above.ToImmutable());
    }

    /// <summary>Whether a kind of load on a slot's tooth is above its ceiling.</summary>
    public bool IsAbove(int slot, params ReadOnlySpan<LoadKind> kinds)
    {
        foreach (ToothAboveCeiling one in Above)
        {
            if (one.Slot == slot && kinds.Contains(one.Kind))
                return true;
        }

        return false;
    }

    /// <summary>Whether anything on a slot's tooth is above its ceiling.</summary>
    public bool IsAbove(int slot) => Above.Any(one => one.Slot == slot);
}
