using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxisSim.Core.Numerics;

namespace AxisSim.Core.Dynamics;

/// <summary>Dryden-shaped turbulence along the wind as a function of time alone: a seeded sum of sinusoids.</summary>
/// <remarks>
/// <para>Longitudinal spectrum (MIL-F-8785C): <c>S(w) = sigma2 (2/pi) T/(1 + (T w)2)</c> for w above 0, with <c>T = L/V</c>, L length scale (m),
/// V mean speed (m/s), sigma = intensity times V. Its integral is sigma2, its autocorrelation <c>sigma2 exp(-t/T)</c>.</para>
/// <para>The frequencies are split into bands with edges evenly spaced in log(w), from 0.01/T to 1000/T, the lowest band reaching down to zero and
/// the highest up to infinity. Each has one sinusoid whose variance is the band's integral
/// <c>sigma2 (2/pi) [atan(T w)]</c>, at a random frequency within it (so that nothing repeats) and a random phase. The sum's variance is
/// thus sigma2 exactly. The turbulence is frozen in the mean wind; a sample over less than some 100 T has a mean of its own, as real wind does.</para>
/// </remarks>
internal sealed class DrydenTurbulence
{
    // A multiple of the numbers that are worked out at a time.
    private const int BandCount = 60;
    private const double LowestEdge = 0.01;
    private const double HighestEdge = 1000.0;

    private readonly double[] amplitudes = new double[BandCount];
    private readonly double[] frequencies = new double[BandCount];
    private readonly double[] phases = new double[BandCount];

    /// <summary>Turbulence of a mean speed (m/s, its sign mirrors the turbulence), intensity, length scale (m) and seed.</summary>
    public DrydenTurbulence(double meanMetresPerSecond, double intensity, double lengthMetres, int seed)
    {
        SplitMix64 random = new(unchecked((ulong)seed));
        double sigma = intensity * meanMetresPerSecond;
        double timeScale = lengthMetres / Math.Abs(meanMetresPerSecond);
        double step = Math.Log(HighestEdge / LowestEdge) / BandCount;
        for (int i = 0; i < BandCount; i++)
        {
            double low = LowestEdge * Math.Exp(i * step);
            double high = LowestEdge * Math.Exp((i + 1) * step);
            double share = ((i == BandCount - 1 ? Math.PI / 2.0 : Math.Atan(high)) - (i == 0 ? 0.0 : Math.Atan(low))) * 2.0 / Math.PI;
            amplitudes[i] = sigma * Math.Sqrt(2.0 * share);
            frequencies[i] = low * Math.Exp(step * random.NextUnit()) / timeScale;
            phases[i] = 2.0 * Math.PI * random.NextUnit();
        }
    }

    /// <summary>Variance over an endless time, m2/s2.</summary>
    public double Variance => amplitudes.Sum(a => a * a / 2.0);

    /// <summary>Speed added to the mean at a time, m/s.</summary>
    /// <remarks>The sines are worked out some at a time, and added up one after the other: the same bits in registers of any width.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double At(double seconds)
    {
        double sum = 0.0;
        var time = Vector256.Create(seconds);
        for (int i = 0; i < BandCount; i += Vector256<double>.Count)
        {
            Numerics.Four.LaneMath.SinCos((Vector256.LoadUnsafe(ref frequencies[i]) * time) + Vector256.LoadUnsafe(ref phases[i]), out Vector256<double> sin, out _);
            Vector256<double> speeds = Vector256.LoadUnsafe(ref amplitudes[i]) * sin;
            sum += speeds.GetElement(0);
            sum += speeds.GetElement(1);
            sum += speeds.GetElement(2);
            sum += speeds.GetElement(3);
        }

        return sum;
    }
}
