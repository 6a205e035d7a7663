using AxisSim.Core.Outcomes;
using AxisSim.Files.Maps;

namespace AxisSim.Tests.Unit.Core.Outcomes;

/// <summary>One name for each end of a move.</summary>
public sealed class MoveEndTests
{
    /// <summary>The numbers are in the journals of maps that users keep, and the names in their tables.</summary>
    [Theory]
    [InlineData(MoveEnd.Arrives, 1, "arrives")]
    [InlineData(MoveEnd.DoesNotSettle, 2, "does_not_settle")]
    [InlineData(MoveEnd.ClutchSlips, 3, "clutch_slips")]
    [InlineData(MoveEnd.Stalls, 4, "stalls")]
    [InlineData(MoveEnd.NotWorkable, 5, "not_workable")]
    [InlineData(MoveEnd.Broken, 6, "broken")]
    [InlineData(MoveEnd.NotValid, 7, "not_valid")]
    public void Numbers_and_names_in_files_stay(MoveEnd end, int number, string name)
    {
        Assert.Equal(number, (int)end);
        Assert.Equal(name, MapCsv.Name(end));
    }

    [Fact]
    public void Nothing_is_an_end_until_something_was_run() => Assert.Equal(MoveEnd.Unknown, default);
}
