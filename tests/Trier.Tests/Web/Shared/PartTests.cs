using Bunit;
using Trier.Web.Shared;

namespace Trier.Tests.Web.Shared;

/// <summary>Every part says in words what it shows in shape or tone.</summary>
public sealed class PartTests : BunitContext
{
    [Fact]
    public void A_station_says_in_words_whether_it_is_done_now_or_to_come()
    {
        var iron = Render<Iron>(p => p.Add(i => i.Stations,
        [
            new("Plan", "4 recipes", StationState.Done, "/plan"),
            new("Cut", "5 served", StationState.Now, "/cut"),
            new("Decide", "after the last ballot", StationState.ToCome),
        ]));

        var segments = iron.FindAll(".iron-segment").Select(segment => Spoken(segment.TextContent)).ToList();
        Assert.Equal(["Plan, done: 4 recipes", "now: Cut: 5 served", "Decide, to come: after the last ballot"], segments);
        Assert.Equal("step", iron.Find("a[href='/cut']").GetAttribute("aria-current"));
        Assert.Single(iron.FindAll("[aria-current]"));
        Assert.Equal(2, iron.FindAll("a").Count);
    }

    [Fact]
    public void A_plug_is_a_link_with_an_address_and_a_submit_button_without()
    {
        var link = Render<Plug>(p => p.Add(x => x.Href, "/plates").AddChildContent("Open the plating list"));
        Assert.Equal("Open the plating list", link.Find("a[href='/plates']").TextContent);

        var key = Render<Plug>(p => p.Add(x => x.Primary, true).Add(x => x.Name, "deed").Add(x => x.Value, "close").AddUnmatched("formaction", "/close").AddChildContent("Close the ballots"));
        var button = key.Find("button");
        Assert.Equal(["submit", "deed", "close", "/close"], [button.GetAttribute("type"), button.GetAttribute("name"), button.GetAttribute("value"), button.GetAttribute("formaction")]);
    }

    [Fact]
    public void A_blind_code_is_text_and_a_retired_one_says_so()
    {
        Assert.Equal("417", Render<BlindCodeMark>(p => p.Add(c => c.Code, "417")).Find(".blindcode").TextContent);
        Assert.Equal("304, retired", Render<BlindCodeMark>(p => p.Add(c => c.Code, "304").Add(c => c.Retired, true)).Find(".blindcode").TextContent);
    }

    [Fact]
    public void A_wheels_mark_stands_beside_its_name_and_is_not_read_itself()
    {
        var mark = Render<WheelMark>(p => p.Add(m => m.Look, new WheelLook(2)).Add(m => m.Name, "Thistle").Add(m => m.Sign, "W2"));
        Assert.Equal("Thistle W2", Spoken(mark.Find(".wheelmark").TextContent));
        Assert.Equal("true", mark.Find("svg").GetAttribute("aria-hidden"));
    }

    [Fact]
    public void The_seal_is_drawn_and_worded_differently_once_opened()
    {
        var closed = Render<Seal>(p => p.Add(s => s.Title, "Key sealed").Add(s => s.Detail, "known to Baltasar only"));
        var opened = Render<Seal>(p => p.Add(s => s.Title, "Key opened").Add(s => s.Opened, true));
        Assert.Equal("Key sealed known to Baltasar only", Spoken(closed.Find(".seal").TextContent));
        Assert.Equal("Key opened", Spoken(opened.Find(".seal").TextContent));
        Assert.NotEqual(closed.Find("svg").InnerHtml, opened.Find("svg").InnerHtml);
    }

    [Fact]
    public void A_caution_begins_with_its_word() =>
        Assert.Equal("Caution. Keep this page from every guest.", Spoken(Render<Caution>(p => p.AddChildContent("Keep this page from every guest.")).Find("[role=note]").TextContent));

    [Fact]
    public void Progress_always_has_its_words()
    {
        var shown = Render<CoreProgress>(p => p.Add(c => c.Done, 2).Add(c => c.Total, 6).Add(c => c.Here, true).Add(c => c.Words, "sample 3 of 6"));
        Assert.Equal("sample 3 of 6", shown.Find(".progress-words").TextContent);
        Assert.Equal((2, 1, 6), (shown.FindAll(".progress-in").Count, shown.FindAll(".progress-here").Count, shown.FindAll("i").Count));

        var spoken = Render<CoreProgress>(p => p.Add(c => c.Done, 2).Add(c => c.Total, 6).Add(c => c.Words, "sample 3 of 6").Add(c => c.WordsShown, false));
        Assert.Equal("sample 3 of 6", spoken.Find(".unseen").TextContent);
    }

    [Fact]
    public void Undo_is_a_post_and_its_key_says_what_it_takes_back()
    {
        var bar = Render<UndoBar>(p => p.Add(u => u.Action, "/undo").Add(u => u.Time, "16:50").Add(u => u.Fields, "<input type='hidden' name='deed' value='7'>").AddChildContent("Duarte and Caio compared notes."));
        Assert.Equal("post", bar.Find("form[action='/undo']").GetAttribute("method"));
        Assert.Equal("Undo: 16:50 Duarte and Caio compared notes.", Spoken(bar.Find("button").TextContent));
        Assert.NotNull(bar.Find("input[name=deed]"));
    }

    [Fact]
    public void A_wide_table_scrolls_in_a_named_region_that_takes_the_focus()
    {
        var table = Render<DataTable>(p => p.Add(t => t.Label, "The wheels").Add(t => t.Caption, "Underlined: best in its column."));
        var region = table.Find("[role=region]");
        Assert.Equal(("The wheels", "0"), (region.GetAttribute("aria-label"), region.GetAttribute("tabindex")));
        Assert.Equal("Underlined: best in its column.", table.Find("caption").TextContent);
    }

    [Fact]
    public void A_passage_has_its_margin_word_as_heading_except_the_one_with_the_title()
    {
        Assert.Equal("2", Render<Passage>(p => p.Add(x => x.Word, "The tally")).Find("[role=heading]").GetAttribute("aria-level"));
        Assert.Empty(Render<Passage>(p => p.Add(x => x.Word, "Verdict").Add(x => x.First, true)).FindAll("[role=heading]"));
    }

    [Fact]
    public void The_round_stamp_is_read_as_one_sentence()
    {
        var stamp = Render<RoundStamp>(p => p.Add(s => s.Club, "The Giesta Round").Add(s => s.Time, "Key opened 17:10").Add(s => s.Day, "30·08").Add(s => s.Year, "2025"));
        Assert.Equal("The Giesta Round, Key opened 17:10, 30·08 2025", stamp.Find("title").TextContent);
        Assert.Equal(stamp.Find("title").Id, stamp.Find("svg").GetAttribute("aria-labelledby"));
    }

    private static string Spoken(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace(" ,", ",", StringComparison.Ordinal).Replace(" :", ":", StringComparison.Ordinal);
}
