namespace Archwright.Web.Printing;

/// <summary>The typeface that travels with the program: Inter, for Latin, Greek and Cyrillic.</summary>
public static class BundledFaces
{
    private static readonly Lazy<byte[]> File = new(Load);

    /// <summary>The bytes of a face.</summary>
    /// <param name="postScriptName">Its name inside the font: "Inter-Regular".</param>
    /// <exception cref="InvalidOperationException">There is none of that name.</exception>
    public static byte[] Bytes(string postScriptName) =>
        TrueTypeFaces.Find(File.Value, postScriptName).ToArray();

    internal static byte[] Load()
    {
        using Stream stream = typeof(BundledFaces).Assembly.GetManifestResourceStream("inter.bin")
            ?? throw new InvalidOperationException("The typeface is missing from the program.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
