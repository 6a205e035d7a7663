using AxisSim.Core.Maps;

namespace AxisSim.Tests.Unit.Core.Maps;

/// <summary>How far a point is from the edge.</summary>
public sealed class EdgeDistanceTests
{
    private const double Rounding = 1e-12;

    // Arrives for a first value up to 3 and a second from 10 on; cells at 0, 1, ... 5 and 1, 10, 100, 1000.
    private static readonly GridAxis First = new([0, 1, 2, 3, 4, 5], logarithmic: false);
    private static readonly GridAxis Second = new([1, 10, 100, 1000], logarithmic: true);

    [Fact]
    public void Edges_lie_half_way_between_cells_in_the_spacing_of_the_axis()
    {
        IReadOnlyList<EdgeDistance> all = EdgeDistances.From(Cells(MapEnd.Arrives), First, Second, 1.2, 100.0);
        Assert.Equal([false, true, false, true], all.Select(one => one.Up));
        Assert.Equal([0, 0, 1, 1], all.Select(one => one.Along));
        Assert.True(double.IsNaN(all[0].EdgeValue) && double.IsNaN(all[3].EdgeValue));
        Assert.Equal((3.5, 4.0, MapEnd.Stalls), (all[1].EdgeValue, all[1].BeyondValue, all[1].BeyondEnd));
        Assert.Equal(Math.Sqrt(10.0), all[2].EdgeValue, Rounding);
    }

    [Fact]
    public void From_a_point_that_fails_the_edge_is_where_it_begins_to_arrive()
    {
        IReadOnlyList<EdgeDistance> all = EdgeDistances.From(Cells(MapEnd.Stalls), First, Second, 4.4, 100.0);
        // Between the point itself and the cell at 3 when the cell at 4 fails too: half-way between 3 and 4.
        Assert.Equal((3.5, 3.0, MapEnd.Arrives), (all[0].EdgeValue, all[0].BeyondValue, all[0].BeyondEnd));
        Assert.True(double.IsNaN(all[1].EdgeValue));
    }

    [Theory]
    [InlineData(-0.1, 10.0)]
    [InlineData(2.0, 1001.0)]
    [InlineData(double.NaN, 10.0)]
    public void A_point_off_the_map_has_no_distances(double first, double second) =>
        Assert.Empty(EdgeDistances.From(Cells(MapEnd.Arrives), First, Second, first, second));

    [Fact]
    public void Positions_and_values_are_inverse()
    {
        Assert.Equal(1.5, Second.PositionOf(Math.Pow(10.0, 1.5)), Rounding);
        Assert.Equal(Math.Pow(10.0, 1.5), Second.ValueAt(1.5), 1e-10);
        Assert.Equal(5.0, First.PositionOf(5.0 + 1e-10));
        Assert.Equal(2.25, First.ValueAt(2.25), Rounding);
    }

    private static MapCells Cells(MapEnd own)
    {
        MapCells cells = new(6, 4, MapMetric.Outcome);
        for (int place = 0; place < cells.Count; place++)
        {
            cells.Set(place, CellResult.Bare(place / 4 <= 3 && place % 4 >= 1 ? MapEnd.Arrives : MapEnd.Stalls));
        }

        cells.Set(cells.OwnPlace, CellResult.Bare(own));
        return cells;
    }
}
