namespace Archwright.Treatment.Decisions.Rules;

/// <summary>Is the step from the present wire one that trials have tried, and not past the working wire?</summary>
internal sealed class StepIsNotTooFar : IVisitRule
{
    public const string Name = "step";

    public Finding? Judge(WireFigures wire, VisitView view)
    {
        if (wire.IsPresent)
            return null;

        double stiffness = WireSize.Stiffness(wire.Wire);
        if (view.Question.WorkingWire is { } working && WireSize.Compare(working, wire.Wire) > 0)
        {
            return new Finding(
                Name, FindingKind.Against,
                $"Stiffer than the working wire, {working.Id}.", stiffness, WireSize.Stiffness(working), "N·mm²");
        }

        if (view.Question.Present is not { } present)
        {
            double first = view.Policy.FirstWireStiffness;
            return stiffness > first
                ? new Finding(
                    Name, FindingKind.Against,
                    $"Too stiff for a first wire: {VisitView.Figure(stiffness, "0")} N·mm², and first wires in trials "
                    + $"go up to {VisitView.Figure(first, "0")}.",
                    stiffness, first, "N·mm²")
                : null;
        }

        double ratio = stiffness / WireSize.Stiffness(present.Wire);
        double most = view.Policy.LargestStep;
        return ratio > most
            ? new Finding(
                Name, FindingKind.Against,
                $"Too far in one step: {VisitView.Figure(ratio)} times as stiff as the present {present.Wire.Id}; "
                + $"sequences in trials step up to {VisitView.Figure(most, "0.#")} times.",
                ratio, most, "1")
            : new Finding(
                Name, FindingKind.For,
                $"{VisitView.Figure(ratio)} times as stiff as the present {present.Wire.Id}.", ratio, most, "1");
    }
}
