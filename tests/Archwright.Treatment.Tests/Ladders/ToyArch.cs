using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Comfort;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Ladders;

namespace Archwright.Treatment.Tests.Ladders;

/// <summary>An arch without mechanics: crowns that are off by so much, and wires that push them like springs with some
/// play. Quick enough to go through every sequence of wires.</summary>
internal sealed class ToyArch(ImmutableArray<double> distances) : ILadderArch
{
    private const double Ceiling = 30;

    public ImmutableArray<double> Distances { get; } = distances;

    public LadderFit Fit(CatalogueWire wire, LadderFit? present, LadderRules rules) =>
        Judge(new WireFigures { Wire = wire, Engaged = true, Set = 0, FittingForce = Force(wire) }, present, rules);

    public LadderFit Judge(WireFigures figures, LadderFit? present, LadderRules rules)
    {
        bool isOver = Force(figures.Wire) > Ceiling * rules.Ceilings;
        return new LadderFit
        {
            Figures = figures,
            Against = isOver ? [new Finding("ceilings", FindingKind.Against, "Too much.")] : [],
            IsRuledOut = isOver,
            ComfortIndex = ComfortIndex.Of(figures.FittingForce, rules.Policy),
        };
    }

    public ILadderCourse Wear(LadderFit fit) => new ToyCourse(this, fit.Wire);

    /// <summary>How far a wire lets a crown be off [mm].</summary>
    public static double Play(CatalogueWire wire) => Math.Max(0, 0.56 - wire.Section.Thickness) / 2;

    private double Force(CatalogueWire wire) =>
        Distances.Sum(off => WireSize.Stiffness(wire) * Math.Max(0, off - Play(wire)) / 10);

    private sealed class ToyCourse(ToyArch arch, CatalogueWire wire) : ILadderCourse
    {
        private const double Pace = 0.02;

        public int Interval { get; } = wire.Section.IsRound ? 4 : 6;

        public ILadderArch At(int visit, double rate)
        {
            double share = Math.Exp(-Pace * Math.Log(WireSize.Stiffness(wire)) * rate * visit * Interval);
            return new ToyArch(
            [
                .. arch.Distances.Select(off => off <= Play(wire) ? off : Play(wire) + (off - Play(wire)) * share),
            ]);
        }

        public bool IsLast(int visit, double rate) => rate * visit * Interval > 40;
    }
}
