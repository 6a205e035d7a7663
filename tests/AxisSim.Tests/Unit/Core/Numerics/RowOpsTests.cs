using System.Runtime.Intrinsics;
using AxisSim.Core.Numerics;

namespace AxisSim.Tests.Unit.Core.Numerics;

/// <summary>Rows of four numbers become columns, at every width.</summary>
public sealed class RowOpsTests
{
    [Fact]
    public void Columns_of_every_width_are_those_of_the_rows()
    {
        double[] rows = [.. Enumerable.Range(0, 32).Select(i => (double)i)];
        RowOps.Columns(ref rows[0], out double a, out double b, out double c, out double d);
        Assert.Equal([0.0, 1.0, 2.0, 3.0], [a, b, c, d]);
        Vector128<double>[] two = [.. Enumerable.Range(0, 4).Select(i => Vector128.Create(rows, 2 * i))];
        RowOps.Columns(ref two[0], out Vector128<double> a2, out Vector128<double> b2, out Vector128<double> c2, out Vector128<double> d2);
        Assert.Equal([Vector128.Create(0.0, 4), Vector128.Create(1.0, 5), Vector128.Create(2.0, 6), Vector128.Create(3.0, 7)], [a2, b2, c2, d2]);
        Vector256<double>[] four = [.. Enumerable.Range(0, 4).Select(i => Vector256.Create(rows, 4 * i))];
        RowOps.Columns(ref four[0], out Vector256<double> a4, out Vector256<double> b4, out Vector256<double> c4, out Vector256<double> d4);
        Assert.Equal([Column4(0), Column4(1), Column4(2), Column4(3)], [a4, b4, c4, d4]);
        Vector512<double>[] eight = [.. Enumerable.Range(0, 4).Select(i => Vector512.Create(rows, 8 * i))];
        RowOps.Columns(ref eight[0], out Vector512<double> a8, out Vector512<double> b8, out Vector512<double> c8, out Vector512<double> d8);
        Assert.Equal([Column8(0), Column8(1), Column8(2), Column8(3)], [a8, b8, c8, d8]);
    }

    private static Vector256<double> Column4(double first) => Vector256.Create(first, first + 4, first + 8, first + 12);

    private static Vector512<double> Column8(double first) => Vector512.Create(Column4(first), Column4(first + 16));
}
