using AxisSim.Files.Motors;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Scenarios;

/// <summary>Texts of the user that would steer a terminal or break a file are refused where they are read.</summary>
public sealed class PlainTextTests
{
    private static readonly string Good = File.ReadAllText(Repository.PathOf("scenarios", "heavy-reflector.toml")).ReplaceLineEndings("\n");

    // A sign as TOML writes it, and how the message names it.
    public static TheoryData<string, string> Strange => new()
    {
        { @"\u0000", "the control character U+0000 at place 2" },
        { @"\u001b[31m", "the control character U+001B at place 2" },
        { @"\n", "the control character U+000A at place 2" },
        { @"\u007f", "the control character U+007F at place 2" },
        { @"\u009b", "the control character U+009B at place 2" },
        { @"\u2028", "the character that cannot be shown U+2028 at place 2" },
        { @"\u202e", "the character that cannot be shown U+202E at place 2" },
        { @"\uffff", "the character that cannot be shown U+FFFF at place 2" },
        { @"\U0001fffe", "the character that cannot be shown U+1FFFE at place 2" },
    };

    [Theory]
    [MemberData(nameof(Strange))]
    public void A_name_with_a_sign_that_will_not_do_is_refused_with_its_line_its_key_and_the_name_without_it(string sign, string named)
    {
        string text = System.Text.RegularExpressions.Regex.Replace(Good, "(?m)^name = \".*\"$", $"name = \"a{sign.Replace("[31m", "", StringComparison.Ordinal)}b\"", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1));
        Problem problem = Assert.Single(ScenarioReader.ReadText(FirstOnly(text), "m.toml", []).Problems);
        Assert.Equal("name", problem.Key);
        Assert.Equal(Array.FindIndex(Good.Split('\n'), line => line.StartsWith("name = ", StringComparison.Ordinal)) + 1, problem.Line);
        Assert.Contains(named, problem.Found, StringComparison.Ordinal);
        Assert.Equal("name = \"ab\"", problem.Fix);
        Assert.Null(PlainText.FirstStrange(problem.ToString()));
    }

    [Theory]
    [InlineData("name", "name")]
    [InlineData("site", "name")]
    [InlineData("", "description")]
    public void Every_text_of_a_scenario_is_looked_at(string section, string key)
    {
        string path = section is "" or "name" ? key : $"{section}.{key}";
        string value = $"{path}=a\u001b[2Jb";
        Assert.Contains(ScenarioReader.ReadText(Good, "m.toml", [value]).Problems, problem => problem.Found.Contains("U+001B", StringComparison.Ordinal));
        string pattern = $"(?m)^{key} = \".*\"$";
        string start = section == "site" ? Good[..Good.IndexOf("[site]", StringComparison.Ordinal)] : "";
        string rest = new System.Text.RegularExpressions.Regex(pattern).Replace(Good[start.Length..], $"{key} = \"a\\u001bb\"", 1);
        Problem problem = Assert.Single(ScenarioReader.ReadText(start + rest, "m.toml", []).Problems);
        Assert.Equal(path, problem.Key);
        Assert.Contains("U+001B", problem.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("name = \"belt\"", "polar.stages.name")]
    [InlineData("name = \"tube\"", "payload.name")]
    public void Names_of_stages_and_bodies_are_plain(string good, string key)
    {
        Assert.Contains(good, Good, StringComparison.Ordinal);
        string bad = Good.Replace(good, good.Replace("e", "\\u0007", StringComparison.Ordinal).Replace("nam\\u0007", "name", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains(ScenarioReader.ReadText(bad, "m.toml", []).Problems, problem => problem.Key == key && problem.Allowed.Contains("letters, digits", StringComparison.Ordinal));
    }

    [Fact]
    public void A_description_may_have_several_lines_and_any_text_the_letters_of_any_language()
    {
        string text = new System.Text.RegularExpressions.Regex("(?m)^description = .*$").Replace(Good, "description = \"\"\"\nfirst\tline\r\nsecond \U0001F52D\"\"\"", 1);
        text = new System.Text.RegularExpressions.Regex("(?m)^name = .*$").Replace(text, "name = \"Fern\u00adrohr \u0645\u06cc\u200c\u062e 5 \u00b5m \U0001F469\u200D\U0001F680\"", 1);
        ScenarioResult result = ScenarioReader.ReadText(text, "m.toml", []);
        Assert.Empty(result.Problems);
        Assert.Contains("\U0001F52D", result.Scenario!.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_whose_name_would_steer_the_terminal_is_not_read()
    {
        Problem problem = Assert.Single(ScenarioReader.ReadFile("a\u001b[2Jb.toml", []).Problems);
        Assert.Contains("a file name with the control character U+001B", problem.Found, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', problem.ToString());
    }

    [Theory]
    [InlineData("name", "17 \u001blong,17")]
    [InlineData("frame", "17 long,1\u00077")]
    [InlineData("name", "\"17\nlong\",17")]
    public void A_table_of_motors_is_looked_at_too(string column, string cells)
    {
        string table = "name,frame,steps_per_revolution,holding_torque_n_m,rated_current_a,resistance_ohm,inductance_mh,rotor_inertia_g_cm2\n" + cells + ",200,0.4,1.5,1.5,3,60\n";
        MotorTableResult result = MotorTable.ReadText(table, "motors.csv");
        Assert.Empty(result.Motors);
        Problem problem = Assert.Single(result.Problems);
        Assert.Equal((column, 2), (problem.Key, problem.Line));
        Assert.Contains("the control character U+00", problem.Found, StringComparison.Ordinal);
        Assert.StartsWith("17", problem.Fix, StringComparison.Ordinal);
    }

    // Names of list items stand on lines of their own; only the scenario's is meant here.
    private static string FirstOnly(string changed)
    {
        string[] lines = changed.Split('\n'), good = Good.Split('\n');
        int first = Array.FindIndex(good, line => line.StartsWith("name = ", StringComparison.Ordinal));
        return string.Join('\n', lines.Select((line, i) => i == first ? line : good[i]));
    }
}
