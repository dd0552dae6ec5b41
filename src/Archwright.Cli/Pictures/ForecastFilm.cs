using System.Globalization;
using Archwright.Cli.Tables;
using Archwright.Dentition.Outlines;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Gif;
using SixLabors.ImageSharp.PixelFormats;

namespace Archwright.Cli.Pictures;

/// <summary>The arch over the weeks as a moving picture of its biting surfaces.</summary>
internal static class ForecastFilm
{
    private const double Width = 720;
    private const double Height = 680;
    private const int MostPictures = 60;
    private const int Hundredths = 15;
    private const int LastHundredths = 250;

    /// <summary>Whether the ending of a file is one that can be written.</summary>
    public static bool CanWrite(string file) =>
        Path.GetExtension(file).Equals(".gif", StringComparison.OrdinalIgnoreCase);

    /// <summary>Draws it into a file.</summary>
    public static void Write(string path, ForecastAnswer answer, ToothNotation notation)
    {
        ForecastDay[] days = Chosen(answer.Forecast);
        Projection view = View(answer, days[0]);
        using Image<Rgba32> film = Drawn(answer, days[0], view, notation);
        film.Metadata.GetGifMetadata().RepeatCount = 0;
        Last(film, days.Length == 1 ? LastHundredths : Hundredths);
        for (int i = 1; i < days.Length; i++)
        {
            using Image<Rgba32> picture = Drawn(answer, days[i], view, notation);
            Last(picture, i == days.Length - 1 ? LastHundredths : Hundredths);
            film.Frames.AddFrame(picture.Frames.RootFrame);
        }

        film.SaveAsGif(path);
    }

    // All days, or as many as are bearable, evenly; always the last one.
    private static ForecastDay[] Chosen(Forecast forecast)
    {
        int last = forecast.Days.Length - 1;
        int pictures = Math.Min(MostPictures, last + 1);
        return [.. Enumerable.Range(0, pictures).Select(i => forecast.Days[i * last / Math.Max(1, pictures - 1)])];
    }

    private static void Last(Image<Rgba32> picture, int hundredths) =>
        picture.Frames.RootFrame.Metadata.GetGifMetadata().FrameDelay = hundredths;

    private static Image<Rgba32> Drawn(
        ForecastAnswer answer, ForecastDay day, Projection view, ToothNotation notation)
    {
        using var canvas = new PngCanvas(Width, Height, scale: 1);
        canvas.Fill(new Box(0, 0, Width, Height), Colours.Paper);
        canvas.Text(new Spot(20, 34), Heading(day), new TextStyle(22, Colours.Text, Bold: true));
        canvas.Text(new Spot(20, Height - 34), CaseWords.WireAndSlots(answer.Case), new TextStyle(13, Colours.Quiet));
        canvas.Text(new Spot(20, Height - 14), Cautions.Decision, new TextStyle(13, Colours.Quiet));
        for (int i = 0; i < day.Teeth.Length; i++)
            Tooth(canvas, view, answer.Case, i, day.Teeth[i].Slot, notation);

        return Image.LoadPixelData<Rgba32>(canvas.Pixels(), (int)Width, (int)Height);
    }

    private static string Heading(ForecastDay day)
    {
        string week = $"Week {(day.Day / 7.0).ToString("0.0", CultureInfo.InvariantCulture)}";
        return day.Irregularity is double index
            ? $"{week}: irregularity {index.ToString("0.0", CultureInfo.InvariantCulture)} mm"
            : week;
    }

    private static void Tooth(
        PngCanvas canvas, Projection view, CaseFile file, int i, SlotFrame place, ToothNotation notation)
    {
        ToothNumber tooth = file.Teeth[i]!.Value;
        Slot slot = file.Arrangement.Slots[i];
        if (Crowns.Of(tooth) is { } crown)
        {
            canvas.Shape([.. CrownShape.FromBelow(crown, slot.Rest).Select(view.At)], null,
                new Pen(Colours.Ghost, 1, Dash: 4));
            canvas.Shape([.. CrownShape.FromBelow(crown, place).Select(view.At)], Colours.Crown,
                new Pen(Colours.CrownEdge, 1.3), opacity: 0.85);
            Spot middle = view.At(place.Centre - (crown.SlotToFace + crown.Depth / 2) * place.Outward);
            canvas.Text(middle + new Spot(0, 5), tooth.Show(notation),
                new TextStyle(13, Colours.Text, Bold: true, Anchor.Middle));
        }

        Vector3 half = slot.Width / 2 * place.Along;
        if (slot.IsBonded)
            canvas.Line([view.At(place.Centre - half), view.At(place.Centre + half)], new Pen(Colours.Slot, 4));
    }

    // One projection for all pictures, so that what moves on the picture are the teeth.
    private static Projection View(ForecastAnswer answer, ForecastDay first)
    {
        (Vector3 right, Vector3 up) = Projection.Occlusal(answer.Case.Jaw == CaseFile.Upper);
        var plain = new Projection(default, 1, right, up);
        Spot[] spots =
        [
            .. first.Teeth.SelectMany((tooth, i) => Crowns.Of(tooth.Tooth) is { } crown
                ? CrownShape.FromBelow(crown, tooth.Slot)
                    .Concat(CrownShape.FromBelow(crown, answer.Case.Arrangement.Slots[i].Rest))
                : [tooth.Slot.Centre]).Select(plain.At),
        ];
        var extent = new Box(
            spots.Min(s => s.X), spots.Min(s => s.Y), spots.Max(s => s.X) - spots.Min(s => s.X),
            spots.Max(s => s.Y) - spots.Min(s => s.Y));
        Box room = new Box(0, 0, Width, Height).Inset(24, 56, 24, 60);
        double scale = Math.Min(room.Width / extent.Width, room.Height / extent.Height);
        return new Projection(room.Middle - extent.Middle * scale, scale, right, up);
    }
}
