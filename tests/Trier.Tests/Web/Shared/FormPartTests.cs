using Bunit;
using Trier.Web.Shared;

namespace Trier.Tests.Web.Shared;

/// <summary>Faults are told twice: at the top with links, and under their field.</summary>
public sealed class FormPartTests : BunitContext
{
    private static readonly IReadOnlyList<FieldFault> Two =
    [
        new("made-on", "Made on", "February 2025 has 28 days. Write the day as 28/02/2025."),
        new("ph", "pH after the press", "pH runs from 0 to 14. Did you mean 5,30?"),
    ];

    [Fact]
    public void The_list_at_the_top_links_every_fault_to_its_field()
    {
        var summary = Render<ErrorSummary>(p => p.Add(s => s.Faults, Two));
        Assert.Equal(["#made-on", "#ph"], summary.FindAll("a").Select(a => a.GetAttribute("href")));
        Assert.Contains(Two[1].Sentence, summary.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_faults_nothing_is_shown()
    {
        Assert.Empty(Render<ErrorSummary>(p => p.Add(s => s.Faults, [])).Markup.Trim());
        Assert.Empty(Render<FieldError>(p => p.Add(f => f.For, "name").Add(f => f.Faults, Two)).Markup.Trim());
    }

    [Fact]
    public void A_field_ties_label_control_and_fault_together()
    {
        var field = Render<Field>(p => p.Add(f => f.Id, "ph").Add(f => f.Label, "pH after the press").Add(f => f.Faults, Two)
            .Add(f => f.ChildContent, attributes => builder =>
            {
                builder.OpenElement(0, "input");
                builder.AddMultipleAttributes(1, attributes);
                builder.CloseElement();
            }));

        var input = field.Find("input");
        Assert.Equal(input.Id, field.Find("label").GetAttribute("for"));
        Assert.Equal("true", input.GetAttribute("aria-invalid"));
        Assert.Equal(Two[1].Sentence, field.Find("#" + input.GetAttribute("aria-describedby")).TextContent);
        Assert.Single(field.FindAll(".field-fault"));
    }

    [Fact]
    public void A_sound_field_is_not_called_invalid()
    {
        var field = Render<Field>(p => p.Add(f => f.Id, "name").Add(f => f.Label, "Name").Add(f => f.Faults, Two)
            .Add(f => f.ChildContent, attributes => builder =>
            {
                builder.OpenElement(0, "input");
                builder.AddMultipleAttributes(1, attributes);
                builder.CloseElement();
            }));
        Assert.False(field.Find("input").HasAttribute("aria-invalid"));
    }

    [Theory]
    [InlineData(false, "radio")]
    [InlineData(true, "checkbox")]
    public void The_whole_row_of_a_choice_is_its_label(bool many, string type)
    {
        var choice = Render<Choice>(p => p.Add(c => c.Name, "taste").Add(c => c.Value, "milder").Add(c => c.Chosen, true).Add(c => c.Many, many).AddChildContent("milder tasting"));
        var input = choice.Find("label.choice > input");
        Assert.Equal((type, "taste", "milder"), (input.GetAttribute("type"), input.GetAttribute("name"), input.GetAttribute("value")));
        Assert.True(input.HasAttribute("checked"));
        Assert.Equal("milder tasting", choice.Find("label").TextContent.Trim());
    }

    [Fact]
    public void Places_are_plain_fields_and_submit_buttons_that_need_no_script()
    {
        var list = Render<PlacesList>(p => p
            .Add(l => l.Placed, [new("417"), new("593"), new("751", TiedWithPrevious: true)])
            .Add(l => l.OnPlate, [new("238", "you said: dislike")]));

        Assert.Equal(["417", "593", "751"], list.FindAll("ol [name=order]").Select(i => i.GetAttribute("value")));
        Assert.Equal(["751"], list.FindAll("ol [name=tied]:not([disabled])").Select(i => i.GetAttribute("value")));
        Assert.Equal(["1st", "2nd", "2nd", "4th"], list.FindAll("ol .place-name").Select(n => n.TextContent));
        Assert.Equal("place:238", list.Find(".plate button").GetAttribute("value"));
        Assert.All(list.FindAll("button"), button => Assert.Equal(("submit", "move"), (button.GetAttribute("type"), button.GetAttribute("name"))));
        Assert.All(list.FindAll("button"), button => Assert.Matches(@"\d{3}\D", button.GetAttribute("aria-label") ?? button.TextContent));
        Assert.True(list.Find("[value='up:417']").HasAttribute("disabled"));
        Assert.True(list.Find("[value='same:417']").HasAttribute("hidden"));
        Assert.True(list.Find("[value='down:751']").HasAttribute("disabled"));
        Assert.Equal("true", list.Find("[value='same:751']").GetAttribute("aria-pressed"));
    }
}
