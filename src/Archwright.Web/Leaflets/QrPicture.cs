using System.Text;
using QRCoder;

namespace Archwright.Web.Leaflets;

/// <summary>An address as a pattern that a telephone reads.</summary>
/// <param name="Path">Its dark fields, as a path of unit squares.</param>
/// <param name="Size">Fields a side, with the quiet border.</param>
public sealed record QrPicture(string Path, int Size)
{
    /// <summary>The pattern of an address; a seventh of it may be soiled.</summary>
    public static QrPicture Of(string address)
    {
        using var generator = new QRCodeGenerator();
        using QRCodeData data = generator.CreateQrCode(address, QRCodeGenerator.ECCLevel.M);
        var path = new StringBuilder();
        for (int y = 0; y < data.ModuleMatrix.Count; y++)
        {
            for (int x = 0; x < data.ModuleMatrix.Count; x++)
            {
                if (data.ModuleMatrix[y][x])
                    path.Append('M').Append(x).Append(' ').Append(y).Append("h1v1h-1z");
            }
        }

        return new QrPicture(path.ToString(), data.ModuleMatrix.Count);
    }
}
