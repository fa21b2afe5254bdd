namespace Trier.Trials.Tastings.Serving;

/// <summary>How many samples a palate takes at one sitting.</summary>
public static class Sittings
{
    /// <summary>Samples at one sitting before mouths tire: four to six by the words of hosts (common practice, no source).</summary>
    public const int SamplesAtOnce = 6;

    /// <summary>Sittings a number of samples asks for, each as even as may be.</summary>
    /// <param name="samples">0 or more.</param>
    public static int For(int samples) => Math.Max(1, (samples + SamplesAtOnce - 1) / SamplesAtOnce);
}
