using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;
using Trier.Trials.Common;
using Trier.Web.Shared;

namespace Trier.Web.Hosting;

/// <summary>How a route answers with a page.</summary>
internal static class Page
{
    /// <summary>A page with its parameters.</summary>
    /// <typeparam name="T">The page.</typeparam>
    /// <param name="parameters">Names and values of its parameters.</param>
    public static RazorComponentResult<T> Of<T>(params (string Name, object? Value)[] parameters)
        where T : IComponent =>
        new(parameters.ToDictionary(parameter => parameter.Name, parameter => parameter.Value, StringComparer.Ordinal));

    /// <summary>A page shown again because a form was refused: nothing typed is lost, and the answer says that the input was at fault.</summary>
    /// <typeparam name="T">The page.</typeparam>
    /// <param name="parameters">Names and values of its parameters.</param>
    public static RazorComponentResult<T> Again<T>(params (string Name, object? Value)[] parameters)
        where T : IComponent
    {
        var page = Of<T>(parameters);
        page.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return page;
    }

    /// <summary>Goes on to another page after a post, so that a reload repeats nothing.</summary>
    /// <param name="path">A path of this site.</param>
    public static IResult GoTo(string path) => new SeeOther(path);

    /// <summary>Problems as a form shows them; the field's id is the problem's field.</summary>
    /// <param name="problems">The problems.</param>
    /// <param name="labels">What a field is called on the page, where that differs from its id.</param>
    public static IReadOnlyList<FieldFault> Faults(IEnumerable<Problem> problems, IReadOnlyDictionary<string, string>? labels = null) =>
        [.. problems.Select(problem => Fault(problem, labels?.GetValueOrDefault(problem.Field) ?? Capital(problem.Field.Replace('-', ' '))))];

    // The summary and the field both name the field already: a sentence that begins with the name would say it twice.
    private static FieldFault Fault(Problem problem, string label) =>
        new(problem.Field, label, problem.Sentence.StartsWith(label + ": ", StringComparison.Ordinal) ? Capital(problem.Sentence[(label.Length + 2)..]) : problem.Sentence);

    private static string Capital(string word) => word.Length == 0 ? word : char.ToUpperInvariant(word[0]) + word[1..];

    private sealed class SeeOther(string path) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = path;
            return Task.CompletedTask;
        }
    }
}
