using System.Runtime.CompilerServices;

namespace AxisSim.Core.Numerics;

/// <summary>The operations of the vector types on one number, under the same names, so that one text of a law serves for a number and for a vector of them.</summary>
internal static class ScalarOps
{
    private const MethodImplOptions Inline = MethodImplOptions.AggressiveInlining;

    [MethodImpl(Inline)]
    public static double Create(double value) => value;

    [MethodImpl(Inline)]
    public static long Create(long value) => value;

    [MethodImpl(Inline)]
    public static double FusedMultiplyAdd(double left, double right, double addend) => Math.FusedMultiplyAdd(left, right, addend);

    [MethodImpl(Inline)]
    public static double MinNative(double left, double right) => double.MinNative(left, right);

    [MethodImpl(Inline)]
    public static double MaxNative(double left, double right) => double.MaxNative(left, right);

    [MethodImpl(Inline)]
    public static double Abs(double value) => Math.Abs(value);

    [MethodImpl(Inline)]
    public static double Floor(double value) => Math.Floor(value);

    [MethodImpl(Inline)]
    public static double CopySign(double value, double sign) => Math.CopySign(value, sign);

    [MethodImpl(Inline)]
    public static bool LessThan(double left, double right) => left < right;

    [MethodImpl(Inline)]
    public static bool GreaterThan(double left, double right) => left > right;

    [MethodImpl(Inline)]
    public static bool LessThanOrEqual(double left, double right) => left <= right;

    [MethodImpl(Inline)]
    public static bool Equals(double left, double right) => left == right;

    [MethodImpl(Inline)]
    public static bool GreaterThanAll(double left, double right) => left > right;

    [MethodImpl(Inline)]
    public static bool LessThanOrEqualAll(double left, double right) => left <= right;

    [MethodImpl(Inline)]
    public static bool EqualsAll(double left, double right) => left == right;

    [MethodImpl(Inline)]
    public static bool EqualsAny(double left, double right) => left == right;

    [MethodImpl(Inline)]
    public static ulong ExtractMostSignificantBits(bool condition) => condition ? 1UL : 0UL;

    [MethodImpl(Inline)]
    public static double ConditionalSelect(bool condition, double left, double right) => condition ? left : right;

    [MethodImpl(Inline)]
    public static long AsInt64(double value) => BitConverter.DoubleToInt64Bits(value);

    [MethodImpl(Inline)]
    public static double AsDouble(long value) => BitConverter.Int64BitsToDouble(value);
}
