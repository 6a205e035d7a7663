using AxisSim.Core.Maps;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Maps;

/// <summary>The adaptive grid finds what the full grid finds, with fewer runs.</summary>
public sealed class AdaptiveGridTests
{
    // An edge of n cells asks for some bands of cells beside it; a quarter of the full grid is far above that and far below all.
    private const double MostShare = 0.25;

    [Fact]
    public void A_curved_edge_is_found_with_a_fraction_of_the_runs()
    {
        static MapEnd Circle(int i, int j) => Math.Pow(i - 90.0, 2) + Math.Pow(j - 60.0, 2) < 45.0 * 45.0 ? MapEnd.Stalls : MapEnd.Arrives;
        MapCells full = FakeMap.Full(201, 151, Circle), adaptive = FakeMap.Adaptive(201, 151, Circle);
        Assert.Equal(FakeMap.Ends(full), FakeMap.Ends(adaptive));
        Assert.Equal(full.Count, full.ComputedCount());
        Assert.InRange(adaptive.ComputedCount(), 1, MostShare * full.Count);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Regions_wider_than_the_coarse_stride_are_never_missed() => Gen.Select(Gen.Int[2, 90], Gen.Int[2, 90], Gen.Double[0.0, 6.3], Gen.Double[-1.0, 1.0], Gen.Double[0.0, 2.0]).Sample(
        (columns, rows, angle, offset, bend) =>
        {
            // Two curved fronts divide the plane in three; each part is far wider than a coarse block or touches its corner.
            MapEnd Fronts(int i, int j)
            {
                double u = (i / (columns - 1.0)) - 0.5, v = (j / (rows - 1.0)) - 0.5;
                double along = (u * Math.Cos(angle)) + (v * Math.Sin(angle)), across = (v * Math.Cos(angle)) - (u * Math.Sin(angle));
                double front = along - (0.3 * offset) + (bend * across * across);
                return front < -0.35 ? MapEnd.NotValid : front < 0.0 ? MapEnd.Stalls : MapEnd.Arrives;
            }

            MapCells full = FakeMap.Full(columns, rows, Fronts), adaptive = FakeMap.Adaptive(columns, rows, Fronts);
            int stride = new AdaptiveGrid(adaptive).CoarseStride;
            int different = Enumerable.Range(0, full.Count).Count(place => full.End(place) != adaptive.End(place));
            // A corner of a region may be cut off by the rim of the map between two coarse cells: less than half a block.
            Assert.InRange(different, 0, stride * stride / 2);
        },
        iter: 300);

    [Fact]
    [Trait("speed", "slow")]
    public void What_is_computed_does_not_depend_on_stops_or_order()
    {
        static MapEnd Tongue(int i, int j) => j > 20 + (0.4 * i) && Math.Abs(i - 50) > 4 ? MapEnd.Arrives : i > 70 ? MapEnd.ClutchSlips : MapEnd.Stalls;
        MapCells once = FakeMap.Adaptive(101, 81, Tongue);
        for (int seed = 0; seed < 20; seed++)
        {
            var random = new Random(seed);
            int[] done = [.. Enumerable.Range(0, once.Count).Where(once.IsComputed)];
            random.Shuffle(done);
            var cells = new MapCells(101, 81, MapMetric.Outcome);
            foreach (int place in done.Take(random.Next(done.Length)))
            {
                cells.Set(place, once[place]);
            }

            MapStudy.Run(cells, FakeMap.Options(cells, Tongue));
            Assert.Equal(FakeMap.Ends(once), FakeMap.Ends(cells));
            Assert.Equal(done.Order(), Enumerable.Range(0, cells.Count).Where(cells.IsComputed));
        }
    }

    [Theory]
    [InlineData(2, 2)]
    [InlineData(2, 9)]
    [InlineData(17, 2)]
    [InlineData(33, 20)]
    public void Odd_sizes_are_covered_to_their_rims(int columns, int rows)
    {
        MapCells cells = FakeMap.Adaptive(columns, rows, (i, j) => i == columns - 1 && j == rows - 1 ? MapEnd.Stalls : MapEnd.Arrives);
        Assert.All(FakeMap.Ends(cells), end => Assert.NotEqual(MapEnd.Unknown, end));
        Assert.Equal(MapEnd.Stalls, cells.End(cells.Place(columns - 1, rows - 1)));
        Assert.Equal(1, cells.CountOf(MapEnd.Stalls));
    }

    [Fact]
    public void An_island_between_coarse_cells_is_missed_and_the_full_grid_has_it()
    {
        // The honest limit that docs/maps.md states.
        static MapEnd Island(int i, int j) => i == 5 && j == 5 ? MapEnd.Stalls : MapEnd.Arrives;
        Assert.Equal(1, FakeMap.Full(61, 41, Island).CountOf(MapEnd.Stalls));
        Assert.Equal(0, FakeMap.Adaptive(61, 41, Island).CountOf(MapEnd.Stalls));
    }
}
