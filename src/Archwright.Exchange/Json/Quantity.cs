namespace Archwright.Exchange.Json;

/// <summary>A figure of a file: how it is called, and outside which limits it must be a slip.</summary>
/// <param name="Name">As in "the <i>height</i> of the slot".</param>
/// <param name="Unit">As shown; empty for a bare number.</param>
/// <param name="Low">Smallest figure accepted.</param>
/// <param name="High">Largest figure accepted.</param>
/// <param name="Remedy">How to mend one that is not.</param>
/// <remarks>The limits catch slips of the pen and of the unit (inches for millimetres, micrometres), not unusual
/// appliances: they are far outside of what is made. The schemas carry the same limits; a test compares them.</remarks>
internal sealed record Quantity(string Name, string Unit, double Low, double High, string Remedy)
{
    /// <summary>"between 0.2 and 2 mm".</summary>
    public string Range => $"between {Problems.Say.Number(Low)} and {WithUnit(Problems.Say.Number(High))}";

    /// <summary>A figure with its unit.</summary>
    public string WithUnit(string figure) => Unit.Length == 0 ? figure : figure + " " + Unit;
}
