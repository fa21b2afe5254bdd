using System.Globalization;

namespace Trier.Web.Hosting;

/// <summary>What a form posted, read once at the edge.</summary>
/// <param name="form">The form.</param>
internal sealed class Posted(IFormCollection form)
{
    /// <summary>A field's text, trimmed; empty where it is missing.</summary>
    /// <param name="name">The field's name.</param>
    public string Text(string name) => form[name].ToString().Trim();

    /// <summary>A field's text, or null where it is blank.</summary>
    /// <param name="name">The field's name.</param>
    public string? Optional(string name) => Text(name) is { Length: > 0 } text ? text : null;

    /// <summary>Every value of a field.</summary>
    /// <param name="name">The field's name.</param>
    public IReadOnlyList<string> All(string name) => [.. form[name].OfType<string>()];

    /// <summary>Whether a tick box was ticked.</summary>
    /// <param name="name">The field's name.</param>
    public bool Ticked(string name) => Text(name).Length > 0;

    /// <summary>A whole number, or null.</summary>
    /// <param name="name">The field's name.</param>
    public int? Number(string name) => int.TryParse(Text(name), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>An id, or null.</summary>
    /// <param name="name">The field's name.</param>
    public Guid? Id(string name) => Guid.TryParse(Text(name), out var id) ? id : null;

    /// <summary>Every id of a field that is one.</summary>
    /// <param name="name">The field's name.</param>
    public IReadOnlyList<Guid> Ids(string name) => [.. All(name).Select(text => Guid.TryParse(text, out var id) ? id : Guid.Empty).Where(id => id != Guid.Empty)];
}
