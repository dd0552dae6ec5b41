namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Does it spring back? A permanent set is lost force, and a shape that nobody ordered.</summary>
internal sealed class SpringsBack : IVisitRule
{
    public const string Name = "springs-back";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (!wire.Engaged)
            return null;

        string place = wire.MaxStrainNear >= 0 ? " near " + view.Tooth(wire.MaxStrainNear) : "";
        if (wire.Set is not { } set)
        {
            return new Finding(
                Name, FindingKind.Against,
                $"Would stay bent{place}: strain {VisitView.Strain(wire.MaxStrain)}, elastic up to "
                + $"{VisitView.Strain(wire.Wire.ElasticStrainLimit)}.",
                wire.MaxStrain, wire.Wire.ElasticStrainLimit, "1");
        }

        if (set > view.Policy.LargestSet)
        {
            return new Finding(
                Name, FindingKind.Against,
                $"Would stay bent by {VisitView.Figure(set, "0.00")} mm{place}; up to "
                + $"{VisitView.Figure(view.Policy.LargestSet, "0.00")} mm is let pass.",
                set, view.Policy.LargestSet, "mm");
        }

        string how = wire.Wire.InitialModulusOnly && wire.MaxStrain > wire.Wire.ElasticStrainLimit
            ? "Springs back; it works on its plateau."
            : set > 0 ? $"Springs back but for {VisitView.Figure(set, "0.00")} mm." : "Springs back.";
        return new Finding(Name, FindingKind.For, how, set, view.Policy.LargestSet, "mm");
    }
}
