using System.CommandLine;

namespace Trier.Commands.Makes;

/// <summary>A wheel as typed on the command line: 16x8cm or 6.3x3.1in, diameter first.</summary>
internal sealed record TypedWheel(double DiameterCentimetres, double HeightCentimetres)
{
    public static Option<TypedWheel?> Option() => new("--wheel")
    {
        Description = "Diameter and height of the wheel.",
        HelpName = "16x8cm",
        CustomParser = result =>
        {
            var text = result.Tokens[^1].Value;
            var parts = text.Split('x', StringSplitOptions.TrimEntries);
            var unit = parts.Length == 2 ? parts[1].TrimStart('0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', ',', ' ') : "";
            if (parts.Length == 2 && Measured.Length.Read(char.IsLetter(parts[0].LastOrDefault()) ? parts[0] : parts[0] + unit) is { } diameter && Measured.Length.Read(parts[1]) is { } height) return new(diameter, height);
            result.AddError($"--wheel {text}: write diameter, x, height, as in --wheel 16x8cm.");
            return null;
        },
    };
}
