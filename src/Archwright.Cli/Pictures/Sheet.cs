using Archwright.Cli.Running;
using Archwright.Cli.Units;

namespace Archwright.Cli.Pictures;

/// <summary>One page: heading, occlusal and frontal view to one scale, what to know first, forces as bars.</summary>
internal static class Sheet
{
    /// <summary>Nominal width of every picture [px].</summary>
    public const double Width = 1400;

    /// <summary>Free paper round everything [px].</summary>
    public const double Margin = 28;

    private const double HeadHeight = 92;
    private const double ViewsHeight = 620;
    private const double BarsHeight = 330;
    private const double NotesHeight = 92;
    private const double LongestArrow = 95;

    /// <summary>Share of a line that is filled: another typeface may be wider.</summary>
    private const double Spare = 0.92;

    /// <summary>Height of the whole page [px].</summary>
    public const double Height = HeadHeight + ViewsHeight + BarsHeight + NotesHeight + 2 * Margin;

    /// <summary>Height of a page with a ranking below its heading [px].</summary>
    public static double HeightWith(RankingPanel ranking) => Height + ranking.Height + Margin;

    /// <summary>Draws the page.</summary>
    /// <param name="canvas">Paper.</param>
    /// <param name="picture">The engaged wire.</param>
    /// <param name="ranking">Wires in rank order, drawn first; null for a single wire.</param>
    public static void Draw(Canvas canvas, ArchPicture picture, RankingPanel? ranking = null)
    {
        canvas.Fill(new Box(0, 0, Width, canvas.Height), Colours.Paper);
        Head(canvas, picture.Title, ranking is null ? picture.Subtitle : "");
        double top = HeadHeight;
        if (ranking is not null)
        {
            ranking.Draw(canvas, new Box(Margin, HeadHeight - 30, Width - 2 * Margin, ranking.Height));
            top += ranking.Height + Margin;
            canvas.Text(new Spot(Margin, top - 24), picture.Subtitle, new TextStyle(17, Colours.Text, Bold: true));
        }

        ForceScale forces = ForceScale.For(LargestForce(picture), LongestArrow, picture.Unit);
        var occlusal = new OcclusalPanel(picture, forces);
        var frontal = new FrontalPanel(picture, forces);
        var left = new Box(Margin, top, (Width - 3 * Margin) / 2, ViewsHeight);
        var right = left with { Left = left.Right + Margin };
        double scale = CommonScale(occlusal, frontal, left);

        Frame(canvas, left, occlusal.Heading);
        occlusal.Draw(canvas, left.Inset(12, 44, 12, 12), scale);

        Box face = right with { Height = Math.Min(frontal.ExtentAt(scale).Height + 120, ViewsHeight * 0.66) };
        Frame(canvas, face, frontal.Heading);
        frontal.Draw(canvas, face.Inset(12, 44, 12, 12), scale);

        var facts = new Box(right.Left, face.Bottom + 16, right.Width, ViewsHeight - face.Height - 16);
        Facts(canvas, picture, facts, occlusal, scale);
        var below = new Box(Margin, left.Bottom + 16, Width - 2 * Margin, BarsHeight);
        if (picture.CentreLine.IsEmpty)
            NoForces(canvas, below);
        else
            ForceBars.Draw(canvas, picture, below);
        Notes(canvas, picture, below.Bottom + 24);
    }

    private static void NoForces(Canvas canvas, Box box)
    {
        canvas.Text(new Spot(box.Left, box.Top + 18), "Force on every tooth",
            new TextStyle(17, Colours.Text, Bold: true));
        canvas.Text(new Spot(box.Left, box.Top + 48), "None is known: the wire is not in its slots.",
            new TextStyle(16, Colours.Heavy));
    }

    private static double LargestForce(ArchPicture picture) => picture.Teeth.Max(tooth => tooth.Force.Length);

