using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;

namespace Archwright.Dentition.Prescriptions;

/// <summary>A nominal slot: opening and depth. Real slots run large; a measured one may be given in its
/// place.</summary>
public sealed record SlotSize
{
    private static readonly Lazy<IReadOnlyList<TableRow>> Rows = new(() => Table.Embedded("Prescriptions/slots.csv"));

    private SlotSize(string code)
    {
        Code = code;
        StatedHeight = Figure(code, "height");
        StatedDepth = Figure(code, "depth");
    }

    /// <summary>0.018 in.</summary>
    public static SlotSize In018 { get; } = new("018");

    /// <summary>0.022 in.</summary>
    public static SlotSize In022 { get; } = new("022");

    /// <summary>"018" or "022".</summary>
    public string Code { get; }

    /// <summary>Opening as stated, with its source [in].</summary>
    public Sourced StatedHeight { get; }

    /// <summary>Depth as stated, with its source [in].</summary>
    public Sourced StatedDepth { get; }

    /// <summary>Occlusogingival opening [mm].</summary>
    public double Height => Millimetres.FromInches(StatedHeight.Value);

    /// <summary>From base to lid [mm].</summary>
    public double Depth => Millimetres.FromInches(StatedDepth.Value);

    private static Sourced Figure(string code, string quantity)
    {
        TableRow row = Rows.Value.FirstOrDefault(
            one => one.Required("slot") == code && one.Required("quantity") == quantity)
            ?? throw new TableException($"Prescriptions/slots.csv: slot {code} has no '{quantity}'. Add the row.");
        Sourced figure = row.Figure();
        return figure.Unit == "in"
            ? figure
            : throw row.Fault($"the figure is given in {figure.Unit}.", "Slots are stated in inches (in).");
    }
}
