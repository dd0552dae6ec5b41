using ScottPlot;
using SkiaSharp;

namespace Archwright.Cli.Pictures;

/// <summary>Draws as pixels, at twice the nominal size: sharp on paper and on dense screens.</summary>
internal sealed class PngCanvas : Canvas, IDisposable
{
    /// <summary>Pixels of the image for one nominal pixel.</summary>
    public const int Scale = 2;

    private readonly int _scale;
    private readonly SKSurface _surface;
    private readonly SKCanvas _canvas;

    public PngCanvas(double width, double height, int scale = Scale)
        : base(width, height)
    {
        _scale = scale;
        var info = new SKImageInfo((int)Math.Ceiling(width * scale), (int)Math.Ceiling(height * scale));
        _surface = SKSurface.Create(info)
            ?? throw new InvalidOperationException("There is not enough memory for the picture.");
        _canvas = _surface.Canvas;
        _canvas.Scale(scale);
    }

    public override IDisposable Part(string id, string title) => new Nothing();

    public override void Line(ReadOnlySpan<Spot> spots, Pen pen)
    {
        using SKPath path = PathOf(spots);
        using SKPaint paint = PaintOf(pen);
        _canvas.DrawPath(path, paint);
    }

    public override void Shape(ReadOnlySpan<Spot> corners, Ink? fill, Pen? edge, double opacity = 1)
    {
        using SKPath path = PathOf(corners);
        path.Close();
        byte alpha = (byte)Math.Round(255 * opacity);
        if (fill is { } ink)
        {
            using SKPaint paint = PaintOf(ink, alpha);
            _canvas.DrawPath(path, paint);
        }

        if (edge is not null)
        {
            using SKPaint paint = PaintOf(edge, alpha);
            _canvas.DrawPath(path, paint);
        }
    }

    public override void Disc(Spot middle, double radius, Ink? fill, Pen? edge)
    {
        if (fill is { } ink)
        {
            using SKPaint paint = PaintOf(ink, 255);
            _canvas.DrawCircle((float)middle.X, (float)middle.Y, (float)radius, paint);
        }

        if (edge is not null)
        {
            using SKPaint paint = PaintOf(edge);
            _canvas.DrawCircle((float)middle.X, (float)middle.Y, (float)radius, paint);
        }
    }

    public override void Text(Spot spot, string text, TextStyle style)
    {
        using var font = new SKFont(Typeface.Face(style.Bold), (float)style.Size) { Subpixel = true };
        SKTextAlign align = style.Anchor switch
        {
            Anchor.Middle => SKTextAlign.Center,
            Anchor.End => SKTextAlign.Right,
            _ => SKTextAlign.Left,
        };
        if (style.Halo)
        {
            using SKPaint rim = PaintOf(new Pen(Colours.Paper, 3));
            _canvas.DrawText(text, (float)spot.X, (float)spot.Y, align, font, rim);
        }

        using SKPaint paint = PaintOf(style.Ink, 255);
        _canvas.DrawText(text, (float)spot.X, (float)spot.Y, align, font, paint);
    }

    public override void Chart(Plot chart, Box box)
    {
        _canvas.Save();
        _canvas.Translate((float)box.Left, (float)box.Top);
        _canvas.ClipRect(new SKRect(0, 0, (int)box.Width, (int)box.Height)); // a chart clears all it can reach
        chart.Render(_canvas, new PixelRect(0, (float)(int)box.Width, (float)(int)box.Height, 0));
        _canvas.Restore();
    }

    public override void Save(Stream stream)
    {
        using SKImage image = _surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
        data.SaveTo(stream);
    }

    /// <summary>The picture as red, green, blue and opacity, a byte each, row by row from the top.</summary>
    public byte[] Pixels()
    {
        var info = new SKImageInfo(
            (int)Math.Ceiling(Width * _scale), (int)Math.Ceiling(Height * _scale), SKColorType.Rgba8888,
            SKAlphaType.Unpremul);
        using SKImage image = _surface.Snapshot();
        using var bitmap = new SKBitmap(info);
        if (!image.ReadPixels(info, bitmap.GetPixels(), info.RowBytes, 0, 0))
            throw new InvalidOperationException("The picture cannot be read back.");

        return bitmap.Bytes;
    }

    public void Dispose() => _surface.Dispose();

    private static SKPath PathOf(ReadOnlySpan<Spot> spots)
    {
        var path = new SKPath();
        for (int i = 0; i < spots.Length; i++)
        {
            if (i == 0)
                path.MoveTo((float)spots[i].X, (float)spots[i].Y);
            else
                path.LineTo((float)spots[i].X, (float)spots[i].Y);
        }

        return path;
    }

    private static SKPaint PaintOf(Ink ink, byte alpha) => new()
    {
        IsAntialias = true, Style = SKPaintStyle.Fill, Color = new SKColor(ink.Red, ink.Green, ink.Blue, alpha),
    };

    private static SKPaint PaintOf(Pen pen, byte alpha = 255)
    {
        var paint = new SKPaint
        {
            IsAntialias = true,
            Style = SKPaintStyle.Stroke,
            Color = new SKColor(pen.Ink.Red, pen.Ink.Green, pen.Ink.Blue, alpha),
            StrokeWidth = (float)pen.Width,
            StrokeJoin = SKStrokeJoin.Round,
            StrokeCap = SKStrokeCap.Round,
        };
        if (pen.Dash > 0)
            paint.PathEffect = SKPathEffect.CreateDash([(float)pen.Dash, (float)pen.Dash], 0);
        return paint;
    }

    private sealed class Nothing : IDisposable
    {
        public void Dispose()
        {
        }
    }
}
