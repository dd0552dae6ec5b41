namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Is it at hand?</summary>
internal sealed class IsInStock : IVisitRule
{
    public const string Name = "stock";

    public Finding? Judge(WireFigures wire, VisitView view) =>
        !view.Question.ChoiceIsStock || wire.IsPresent ? null
        : view.Question.Choice.Any(one => one.Id == wire.Wire.Id)
            ? new Finding(Name, FindingKind.For, "In stock.")
            : new Finding(Name, FindingKind.Against, "Not in stock.");
}
