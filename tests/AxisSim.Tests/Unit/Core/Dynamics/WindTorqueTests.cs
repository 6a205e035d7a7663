using AxisSim.Core.Dynamics;
using AxisSim.Core.Mount;

namespace AxisSim.Tests.Unit.Core.Dynamics;

public sealed class WindTorqueTests
{
    private const double Rounding = 1e-12;

    private static readonly Disturbances Breeze = new() { WindMetresPerSecond = 5.0, AreaSquareMetres = 0.3, LeverMetres = 0.2 };

    [Fact]
    public void Steady_wind_by_hand()
    {
        // 1.225/2 * 25 = 15.3125 Pa; times 1.2 * 0.3 m2 * 0.2 m = 1.1025 N m.
        WindTorque wind = new(Breeze);
        Assert.Equal(1.1025, wind.At(0.0), Rounding);
        Assert.Equal(1.1025, wind.At(17.0), Rounding);
        Assert.True(wind.IsSteady);
        Assert.Equal(-1.1025, new WindTorque(Breeze with { WindMetresPerSecond = -5.0 }).At(0.0), Rounding);
    }

    [Fact]
    public void Gust_rises_to_its_top_and_falls_again()
    {
        WindTorque wind = new(Breeze with { GustMetresPerSecond = 4.0, GustStartSeconds = 2.0, GustSeconds = 1.5 });
        Assert.Equal(5.0, wind.SpeedAt(1.99));
        Assert.Equal(7.0, wind.SpeedAt(2.375), Rounding);
        Assert.Equal(9.0, wind.SpeedAt(2.75), Rounding);
        Assert.Equal(5.0, wind.SpeedAt(3.51));
        Assert.Equal(1.1025 * 81.0 / 25.0, wind.At(2.75), Rounding);
    }

    [Fact]
    public void No_wind_is_known_to_be_none()
    {
        Assert.True(new WindTorque(new Disturbances()).IsZero);
        Assert.True(new WindTorque(new Disturbances { AreaSquareMetres = 1.0, LeverMetres = 1.0, TurbulenceIntensity = 0.3 }).IsZero);
        Assert.Equal(0.0, new WindTorque(new Disturbances { WindMetresPerSecond = 5.0 }).At(1.0));
    }

    [Fact]
    public void Turbulence_of_a_seed_is_always_the_same_and_mirrors_with_the_wind()
    {
        Disturbances rough = Breeze with { TurbulenceIntensity = 0.2, TurbulenceSeed = 7 };
        WindTorque one = new(rough);
        WindTorque two = new(rough);
        WindTorque mirrored = new(rough with { WindMetresPerSecond = -5.0 });
        WindTorque other = new(rough with { TurbulenceSeed = 8 });
        for (double t = 0.0; t < 20.0; t += 0.37)
        {
            Assert.Equal(one.At(t), two.At(t));
            Assert.Equal(one.At(t), -mirrored.At(t));
            Assert.NotEqual(one.At(t), other.At(t));
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Turbulence_time_series_has_the_variance_and_memory_of_the_law()
    {
        // T = L/V = 2 s. Over 2e6 s sampled every 13 s, beyond its memory: sampling scatter of the variance
        // sqrt(2/150000) = 0.4 %. The autocorrelation exp(-t/T) suffers besides from the width of the bands, 1.21 in frequency.
        const double SamplingScatter = 0.01;
        const double BandWidth = 0.03;
        DrydenTurbulence turbulence = new(10.0, 0.15, 20.0, 42);
        const int Count = 150_000;
        double[] lags = [0.0, 1.0, 2.0, 4.0];
        double[] products = new double[lags.Length];
        double mean = 0.0;
        for (int i = 0; i < Count; i++)
        {
            double now = turbulence.At(i * 13.0);
            mean += now / Count;
            for (int k = 0; k < lags.Length; k++)
            {
                products[k] += now * turbulence.At((i * 13.0) + lags[k]) / Count;
            }
        }

        Assert.Equal(2.25, turbulence.Variance, Rounding);
        Assert.Equal(0.0, mean, SamplingScatter * 1.5);
        Assert.Equal(1.0, products[0] / 2.25, SamplingScatter);
        for (int k = 1; k < lags.Length; k++)
        {
            Assert.Equal(Math.Exp(-lags[k] / 2.0), products[k] / 2.25, BandWidth);
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Turbulence_spectrum_follows_the_law_above_and_below_the_corner()
    {
        // Variance below a frequency by low-pass averaging: the mean over a window D of white-in-band noise. For the law's autocorrelation the variance
        // of the mean over D is sigma2 (2/x2)(x - 1 + exp(-x)), x = D/T. Over 20000 windows of D = 5 T the scatter is sqrt(2/20000) = 1 %.
        const double Tolerance = 0.04; // scatter and the width of the bands
        DrydenTurbulence turbulence = new(10.0, 0.15, 20.0, 3);
        const int Windows = 20_000;
        const int Points = 20;
        double sum = 0.0;
        for (int w = 0; w < Windows; w++)
        {
            double mean = 0.0;
            for (int i = 0; i < Points; i++)
            {
                mean += turbulence.At((w * 97.3) + (10.0 * (i + 0.5) / Points)) / Points;
            }

            sum += mean * mean / Windows;
        }

        Assert.Equal(2.25 * 2.0 / 25.0 * (5.0 - 1.0 + Math.Exp(-5.0)), sum, Tolerance * 2.25);
    }
}
