using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;

namespace Trier.Web.Tastings.Board;

/// <summary>What was noted, in one sentence.</summary>
internal static class DeedWords
{
    public static string Of(DayBook book, DayEvent happened) => happened switch
    {
        TasterCameLate late => $"{book.Taster(late.Taster)!.Name} came late.",
        TasterLeft left => $"{book.Taster(left.Taster)!.Name} left. What was said is kept.",
        NotesCompared compared => $"{string.Join(" and ", compared.Tasters.Select(taster => book.Taster(taster)!.Name))} compared notes. Their ballots stay; the verdict will say what changes without them.",
        IdentitySpoken spoken => $"What sample {spoken.Code} is was said aloud.",
        CodesSwapped swapped => $"{swapped.First} and {swapped.Second} changed places on {book.Taster(swapped.Taster)!.Name}’s plate.",
        KeyLearned learned => $"{book.Taster(learned.Taster)!.Name} knows the key. A ballot of theirs is shown apart from now on.",
        SampleDropped fallen => $"A sample of {book.Taster(fallen.Taster)!.Name} fell. {(fallen.Replaced ? "Another was brought." : "The plate goes on without it.")}",
        WheelsTakenOut => "The wheels left the cave.",
        TasterLetGo gone => $"{book.Taster(gone.Taster)!.Name} was taken off the list.",
        _ => "Noted.",
    };
}
