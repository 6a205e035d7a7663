namespace AxisSim.Files.Scenarios;

/// <summary>Collects the problems of one scenario; the same finding at the same place counts once.</summary>
internal sealed class ProblemList(string file)
{
    // A file that is wrong in more places than this is not a scenario; the rest would bury the first.
    private const int Most = 200;

    private readonly List<Problem> problems = [];
    private readonly HashSet<(string, int, int, string, string)> known = [];

    /// <summary>Whether any problem refuses the scenario.</summary>
    public bool HasErrors => problems.Exists(problem => problem.Severity == ProblemSeverity.Error);

    /// <summary>Whether no more problems are taken up, so that looking for them can stop.</summary>
    public bool IsFull => problems.Count >= Most && HasErrors;

    /// <summary>Forgets all, for another look at the same document with other values.</summary>
    public void Clear()
    {
        problems.Clear();
        known.Clear();
    }

    /// <summary>All problems: those of the file by line, then what is missing altogether, then those of the settings files, then those of the settings.</summary>
    public IReadOnlyList<Problem> Sorted() =>
        [.. problems.OrderBy(problem => problem.File == file ? 0 : problem.File == SettingsReader.Source ? 2 : 1).ThenBy(problem => problems.FindIndex(first => first.File == problem.File)).ThenBy(problem => problem.Line == 0 ? int.MaxValue : problem.Line).ThenBy(problem => problem.Column)];

    /// <summary>An error at a value.</summary>
    public void Error(Entry entry, string found, string allowed, string fix) =>
        Add(new Problem(entry.File, entry.Line, entry.Column, entry.Path, found, allowed, fix));

    /// <summary>An error at a place of the file.</summary>
    public void Error(Spot spot, string key, string found, string allowed, string fix) =>
        Add(new Problem(file, spot.Line, spot.Column, key, found, allowed, fix));

    /// <summary>Something worth knowing about a value.</summary>
    public void Note(Entry entry, string text) =>
        Add(new Problem(entry.File, entry.Line, entry.Column, entry.Path, text, "", "", ProblemSeverity.Note));

    /// <summary>Adds a problem unless the same was found at the same place.</summary>
    public void Add(Problem problem)
    {
        if (problems.Count < Most && known.Add((problem.File, problem.Line, problem.Column, problem.Found, LastPart(problem.Key))))
        {
            problems.Add(problem);
        }
        else if (problems.Count == Most && problem.Severity == ProblemSeverity.Error && !HasErrors)
        {
            problems[^1] = problem;
        }
    }

    private static string LastPart(string key) => key[(key.LastIndexOf('.') + 1)..];
}
