using System.Globalization;

namespace Archwright.Cli.Units;

/// <summary>The unit in which a practice reads forces; moments follow it.</summary>
internal sealed class ForceUnit
{
    private readonly double _perNewton;
    private readonly int _decimals;

    private ForceUnit(string symbol, double perNewton, int decimals)
    {
        Symbol = symbol;
        _perNewton = perNewton;
        _decimals = decimals;
    }

    /// <summary>Centinewton, a hundredth of a newton.</summary>
    public static ForceUnit Centinewton { get; } = new("cN", 100, 0);

    /// <summary>Gram-force: 9.80665 mN by definition (standard gravity).</summary>
    public static ForceUnit GramForce { get; } = new("gf", 1000 / 9.80665, 0);

    /// <summary>Newton.</summary>
    public static ForceUnit Newton { get; } = new("N", 1, 2);

    /// <summary>All, in the order of the help.</summary>
    public static IReadOnlyList<ForceUnit> All { get; } = [Centinewton, GramForce, Newton];

    /// <summary>As it is written after a force: cN, gf or N.</summary>
    public string Symbol { get; }

    /// <summary>As it is written after a moment: cN·mm, gf·mm or N·mm.</summary>
    public string MomentSymbol => Symbol + "·mm";

    /// <summary>The unit with this symbol, in any case; null when there is none.</summary>
    public static ForceUnit? Find(string symbol) =>
        All.FirstOrDefault(unit => string.Equals(unit.Symbol, symbol, StringComparison.OrdinalIgnoreCase));

    /// <summary>A force in this unit.</summary>
    /// <param name="newtons">[N]</param>
    public double Of(double newtons) => newtons * _perNewton;

    /// <summary>A figure without its unit; true minus sign, no "-0".</summary>
    /// <param name="newtons">A force [N] or a moment [N·mm].</param>
    public string Figure(double newtons) => Signed(Of(newtons), _decimals);

    /// <summary>A force with its unit.</summary>
    /// <param name="newtons">[N]</param>
    public string Force(double newtons) => $"{Figure(newtons)} {Symbol}";

    /// <summary>A moment with its unit.</summary>
    /// <param name="newtonMillimetres">[N·mm]</param>
    public string Moment(double newtonMillimetres) => $"{MomentFigure(newtonMillimetres)} {MomentSymbol}";

    /// <summary>A moment without its unit: one decimal less than a force in newtons.</summary>
    /// <param name="newtonMillimetres">[N·mm]</param>
    public string MomentFigure(double newtonMillimetres) =>
        Signed(Of(newtonMillimetres), Math.Max(0, _decimals - 1));

    private static string Signed(double value, int decimals)
    {
        double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        if (rounded == 0)
            rounded = 0;

        return rounded.ToString("F" + decimals, CultureInfo.InvariantCulture).Replace('-', '−');
    }
}
