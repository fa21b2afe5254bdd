using System.Collections.Immutable;

namespace Trier.Publishing.Bundles;

/// <summary>One file of a bundle.</summary>
/// <param name="Path">Its path, with forward slashes: "charts/rack-wide.svg".</param>
/// <param name="Bytes">What it holds.</param>
public sealed record BundleFile(string Path, ImmutableArray<byte> Bytes);
