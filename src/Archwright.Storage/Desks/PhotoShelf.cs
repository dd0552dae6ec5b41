using System.Security.Cryptography;
using Archwright.Practice.Rules;
using Archwright.Practice.Visits;

namespace Archwright.Storage.Desks;

/// <summary>Photographs, as files in a folder of the practice. A file is named by its own digest, so that it is never
/// overwritten by another; the visit holds name and digest, and what was changed on disk is found out.</summary>
/// <param name="folder">The folder; made when the first photograph comes.</param>
public sealed class PhotoShelf(string folder)
{
    /// <summary>Keeps a photograph. It lies whole in the folder before anybody learns its name.</summary>
    /// <param name="source">The picture.</param>
    /// <param name="view">What it shows.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="RuleBrokenException">No JPEG, PNG or WebP, or too large.</exception>
    public async Task<Photo> KeepAsync(Stream source, string view, CancellationToken cancellation = default)
    {
        Directory.CreateDirectory(folder);
        string unfinished = Path.Combine(folder, $"{Guid.NewGuid():N}.part");
        try
        {
            string digest;
            PhotographKind kind;
            await using (FileStream file = File.Create(unfinished))
            {
                await CopyAsync(source, file, cancellation);
                kind = await CheckAsync(file, cancellation);
                file.Position = 0;
                digest = Convert.ToHexStringLower(await SHA256.HashDataAsync(file, cancellation));
                file.Flush(flushToDisk: true);
            }

            string name = $"{digest}.{Ending(kind)}";
            File.Move(unfinished, Path.Combine(folder, name), overwrite: true); // the same digest: the same picture
            return new Photo(name, view, digest);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }

    /// <summary>Reads a photograph that a visit names.</summary>
    /// <returns>Its bytes and media type; null when the file is not there or is not the one that was added.</returns>
    public async Task<(byte[] Bytes, string MediaType)?> ReadAsync(
        Photo photo, CancellationToken cancellation = default)
    {
        string path = Path.Combine(folder, Path.GetFileName(photo.File));
        if (!File.Exists(path))
            return null;

        byte[] bytes = await File.ReadAllBytesAsync(path, cancellation);
        return Photograph.KindOf(bytes) is { } kind && Convert.ToHexStringLower(SHA256.HashData(bytes)) == photo.Sha256
            ? (bytes, $"image/{kind.ToString().ToLowerInvariant()}")
            : null;
    }

    /// <summary>Drops a photograph that no visit names any more.</summary>
    internal void Drop(string file) => File.Delete(Path.Combine(folder, Path.GetFileName(file)));

    // Stops at the first byte too many, whatever size was announced.
    private static async Task CopyAsync(Stream source, FileStream file, CancellationToken cancellation)
    {
        byte[] piece = new byte[65536];
        int read;
        while (file.Length <= Photograph.LargestBytes && (read = await source.ReadAsync(piece, cancellation)) > 0)
            await file.WriteAsync(piece.AsMemory(0, read), cancellation);
    }

    private static async Task<PhotographKind> CheckAsync(FileStream file, CancellationToken cancellation)
    {
        byte[] head = new byte[Math.Min(Photograph.HeadBytes, file.Length)];
        file.Position = 0;
        await file.ReadExactlyAsync(head, cancellation);
        return Photograph.Check(head, file.Length);
    }

    private static string Ending(PhotographKind kind) => kind switch
    {
        PhotographKind.Jpeg => "jpg",
        PhotographKind.Png => "png",
        _ => "webp",
    };
}
