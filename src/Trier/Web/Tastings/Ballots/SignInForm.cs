using Trier.Trials.Tastings;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Ballots;

/// <summary>Reads what a taster says before the first bite.</summary>
internal static class SignInForm
{
    public static SignIn Read(Posted posted, DayBook book) => new(
        posted.Text("taste") switch
        {
            "milder" => DeclaredTaste.Milder,
            "stronger" => DeclaredTaste.Stronger,
            "no-idea" => DeclaredTaste.NoIdea,
            _ => null,
        },
        posted.Ticked("cold"),
        posted.Ticked("junior"),
        Agreed(posted),
        HouseLine.Holding(book, posted.All("no")),
        posted.Ticked("other"));

    public static Agreed Agreed(Posted posted) => new(posted.Ticked("named"), posted.Ticked("quoted"));
}
