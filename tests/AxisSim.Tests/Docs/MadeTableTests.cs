namespace AxisSim.Tests.Docs;

/// <summary>The tables that are made from runs stand in the guide as they come out now; AXISSIM_REFRESH_GOLDEN=1 puts them there.</summary>
[Collection("guide")]
[Trait("speed", "slow")]
public sealed class MadeTableTests
{
    public static TheoryData<string> Names => [.. MadeTables.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_table_is_not_stale(string name)
    {
        string path = Repository.PathOf("docs", MadeTables.PageOf(name));
        string text = File.ReadAllText(path).ReplaceLineEndings("\n");
        string head = $"<!-- made: {name} -->\n", foot = "<!-- end -->";
        int start = text.IndexOf(head, StringComparison.Ordinal) + head.Length;
        Assert.True(start >= head.Length, $"no place for the table {name}");
        int end = text.IndexOf(foot, start, StringComparison.Ordinal);
        string table = MadeTables.Of(name);
        if (Environment.GetEnvironmentVariable("AXISSIM_REFRESH_GOLDEN") == "1")
        {
            File.WriteAllText(path, text[..start] + table + text[end..]);
        }
        else
        {
            Assert.Equal(table, text[start..end]);
        }
    }
}
