using System.Text.RegularExpressions;

namespace AxisSim.Tests.Architecture;

/// <summary>Inside Core a study asks another without the check of its entry: what it derives from a checked setup (a greater load, a lower rate) need not keep to the bounds of what comes from outside.</summary>
public sealed partial class EntryTests
{
    [Fact]
    public void Core_does_not_enter_its_own_studies_from_outside()
    {
        string[] core = [.. SourceFiles.All.Where(file => file.StartsWith("src/AxisSim.Core/", StringComparison.Ordinal))];
        Assert.True(core.Sum(file => Unchecked().Count(File.ReadAllText(Repository.PathOf(file)))) > 3); // else the test would look at nothing
        Assert.Empty(core.SelectMany(file => Entered().Matches(File.ReadAllText(Repository.PathOf(file))).Select(match => $"{file} asks {match.Value}; take RunUnchecked")));
    }

    [GeneratedRegex(@"\b(?:Move|Batch|Envelope|Curve|Map|Comparison|Recommend|Reduction)Study\.Run\b(?!Unchecked)")]
    private static partial Regex Entered();

    [GeneratedRegex(@"Study\.RunUnchecked\b")]
    private static partial Regex Unchecked();
}
