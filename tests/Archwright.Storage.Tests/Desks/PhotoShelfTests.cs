using System.Security.Cryptography;
using Archwright.Practice.Rules;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;

namespace Archwright.Storage.Tests.Desks;

/// <summary>Photographs on disk. Rests on what was put in, and on SHA-256.</summary>
[Trait("basis", "law")]
public sealed class PhotoShelfTests : IDisposable
{
    private static readonly byte[] Jpeg = [0xFF, 0xD8, 0xFF, 0xE0, .. "invented picture"u8];

    private readonly string folder = Directory.CreateTempSubdirectory("archwright-photo-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_picture_is_read_back_byte_for_byte_under_its_digest()
    {
        var shelf = new PhotoShelf(folder);

        Photo photo = await shelf.KeepAsync(new MemoryStream(Jpeg), "front");

        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Jpeg)), photo.Sha256);
        (byte[] bytes, string media) = (await shelf.ReadAsync(photo))!.Value;
        Assert.Equal(Jpeg, bytes);
        Assert.Equal("image/jpeg", media);
    }

    [Fact]
    public async Task A_picture_that_was_changed_on_disk_is_not_shown()
    {
        var shelf = new PhotoShelf(folder);
        Photo photo = await shelf.KeepAsync(new MemoryStream(Jpeg), "front");

        await File.AppendAllTextAsync(Path.Combine(folder, photo.File), "x");

        Assert.Null(await shelf.ReadAsync(photo));
    }

    [Fact]
    public async Task What_is_no_picture_or_too_large_leaves_nothing_in_the_folder()
    {
        var shelf = new PhotoShelf(folder);
        byte[] large = new byte[Photograph.LargestBytes + 1];
        Jpeg.CopyTo(large, 0);

        await Assert.ThrowsAsync<RuleBrokenException>(
            () => shelf.KeepAsync(new MemoryStream("<script>"u8.ToArray()), "front"));
        await Assert.ThrowsAsync<RuleBrokenException>(() => shelf.KeepAsync(new MemoryStream(large), "front"));
        await Assert.ThrowsAsync<RuleBrokenException>(() => shelf.KeepAsync(new MemoryStream([]), "front"));

        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task No_name_leads_out_of_the_folder()
    {
        var shelf = new PhotoShelf(Path.Combine(folder, "inner"));
        await File.WriteAllBytesAsync(Path.Combine(folder, "secret.jpg"), Jpeg);

        Assert.Null(await shelf.ReadAsync(
            new Photo("../secret.jpg", "front", Convert.ToHexStringLower(SHA256.HashData(Jpeg)))));
    }
}
