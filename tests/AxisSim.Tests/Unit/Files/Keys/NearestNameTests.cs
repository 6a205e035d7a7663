using AxisSim.Files.Keys;

namespace AxisSim.Tests.Unit.Files.Keys;

public sealed class NearestNameTests
{
    [Theory]
    [InlineData("kitten", "sitting", 3)] // the textbook example of Levenshtein's distance
    [InlineData("saturday", "sunday", 3)]
    [InlineData("ca", "ac", 1)] // a swap of neighbours counts once
    [InlineData("ca", "abc", 3)] // the restricted distance: no edit inside a swap
    [InlineData("", "abc", 3)]
    [InlineData("mass", "MASS", 0)]
    public void Distances_are_those_of_the_textbook(string first, string second, int distance)
    {
        Assert.Equal(distance, NearestName.Distance(first, second));
        Assert.Equal(distance, NearestName.Distance(second, first));
    }

    [Fact]
    public void Nothing_near_gives_no_suggestion()
    {
        Assert.Equal("mass", NearestName.Of("mas", ["mass", "length"]));
        Assert.Null(NearestName.Of("seeing", ["mass", "length"]));
    }
}
