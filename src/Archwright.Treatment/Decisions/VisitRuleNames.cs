using Archwright.Treatment.Decisions.Rules;

namespace Archwright.Treatment.Decisions;

/// <summary>Names of the rules of a visit, as <see cref="Finding.Rule"/> has them.</summary>
public static class VisitRuleNames
{
    /// <summary>Can it be engaged at every slot?</summary>
    public const string GoesIn = Rules.GoesIn.Name;

    /// <summary>Does it spring back?</summary>
    public const string SpringsBack = Rules.SpringsBack.Name;

    /// <summary>Is every tooth within its ceilings?</summary>
    public const string Ceilings = WithinCeilings.Name;

    /// <summary>Does the wire in place still do anything?</summary>
    public const string StillWorks = Rules.StillWorks.Name;

    /// <summary>Is the step one that trials have tried?</summary>
    public const string Step = StepIsNotTooFar.Name;

    /// <summary>What does it deliver by the next visit?</summary>
    public const string Delivers = Rules.Delivers.Name;

    /// <summary>How does it feel?</summary>
    public const string Comfort = IsBearable.Name;

    /// <summary>Is it at hand?</summary>
    public const string Stock = IsInStock.Name;

    /// <summary>Do alerts speak against it?</summary>
    public const string Alerts = SuitsThePatient.Name;
}
