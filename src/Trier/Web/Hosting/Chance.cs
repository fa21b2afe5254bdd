using System.Security.Cryptography;
using Trier.Statistics.Randomness;

namespace Trier.Web.Hosting;

/// <summary>Where the shell gets the chance that it hands to the core.</summary>
internal static class Chance
{
    /// <summary>A seed nobody can guess.</summary>
    public static Seed Draw() => new(BitConverter.ToUInt64(RandomNumberGenerator.GetBytes(8)));
}