    // The largest scale at which both views fit; arrows do not scale, hence the search.
    private static double CommonScale(OcclusalPanel occlusal, FrontalPanel frontal, Box box)
    {
        double low = 0.1;
        double high = 60;
        for (int i = 0; i < 40; i++)
        {
            double middle = (low + high) / 2;
            Box below = occlusal.ExtentAt(middle);
            Box face = frontal.ExtentAt(middle);
            bool fits = below.Width < box.Width - 110 && below.Height < box.Height - 110
                && face.Width < box.Width - 110 && face.Height < box.Height * 0.66 - 120;
            (low, high) = fits ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The heading of a page.</summary>
    internal static void Head(Canvas canvas, string title, string subtitle)
    {
        canvas.Text(new Spot(Margin, 44), title, new TextStyle(27, Colours.Text, Bold: true));
        if (subtitle.Length > 0)
            canvas.Text(new Spot(Margin, 72), subtitle, new TextStyle(16, Colours.Quiet));
    }

    private static void Frame(Canvas canvas, Box box, string heading)
    {
        canvas.Fill(box, Colours.Panel, new Pen(Colours.Hair, 1));
        canvas.Text(new Spot(box.Left + 16, box.Top + 28), heading, new TextStyle(17, Colours.Text, Bold: true));
    }

    private static void Facts(Canvas canvas, ArchPicture picture, Box box, OcclusalPanel view, double scale)
    {
        using IDisposable part = canvas.Part("facts", "What to know first");
        view.DrawScales(canvas, new Spot(box.Left + 16, box.Top + 34), scale);
        double y = Key(canvas, picture, new Spot(box.Left + 16, box.Top + 70)) + 14;
        var style = new TextStyle(16, Colours.Text);
        foreach (string line in picture.Findings)
            y = Lines(canvas, new Spot(box.Left + 16, y), line, box.Width - 32, style, 22) + 4;
    }

    private static void Notes(Canvas canvas, ArchPicture picture, double y)
    {
        using IDisposable part = canvas.Part("notes", "Cautions");
        Lines(canvas, new Spot(Margin, y), string.Join(" ", picture.Notes), Width - 2 * Margin,
            new TextStyle(14, Colours.Quiet), 20);
    }

    // The signs that occur in this picture, and what they mean.
    private static double Key(Canvas canvas, ArchPicture picture, Spot at)
    {
        var style = new TextStyle(14, Colours.Quiet);
        double y = at.Y;
        if (picture.Teeth.Any(tooth => tooth.IsAboveCeiling))
        {
            Marks.Arrow(canvas, new Spot(at.X, y - 5), new Spot(at.X + 30, y - 5), Colours.Heavy);
            canvas.Text(new Spot(at.X + 42, y), "! above the ceiling of the practice", style);
            y += 22;
        }

        if (picture.Teeth.Any(tooth => tooth.IsDisplaced && tooth.Crown is not null))
        {
            canvas.Line([new(at.X, y - 5), new(at.X + 30, y - 5)], new Pen(Colours.Ghost, 1.3, Dash: 4));
            canvas.Text(new Spot(at.X + 42, y), "where the tooth is to go", style);
            y += 22;
        }

        if (picture.Teeth.Any(tooth => !tooth.IsTied))
        {
            canvas.Fill(new Box(at.X, y - 9, 30, 7), Colours.Paper, new Pen(Colours.Slot, 1.2));
            canvas.Text(new Spot(at.X + 42, y), "slot that does not hold the wire", style);
            y += 22;
        }

        canvas.Text(new Spot(at.X, y), "A figure at an arrow is the part of the force that lies in that view.", style);
        return y + 20;
    }

    /// <summary>Sets a text on as many lines as it needs; returns the base line of what follows [px].</summary>
    internal static double Lines(
        Canvas canvas, Spot at, string text, double width, TextStyle style, double lineHeight)
    {
        string line = "";
        double y = at.Y;
        foreach (string word in Wrap.Words(text))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Typeface.WidthOf(longer, style.Size, style.Bold) > Spare * width)
            {
                canvas.Text(at with { Y = y }, line, style);
                y += lineHeight;
                longer = word;
            }

            line = longer;
        }

        canvas.Text(at with { Y = y }, line, style);
        return y + lineHeight;
    }
}
