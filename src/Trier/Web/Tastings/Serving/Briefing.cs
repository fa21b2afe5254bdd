namespace Trier.Web.Tastings.Serving;

/// <summary>What is read aloud before the first plate: about a minute at a calm pace (150 words a minute: common practice, no source).</summary>
internal static class Briefing
{
    public static IReadOnlyList<string> Lines { get; } =
    [
        "Welcome. There is no right answer today: the only question is what you like. The samples have numbers, and the numbers mean nothing.",
        "Taste in the order on your card, starting at the arrow. Take a bite, wait a moment, swallow it or use the cup, as you prefer. Then a sip of water and a bite of plain cracker, and half a minute of rest.",
        "Write down how much you like each one before you go on. You may go back to any sample while you put them in order, and two may share a place. If somebody asked you to order apples, you would do just that: best first.",
        "Until everybody is done: no words, no looks, no guessing aloud. Write first, talk after.",
        "If a sample is missing, or two look mixed up, raise a hand before you bite. If you cannot eat something, leave it. Take your time.",
    ];
}
