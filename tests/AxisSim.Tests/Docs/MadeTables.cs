namespace AxisSim.Tests.Docs;

/// <summary>Tables of the guide that are made from runs, between <c>&lt;!-- made: NAME --&gt;</c> and <c>&lt;!-- end --&gt;</c>.</summary>
internal static class MadeTables
{
    private static readonly Dictionary<string, Lazy<string>> s_tables = new()
    {
        ["estimates"] = new(EstimateTable.Markdown),
        ["ramps"] = new(RampTable.Markdown),
        ["ripple"] = new(RippleTable.Markdown),
        ["reductions"] = new(LessonTable.Scenarios),
        ["lesson"] = new(LessonTable.Answers),
    };

    public static IEnumerable<string> Names => s_tables.Keys;

    /// <summary>The page that a table stands in.</summary>
    public static string PageOf(string name) => name is "reductions" or "lesson" ? "lesson-reduction.md" : "paper-estimates.md";

    public static string Of(string name) => s_tables[name].Value;

    public static string All() => string.Join('\n', s_tables.Values.Select(table => table.Value));
}
