namespace AxisSim.Tests.Docs;

/// <summary>A table of the guide whose row breaks off reads as if nothing were missing, so its cells are counted.</summary>
public sealed class TableShapeTests
{
    public static TheoryData<string> Pages =>
        [.. Directory.GetFiles(Repository.Root, "*.md").Concat(Directory.GetFiles(Repository.PathOf("docs"), "*.md")).Select(path => Path.GetRelativePath(Repository.Root, path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Every_row_has_the_cells_of_its_head_and_closes_what_it_opens(string page)
    {
        int cells = 0;
        foreach (string line in File.ReadAllLines(Repository.PathOf(page)))
        {
            if (!line.StartsWith('|'))
            {
                cells = 0;
                continue;
            }

            int bars = line.Replace("\\|", "", StringComparison.Ordinal).Count(c => c == '|');
            cells = cells == 0 ? bars : cells;
            Assert.True(bars == cells && line.TrimEnd().EndsWith('|'), $"{page}: {bars} bars where the head has {cells}: {line}");
            Assert.True(line.Count(c => c == '(') == line.Count(c => c == ')'), $"{page}: a bracket is open: {line}");
        }
    }
}
