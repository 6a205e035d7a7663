using System.Globalization;
using System.Numerics;

namespace AxisSim.Core.Gearing;

/// <summary>A positive fraction of whole numbers in lowest terms.</summary>
public readonly record struct Fraction
{
    /// <summary>Makes a fraction and reduces it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A part is not positive.</exception>
    public Fraction(BigInteger numerator, BigInteger denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(numerator);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(denominator);
        BigInteger common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        (Numerator, Denominator) = (numerator / common, denominator / common);
    }

    /// <summary>One.</summary>
    public static Fraction One { get; } = new(1, 1);

    /// <summary>Upper part.</summary>
    public BigInteger Numerator { get; }

    /// <summary>Lower part.</summary>
    public BigInteger Denominator { get; }

    /// <summary>Whether it is a whole number.</summary>
    public bool IsWhole => Denominator.IsOne;

    /// <summary>The nearest decimal value.</summary>
    public double Value => (double)Numerator / (double)Denominator;

    /// <summary>The product.</summary>
    public Fraction Times(Fraction other) => new(Numerator * other.Numerator, Denominator * other.Denominator);

    /// <summary>As "n/d", or "n" when whole; digits alone, in every culture.</summary>
    public override string ToString() => IsWhole
        ? Numerator.ToString(CultureInfo.InvariantCulture)
        : $"{Numerator.ToString(CultureInfo.InvariantCulture)}/{Denominator.ToString(CultureInfo.InvariantCulture)}";
}
