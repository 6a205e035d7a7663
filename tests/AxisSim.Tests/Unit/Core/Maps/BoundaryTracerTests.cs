using AxisSim.Core.Maps;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Maps;

/// <summary>The boundary of a map, against shapes drawn by hand and by its defining property.</summary>
public sealed class BoundaryTracerTests
{
    [Fact]
    public void A_single_cell_is_a_diamond_with_the_inside_to_its_left()
    {
        BoundaryLine line = Assert.Single(Trace("...", ".#.", "..."));
        Assert.True(line.Closed);
        Assert.Equal([(1.0, 0.5), (1.5, 1.0), (1.0, 1.5), (0.5, 1.0)], FromLowest(line));
        Assert.True(Area(line) > 0.0, "against the clock");
    }

    [Fact]
    public void A_hole_runs_with_the_clock()
    {
        BoundaryLine line = Assert.Single(Trace("###", "#.#", "###"));
        Assert.True(line.Closed);
        Assert.Equal(-0.5, Area(line), 1e-12);
    }

    [Fact]
    public void A_straight_edge_runs_from_border_to_border()
    {
        BoundaryLine line = Assert.Single(Trace("##..", "##..", "##.."));
        Assert.False(line.Closed);
        Assert.Equal([(1.5, -0.5), (1.5, 0.0), (1.5, 1.0), (1.5, 2.0), (1.5, 2.5)], Pairs(line));
    }

    [Fact]
    public void A_slope_cuts_the_corners_of_the_cells()
    {
        BoundaryLine line = Assert.Single(Trace("..#", ".##", "###"));
        Assert.Equal([(-0.5, 0.5), (0.0, 0.5), (0.5, 1.0), (1.0, 1.5), (1.5, 2.0), (1.5, 2.5)], Pairs(line).Reverse());
    }

    [Theory]
    [InlineData("#.", ".#")]
    [InlineData(".#", "#.")]
    public void Cells_that_touch_at_a_corner_do_not_hang_together(string upper, string lower)
    {
        IReadOnlyList<BoundaryLine> lines = Trace(upper, lower);
        Assert.Equal(2, lines.Count);
        Assert.All(lines, line => Assert.Equal(4, line.Points.Count));
    }

    [Fact]
    public void One_row_one_column_and_one_cell()
    {
        Assert.Equal([(0.5, 0.5), (0.5, 0.0), (0.5, -0.5)], Trace(new GridScale([0, 1], false), new GridScale([0], false), ".#").SelectMany(Pairs).Select(p => (p.X, p.Y == 0 ? 0 : p.Y / 2)));
        Assert.Equal([(1.0, 1.5), (2.0, 1.5), (3.0, 1.5)], Trace(new GridScale([2], false), new GridScale([1, 2], false), ".", "#").SelectMany(Pairs).OrderBy(p => p.X));
        Assert.Empty(Trace("#"));
        Assert.Empty(Trace("."));
    }

    [Fact]
    public void Logarithmic_axes_meet_half_way_in_the_logarithm()
    {
        BoundaryLine line = Assert.Single(Trace(new GridScale([1, 100], true), new GridScale([1e-3, 1e-1], true), "#.", "#."));
        Assert.All(line.Points, point => Assert.Equal(10.0, point.X, 1e-12));
        Assert.Equal(1e-4, line.Points.Min(p => p.Y), 1e-16);
        Assert.Equal(1.0, line.Points.Max(p => p.Y), 1e-12);
    }

    [Fact]
    public void A_number_of_cells_that_is_not_the_grids_is_refused() =>
        Assert.Throws<ArgumentException>(() => BoundaryTracer.Trace(new GridScale([1, 2], false), new GridScale([1, 2], false), [true, false, true]));

