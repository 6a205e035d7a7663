using AxisSim.Core.Studies;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>The search for the edge of pull-out, asked about axes whose answer is known.</summary>
public sealed class PullOutEdgeTests
{
    private const double Grain = 0.005;
    private const double Briefly = 0.3;
    private static readonly double[] Loads = [.. Enumerable.Range(0, 12).Select(i => 0.05 + (0.09 * i))];

    [Fact]
    public void The_edge_is_placed_to_the_grain()
    {
        PullOutEdge edge = Found(load => load > 0.6234 ? 0.1 : double.PositiveInfinity);
        Assert.InRange(edge.Least, 0.6234 - (0.5 * Grain), 0.6234 + (0.5 * Grain));
        Assert.Equal(edge.Least, edge.Greatest, 1e-12);
    }

    [Fact]
    public void What_only_a_long_time_loses_moves_the_edge_and_widens_the_range()
    {
        // From 0.4 on lost after 0.8 s, from 0.7 on at once.
        PullOutEdge edge = Found(load => load > 0.7 ? 0.1 : load > 0.4 ? 0.8 : double.PositiveInfinity);
        Assert.InRange(edge.Least, 0.4 - Grain, 0.4 + Grain);
        Assert.InRange(edge.Greatest, 0.6, 0.7 + (0.5 * Grain));
    }

    [Fact]
    public void A_gap_below_the_edge_that_the_first_loads_step_over_is_met()
    {
        // Half-way between 0.68 and 0.77.
        PullOutEdge edge = Found(load => load > 0.9 || Math.Abs(load - 0.725) < 0.02 ? 0.1 : double.PositiveInfinity);
        Assert.InRange(edge.Least, 0.705 - Grain, 0.705 + Grain);
        Assert.InRange(edge.Greatest, 0.85, 0.95);
    }

    [Theory]
    [InlineData(double.PositiveInfinity, 1.04, 1.04)]
    [InlineData(0.1, 0.0, 0.0)]
    public void Where_all_hold_or_none_does_nothing_more_is_asked_and_nothing_changes(double kept, double least, double greatest)
    {
        var edge = new PullOutEdge(Loads, [.. Loads.Select(_ => kept)], Grain);
        Assert.True(edge.Done);
        Assert.Empty(edge.Asks());

        // Its partner goes on, and it is told of nothing.
        edge.Take([], [], Briefly);
        Assert.Equal(least, edge.Least, 1e-12);
        Assert.Equal(greatest, edge.Greatest, 1e-12);
    }

    private static PullOutEdge Found(Func<double, double> keptSeconds)
    {
        const double Rough = 0.3;
        double Within(double load, double seconds) => keptSeconds(load) is double kept && kept < seconds ? kept : double.PositiveInfinity;
        var edge = new PullOutEdge(Loads, [.. Loads.Select(load => Within(load, Rough))], Grain);
        for (int round = 0; !edge.Done; round++)
        {
            Assert.True(round < 20, "The search does not end.");
            double[] asks = edge.Asks();
            Assert.NotEmpty(asks);
            edge.Take(asks, [.. asks.Select(load => Within(load, 1.0))], Briefly);
        }

        return edge;
    }
}
