using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Golden;

/// <summary>Messages, notes and the template word for word, under several cultures.</summary>
public sealed class ScenarioMessageTests
{
    private static readonly string[] Settings =
    [
        "polar.drive.slew_current=1,2 A", "payload.tub.mass=16 kg", "polar.drive.slew_curent=1 A", "nonsense", "=3", "polar.worm.teeth=144.5", "disturbances.sync_probe=yes",
    ];

    public static TheoryData<string> Names => Cultures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_problem_of_a_bad_file_is_told_in_the_same_words(string culture)
    {
        string path = Repository.PathOf("tests", "AxisSim.Tests", "Golden", "every-problem.toml");
        ScenarioResult result = Cultures.Under(culture, () => ScenarioReader.ReadText(File.ReadAllText(path), "bad.toml", Settings));
        Assert.Null(result.Scenario);
        GoldenText.Check("every-problem.txt", Lines(result.Problems.Select(problem => problem.ToString())));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Text_that_is_not_toml_is_told_in_the_same_words(string culture)
    {
        string text = "format = 1\nname = heavy reflector\n\n[site]\nlatitude = 54.4 deg\nname == \"x\"\n[polar.motor\nrated_current = \"1.5 A\"\n";
        ScenarioResult result = Cultures.Under(culture, () => ScenarioReader.ReadText(text, "bad.toml", []));
        GoldenText.Check("not-toml.txt", Lines(result.Problems.Select(problem => problem.ToString())));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Notes_of_the_shipped_scenarios_are_the_same(string culture)
    {
        var lines = new List<string>();
        foreach (string path in Repository.Scenarios)
        {
            ScenarioResult result = Cultures.Under(culture, () => ScenarioReader.ReadFile(path, []));
            lines.Add("# " + Path.GetFileName(path));
            lines.AddRange(result.Scenario!.Notes);
        }

        GoldenText.Check("scenario-notes.txt", Lines(lines));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_template_is_the_same(string culture) =>
        GoldenText.Check("template.txt", Cultures.Under(culture, () => ScenarioTemplate.Text));

    [Theory]
    [MemberData(nameof(Names))]
    public void The_docs_page_of_keys_is_what_the_program_reads_by(string culture) =>
        GoldenText.CheckFile(Repository.PathOf("docs", "scenario-keys.md"), Cultures.Under(culture, AxisSim.Files.Keys.KeyTable.Markdown));

    private static string Lines(IEnumerable<string> lines) => string.Join('\n', lines) + "\n";
}
