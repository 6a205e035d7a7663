using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace AxisSim.Core.Numerics;

/// <summary>Turns rows of four numbers, a row for each lane, into a vector for each column.</summary>
/// <remarks>One form for each width; the same text of a law calls the one that goes with its vectors.</remarks>
internal static class RowOps
{
    private const MethodImplOptions Inline = MethodImplOptions.AggressiveInlining;

    /// <summary>One lane: nothing to turn.</summary>
    [MethodImpl(Inline)]
    public static void Columns(ref double rows, out double first, out double second, out double third, out double fourth) =>
        (first, second, third, fourth) = (rows, Unsafe.Add(ref rows, 1), Unsafe.Add(ref rows, 2), Unsafe.Add(ref rows, 3));

    /// <summary>Two lanes.</summary>
    [MethodImpl(Inline)]
    public static void Columns(ref Vector128<double> rows, out Vector128<double> first, out Vector128<double> second, out Vector128<double> third, out Vector128<double> fourth)
    {
        Vector128<double> a = rows;
        Vector128<double> b = Unsafe.Add(ref rows, 1);
        Vector128<double> c = Unsafe.Add(ref rows, 2);
        Vector128<double> d = Unsafe.Add(ref rows, 3);
        first = Vector128.Create(a.ToScalar(), c.ToScalar());
        second = Vector128.Create(a.GetElement(1), c.GetElement(1));
        third = Vector128.Create(b.ToScalar(), d.ToScalar());
        fourth = Vector128.Create(b.GetElement(1), d.GetElement(1));
    }

    /// <summary>Four lanes.</summary>
    [MethodImpl(Inline)]
    public static void Columns(ref Vector256<double> rows, out Vector256<double> first, out Vector256<double> second, out Vector256<double> third, out Vector256<double> fourth)
    {
        if (!Avx.IsSupported)
        {
            Columns(ref Unsafe.As<Vector256<double>, double>(ref rows), Vector256<double>.Count, out first, out second, out third, out fourth);
            return;
        }

        Vector256<double> a = rows;
        Vector256<double> b = Unsafe.Add(ref rows, 1);
        Vector256<double> c = Unsafe.Add(ref rows, 2);
        Vector256<double> d = Unsafe.Add(ref rows, 3);
        Vector256<double> evenLow = Avx.UnpackLow(a, b);
        Vector256<double> oddLow = Avx.UnpackHigh(a, b);
        Vector256<double> evenHigh = Avx.UnpackLow(c, d);
        Vector256<double> oddHigh = Avx.UnpackHigh(c, d);
        first = Avx.Permute2x128(evenLow, evenHigh, 0x20);
        second = Avx.Permute2x128(oddLow, oddHigh, 0x20);
        third = Avx.Permute2x128(evenLow, evenHigh, 0x31);
        fourth = Avx.Permute2x128(oddLow, oddHigh, 0x31);
    }

    /// <summary>Eight lanes.</summary>
    [MethodImpl(Inline)]
    public static void Columns(ref Vector512<double> rows, out Vector512<double> first, out Vector512<double> second, out Vector512<double> third, out Vector512<double> fourth)
    {
        if (!Avx512F.IsSupported)
        {
            Columns(ref Unsafe.As<Vector512<double>, double>(ref rows), Vector512<double>.Count, out first, out second, out third, out fourth);
            return;
        }

        Vector512<double> a = rows;
        Vector512<double> b = Unsafe.Add(ref rows, 1);
        Vector512<double> c = Unsafe.Add(ref rows, 2);
        Vector512<double> d = Unsafe.Add(ref rows, 3);
        Vector512<long> left = Vector512.Create(0L, 4L, 8L, 12L, 1L, 5L, 9L, 13L);
        Vector512<long> right = Vector512.Create(2L, 6L, 10L, 14L, 3L, 7L, 11L, 15L);
        Vector512<double> leftLow = Avx512F.PermuteVar8x64x2(a, left, b);
        Vector512<double> leftHigh = Avx512F.PermuteVar8x64x2(c, left, d);
        Vector512<double> rightLow = Avx512F.PermuteVar8x64x2(a, right, b);
        Vector512<double> rightHigh = Avx512F.PermuteVar8x64x2(c, right, d);
        first = Avx512F.Shuffle4x128(leftLow, leftHigh, 0x44);
        second = Avx512F.Shuffle4x128(leftLow, leftHigh, 0xEE);
        third = Avx512F.Shuffle4x128(rightLow, rightHigh, 0x44);
        fourth = Avx512F.Shuffle4x128(rightLow, rightHigh, 0xEE);
    }

    /// <summary>Where the machine has no such registers.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Columns<T>(ref double rows, int lanes, out T first, out T second, out T third, out T fourth)
        where T : unmanaged
    {
        (first, second, third, fourth) = (default, default, default, default);
        Span<double> a = Numbers(ref first);
        Span<double> b = Numbers(ref second);
        Span<double> c = Numbers(ref third);
        Span<double> d = Numbers(ref fourth);
        for (int i = 0; i < lanes; i++)
        {
            (a[i], b[i], c[i], d[i]) = (Unsafe.Add(ref rows, 4 * i), Unsafe.Add(ref rows, (4 * i) + 1), Unsafe.Add(ref rows, (4 * i) + 2), Unsafe.Add(ref rows, (4 * i) + 3));
        }
    }

    private static Span<double> Numbers<T>(ref T value)
        where T : unmanaged => MemoryMarshal.Cast<T, double>(MemoryMarshal.CreateSpan(ref value, 1));
}
