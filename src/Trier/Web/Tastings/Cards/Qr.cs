using System.Globalization;
using System.Text;
using QRCoder;

namespace Trier.Web.Tastings.Cards;

/// <summary>A QR code as one path of an SVG, so that it prints sharp at any size.</summary>
/// <param name="Size">Modules across, the quiet zone of four included.</param>
/// <param name="Path">The dark modules.</param>
public sealed record Qr(int Size, string Path)
{
    /// <summary>Draws a text. Error correction level M.</summary>
    /// <param name="text">The text, here an address.</param>
    public static Qr Of(string text)
    {
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var path = new StringBuilder();
        var rows = data.ModuleMatrix;
        for (var y = 0; y < rows.Count; y++)
        {
            for (var x = 0; x < rows[y].Count; x++)
            {
                var from = x;
                while (x < rows[y].Count && rows[y][x]) x++;
                if (x > from) path.Append(CultureInfo.InvariantCulture, $"M{from} {y}h{x - from}v1h-{x - from}z");
            }
        }

        return new(rows.Count, path.ToString());
    }
}
