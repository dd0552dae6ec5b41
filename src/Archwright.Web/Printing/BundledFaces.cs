namespace Archwright.Web.Printing;

/// <summary>The typefaces that travel with the program: Inter for Latin, Greek and Cyrillic, inside the file of its
/// package; Amiri for Arabic, each face a file of its own.</summary>
public static class BundledFaces
{
    private static readonly Lazy<byte[]> Inter = new(() => Load("inter.bin"));

    /// <summary>The bytes of a face.</summary>
    /// <param name="postScriptName">Its name inside the font: "Inter-Regular".</param>
    /// <exception cref="InvalidOperationException">There is none of that name.</exception>
    public static byte[] Bytes(string postScriptName) => TrueTypeFaces.Find(
        postScriptName.StartsWith("Amiri-", StringComparison.Ordinal) ? Load(postScriptName + ".ttf") : Inter.Value,
        postScriptName).ToArray();

    private static byte[] Load(string name)
    {
        using Stream stream = typeof(BundledFaces).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The typeface {name} is missing from the program.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
