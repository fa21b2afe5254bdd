using Trier.Dairy.Workings;
using Trier.Trials.Makes.Sheets;
using Problem = Trier.Trials.Common.Problem;

namespace Trier.Web.Makes.Sums;

/// <summary>One sum as typed and answered: the entries in the core's units, the lines, what to look at, what to mend.</summary>
internal sealed class SumWork
{
    private readonly Func<string, string> _text;
    private readonly Dictionary<string, double> _numbers = new(StringComparer.Ordinal);
    private readonly List<SumField> _fields;

    private SumWork(BenchSum sum, Func<string, string> text, MakerUnits units)
    {
        (Sum, _text, Units, _fields) = (sum, text, units, [.. sum.Groups.SelectMany(group => group.Fields)]);
        foreach (var field in _fields.Where(field => field.Ranges is not null)) Read(field);
    }

    public BenchSum Sum { get; }

    public MakerUnits Units { get; }

    public List<SumLine> Lines { get; } = [];

    /// <summary>Sentences below the answers.</summary>
    public List<string> Notes { get; } = [];

    public List<string> Questions { get; } = [];

    public List<Problem> Problems { get; } = [];

    /// <summary>An entry's number in the core's unit; one that may stay empty is not a number then.</summary>
    public double this[string key] => _numbers.GetValueOrDefault(key, double.NaN);

    /// <summary>Reads a sum's entries and works it out where all of them can be.</summary>
    public static SumWork Of(BenchSum sum, Func<string, string> text, MakerUnits units)
    {
        var work = new SumWork(sum, text, units);
        if (work.Problems.Count == 0) sum.Work(work);
        return work;
    }

    public bool Has(string key) => _numbers.ContainsKey(key);

    public string Text(string key) => _text(key);

    /// <summary>What was chosen; the first of the choices where nothing was.</summary>
    public string Chosen(string key)
    {
        var choices = _fields.First(field => field.Key == key).Choices;
        return choices.Any(choice => choice.Value == _text(key)) ? _text(key) : choices[0].Value;
    }

    public void Say(Figure figure) => Lines.Add(new(Units.Formula(figure.Name), Units.Write(figure), figure.Working));

    public void Say(string name, string value, Working working) => Lines.Add(new(name, value, working));

    public void Refuse(string key, string sentence) => Problems.Add(new(key, sentence));

    /// <summary>Takes an answer over with its questions, or its problems at the entries they are about.</summary>
    /// <param name="outcome">What the Dairy room says.</param>
    /// <param name="at">The entry a problem stands at where its field is none of the form's.</param>
    public Answer<T>? Take<T>(Outcome<T> outcome, string at)
    {
        if (outcome.TryAnswer(out var answer, out var problems))
        {
            // What is unusual about an entry was asked under the form's own name as it was read.
            Questions.AddRange(answer.Questions.Where(question => !Usual(question)).Select(question => question.Sentence).Where(sentence => !Questions.Contains(sentence)));
            return answer;
        }

        foreach (var problem in problems) Problems.Add(new(_fields.FirstOrDefault(field => field.Ranges?.Key == problem.Field.Key)?.Key ?? at, problem.Sentence));
        return null;
    }

    private bool Usual(Question question) => question.Sentence.EndsWith("is usual: is that right?", StringComparison.Ordinal) && _fields.Any(field => field.Ranges?.Key == question.Field.Key);

    private void Read(SumField field)
    {
        var before = Problems.Count;
        if (MakerUnits.Read(_text(field.Key), field.Key, field.Label, Problems) is not { } typed)
        {
            if (field.Usual is { } usual) _numbers[field.Key] = usual;
            else if (!field.MayBeEmpty && Problems.Count == before) Problems.Add(new(field.Key, $"{field.Label} is missing."));
            return;
        }

        var value = Units.ToCore(field.Ranges!.Unit, typed);
        if (field.Ranges.ProblemWith(value) is { } problem) Problems.Add(new(field.Key, problem.Sentence));
        else if (field.Ranges.QuestionAbout(value) is { } question) Questions.Add(question.Sentence);
        _numbers[field.Key] = value;
    }
}

/// <summary>One line of an answer.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">How much, as the maker reads it.</param>
/// <param name="Working">How it came about.</param>
internal sealed record SumLine(string Name, string Value, Working Working);
