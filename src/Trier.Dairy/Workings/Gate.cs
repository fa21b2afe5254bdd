namespace Trier.Dairy.Workings;

/// <summary>Collects every problem and question of one computation's input, so that all are told at once.</summary>
internal sealed class Gate
{
    private readonly List<Problem> _problems = [];
    private readonly List<Question> _questions = [];
    private readonly List<Working> _parts = [];

    public bool Shut => _problems.Count > 0;

    public Listed<Working> Parts => [.. _parts];

    public Gate Check(Field field, double value)
    {
        if (field.ProblemWith(value) is { } problem) _problems.Add(problem);
        else if (field.QuestionAbout(value) is { } question) _questions.Add(question);
        return this;
    }

    public void Refuse(ProblemKind kind, Field field, string sentence) => _problems.Add(new Problem(kind, field, sentence));

    public void Ask(Field field, string sentence) => _questions.Add(new Question(field, sentence));

    /// <summary>Takes over another computation's result with its working and questions, or its problems.</summary>
    public T? Take<T>(Outcome<T> outcome)
    {
        if (outcome.TryAnswer(out var answer, out var problems))
        {
            _parts.Add(answer.Working);
            _questions.AddRange(answer.Questions.Where(question => !_questions.Contains(question)));
            return answer.Value;
        }

        _problems.AddRange(problems.Where(problem => !_problems.Contains(problem)));
        return default;
    }

    public Outcome<T> Refusal<T>() => new Refusal<T>([.. _problems]);

    public Outcome<T> Answer<T>(T value, Working working) =>
        new Answer<T>(value, _parts.Count == 0 ? working : working with { Parts = [.. working.Parts, .. _parts] }, [.. _questions]);
}
