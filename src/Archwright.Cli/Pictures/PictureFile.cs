namespace Archwright.Cli.Pictures;

/// <summary>Writes pictures as the file's ending says.</summary>
internal static class PictureFile
{
    /// <summary>Endings that can be written.</summary>
    public static IReadOnlyList<string> Endings { get; } = [".svg", ".png"];

    /// <summary>Whether the ending of a file is one of <see cref="Endings"/>.</summary>
    public static bool CanWrite(string file) =>
        Endings.Contains(Path.GetExtension(file), StringComparer.OrdinalIgnoreCase);

    /// <summary>Draws a picture and writes it.</summary>
    /// <param name="file">Path; ends in .svg or .png.</param>
    /// <param name="height">[px]; the width is that of the sheet.</param>
    /// <param name="title">Title, for screen readers.</param>
    /// <param name="description">What there is to see, for screen readers.</param>
    /// <param name="draw">Draws it.</param>
    public static void Write(string file, double height, string title, string description, Action<Canvas> draw)
    {
        using var bytes = new MemoryStream();
        if (Path.GetExtension(file).Equals(".svg", StringComparison.OrdinalIgnoreCase))
        {
            var canvas = new SvgCanvas(Sheet.Width, height, title, description);
            draw(canvas);
            canvas.Save(bytes);
        }
        else
        {
            using var canvas = new PngCanvas(Sheet.Width, height);
            draw(canvas);
            canvas.Save(bytes);
        }

        File.WriteAllBytes(file, bytes.ToArray());
    }
}
