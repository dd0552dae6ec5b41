using ScottPlot;

namespace Archwright.Cli.Pictures;

/// <summary>A point on the paper: right and down from the upper left corner [px].</summary>
internal readonly record struct Spot(double X, double Y)
{
    public static Spot operator +(Spot a, Spot b) => new(a.X + b.X, a.Y + b.Y);

    public static Spot operator -(Spot a, Spot b) => new(a.X - b.X, a.Y - b.Y);

    public static Spot operator *(Spot a, double b) => new(a.X * b, a.Y * b);

    /// <summary>Length of the way from the origin [px].</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);
}

/// <summary>An upright rectangle on the paper [px].</summary>
internal readonly record struct Box(double Left, double Top, double Width, double Height)
{
    public double Right => Left + Width;

    public double Bottom => Top + Height;

    public Spot Middle => new(Left + Width / 2, Top + Height / 2);

    /// <summary>This box made smaller by a margin on each side.</summary>
    public Box Inset(double left, double top, double right, double bottom) =>
        new(Left + left, Top + top, Width - left - right, Height - top - bottom);

    /// <summary>Whether the two share some paper.</summary>
    public bool Overlaps(Box other) =>
        Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}

/// <summary>A colour as <c>#rrggbb</c>.</summary>
internal readonly record struct Ink(string Hex)
{
    public byte Red => Convert.ToByte(Hex.Substring(1, 2), 16);

    public byte Green => Convert.ToByte(Hex.Substring(3, 2), 16);

    public byte Blue => Convert.ToByte(Hex.Substring(5, 2), 16);
}

/// <summary>How a line is drawn.</summary>
/// <param name="Ink">Colour.</param>
/// <param name="Width">[px]</param>
/// <param name="Dash">Length of dash and gap [px]; 0 for a full line.</param>
internal sealed record Pen(Ink Ink, double Width, double Dash = 0);

/// <summary>Which point of a line of text stands at the given spot.</summary>
internal enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>How text is set.</summary>
/// <param name="Size">[px]</param>
/// <param name="Ink">Colour.</param>
/// <param name="Bold">Bold face.</param>
/// <param name="Anchor">What stands at the spot.</param>
/// <param name="Halo">Whether a rim of paper keeps the text clear of lines below it.</param>
internal sealed record TextStyle(
    double Size, Ink Ink, bool Bold = false, Anchor Anchor = Anchor.Start, bool Halo = false);

/// <summary>Paper to draw on. Two kinds draw the same picture: SVG, and pixels.</summary>
internal abstract class Canvas(double width, double height)
{
    /// <summary>[px]</summary>
    public double Width { get; } = width;

    /// <summary>[px]</summary>
    public double Height { get; } = height;

    /// <summary>Starts a part of the picture that has a name, for screen readers; end it by disposing.</summary>
    public abstract IDisposable Part(string id, string title);

    /// <summary>An open line.</summary>
    public abstract void Line(ReadOnlySpan<Spot> spots, Pen pen);

    /// <summary>A closed outline, filled, stroked or both.</summary>
    public abstract void Shape(ReadOnlySpan<Spot> corners, Ink? fill, Pen? edge, double opacity = 1);

    /// <summary>A disc.</summary>
    public abstract void Disc(Spot middle, double radius, Ink? fill, Pen? edge);

    /// <summary>One line of text; the spot lies on its base line.</summary>
    public abstract void Text(Spot spot, string text, TextStyle style);

    /// <summary>A chart in a box.</summary>
    public abstract void Chart(Plot chart, Box box);

    /// <summary>A filled rectangle.</summary>
    public void Fill(Box box, Ink fill, Pen? edge = null) =>
        Shape(
            [new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)],
            fill,
            edge);

    /// <summary>Writes the finished picture.</summary>
    public abstract void Save(Stream stream);
}
