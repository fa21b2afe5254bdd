using Trier.Web.Access;
using Trier.Web.Handbook;
using Trier.Web.Makes.Days;
using Trier.Web.Makes.Recipes;
using Trier.Web.Makes.Sheets;
using Trier.Web.Makes.Shelf;
using Trier.Web.Makes.Sums;
using Trier.Web.Plans;
using Trier.Web.Plans.Planning;
using Trier.Web.Tastings;
using Trier.Web.Tastings.Board;
using Trier.Web.Tastings.Cards;
using Trier.Web.Tastings.Helpers;
using Trier.Web.Tastings.Keys;
using Trier.Web.Tastings.Plates;
using Trier.Web.Tastings.Practice;
using Trier.Web.Tastings.Serving;
using Trier.Web.Verdicts;
using Trier.Web.Verdicts.Publishing;
using Trier.Web.Verdicts.Together;

namespace Trier.Web.Hosting;

/// <summary>All routes of the site, a station a file.</summary>
internal static class Routes
{
    public static void MapTrier(this WebApplication app)
    {
        app.MapErrors();
        app.MapSignIn();
        app.MapBallots();
        app.MapKeys();
        app.MapPublished();
        app.MapHelpers();
        app.MapHandbook();
        var maker = app.MapGroup("").RequireAuthorization(TrierHost.MakerPolicy);
        maker.MapTrials();
        maker.MapPlanning();
        maker.MapPlates();
        maker.MapBoard();
        maker.MapVerdict();
        maker.MapPublishing();
        maker.MapTogether();
        maker.MapCards();
        maker.MapRecipes();
        maker.MapSheets();
        maker.MapMakes();
        maker.MapSplits();
        maker.MapMeters();
        maker.MapShelf();
        maker.MapSums();
        maker.MapServing();
        maker.MapPractice();
    }
}