    [Fact]
    public void A_scale_that_cannot_be_one_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new GridScale([], false));
        Assert.Throws<ArgumentException>(() => new GridScale([1, 1], false));
        Assert.Throws<ArgumentException>(() => new GridScale([2, 1], false));
        Assert.Throws<ArgumentException>(() => new GridScale([0, 1], true));
        Assert.Throws<ArgumentException>(() => new GridScale([1, double.NaN], false));
        Assert.Throws<ArgumentException>(() => new GridScale([1, double.PositiveInfinity], true));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_scale_finds_the_cell_of_a_value_and_its_place(bool logarithmic)
    {
        var scale = new GridScale([1, 2, 4, 7], logarithmic);
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(i, scale.IndexOf(scale.Centres[i]));
            Assert.Equal(scale.Centres[i], scale.At(scale.ShareOf(scale.Centres[i])), 1e-12);
        }

        Assert.Equal((0, 3), (scale.IndexOf(scale.Edges[0]), scale.IndexOf(scale.Edges[4])));
        Assert.Equal((-1, -1, -1), (scale.IndexOf(scale.Edges[0] - 1e-9), scale.IndexOf(scale.Edges[4] + 1e-9), scale.IndexOf(double.NaN)));
    }

    [Fact]
    public void Each_pair_of_neighbours_that_differ_is_crossed_once_and_no_other() =>
        (from columns in Gen.Int[1, 9]
         from rows in Gen.Int[1, 9]
         from cells in Gen.Bool.Array[columns * rows]
         from logarithmic in Gen.Bool
         select (columns, rows, cells, logarithmic)).Sample(sample =>
         {
             var x = new GridScale([.. Enumerable.Range(1, sample.columns).Select(i => (double)(i * i))], sample.logarithmic);
             var y = new GridScale([.. Enumerable.Range(1, sample.rows).Select(i => i + (0.1 * i * i))], false);
             var wanted = new List<BoundaryPoint>();
             for (int row = 0; row < sample.rows; row++)
             {
                 for (int column = 0; column < sample.columns; column++)
                 {
                     bool here = sample.cells[(row * sample.columns) + column];
                     if (column + 1 < sample.columns && sample.cells[(row * sample.columns) + column + 1] != here)
                     {
                         wanted.Add(new(x.Edges[column + 1], y.Centres[row]));
                     }

                     if (row + 1 < sample.rows && sample.cells[((row + 1) * sample.columns) + column] != here)
                     {
                         wanted.Add(new(x.Centres[column], y.Edges[row + 1]));
                     }
                 }
             }

             IReadOnlyList<BoundaryLine> lines = BoundaryTracer.Trace(x, y, sample.cells);
             bool OnBorder(BoundaryPoint p) => p.X == x.Edges[0] || p.X == x.Edges[^1] || p.Y == y.Edges[0] || p.Y == y.Edges[^1];
             Assert.Equal(
                 wanted.OrderBy(p => p.Y).ThenBy(p => p.X),
                 lines.SelectMany(line => line.Points).Where(p => !OnBorder(p)).OrderBy(p => p.Y).ThenBy(p => p.X));
             foreach (BoundaryLine line in lines)
             {
                 // Ends, and only ends, lie on the border.
                 Assert.Equal(line.Closed ? [] : [0, line.Points.Count - 1], Enumerable.Range(0, line.Points.Count).Where(i => OnBorder(line.Points[i])));
             }
         });

    /// <summary>Rows from the top down, as a map is seen; centres at 0, 1, 2 and so on.</summary>
    private static IReadOnlyList<BoundaryLine> Trace(params string[] rows) => Trace(
        new GridScale([.. Enumerable.Range(0, rows[0].Length).Select(i => (double)i)], false), new GridScale([.. Enumerable.Range(0, rows.Length).Select(i => (double)i)], false), rows);

    private static IReadOnlyList<BoundaryLine> Trace(GridScale x, GridScale y, params string[] rows) =>
        BoundaryTracer.Trace(x, y, [.. rows.Reverse().SelectMany(row => row.Select(cell => cell == '#'))]);

    private static IEnumerable<(double X, double Y)> Pairs(BoundaryLine line) => line.Points.Select(p => (p.X, p.Y));

    private static IEnumerable<(double X, double Y)> FromLowest(BoundaryLine line)
    {
        (double X, double Y)[] points = [.. Pairs(line)];
        int lowest = Array.IndexOf(points, points.MinBy(p => p.Y));
        return [.. points[lowest..], .. points[..lowest]];
    }

    private static double Area(BoundaryLine line) => 0.5 * line.Points.Zip(line.Points.Skip(1).Append(line.Points[0]), (a, b) => (a.X * b.Y) - (b.X * a.Y)).Sum();
}
