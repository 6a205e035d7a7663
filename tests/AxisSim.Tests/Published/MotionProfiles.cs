using AxisSim.Core.Motion;

namespace AxisSim.Tests.Published;

/// <summary>Motion profiles: Biagiotti and Melchiorri, "Trajectory Planning for Automatic Machines and Robots" (2008), ch. 3, from memory; textbook shapes.</summary>
public sealed class MotionProfiles
{
    // The book prints four decimals, cut rather than rounded in places (0.7333, 0.8333, 1.1433).
    private const double FourDecimals = 1e-4;

    [Fact]
    public void Example_3_9_rate_is_reached()
    {
        MotionProfile p = MotionProfile.DoubleS(10.0, 1.0, 0.0, 5.0, 10.0, 30.0);
        Assert.Equal(7, p.Segments.Count);
        Assert.Equal(0.3333, p.Segments[0].DurationSeconds, FourDecimals);
        Assert.Equal(0.7333, p.Segments.Take(3).Sum(s => s.DurationSeconds), FourDecimals);
        Assert.Equal(1.1433, p.Segments[3].DurationSeconds, FourDecimals);
        Assert.Equal(0.8333, p.Segments.Skip(4).Sum(s => s.DurationSeconds), FourDecimals);
        Assert.Equal(5.0, p.Segments[3].Velocity, 1e-12);
    }

    [Fact]
    public void Example_3_10_rate_is_not_reached()
    {
        MotionProfile p = MotionProfile.DoubleS(10.0, 1.0, 0.0, 10.0, 10.0, 30.0);
        Assert.Equal(6, p.Segments.Count);
        Assert.Equal(1.0747, p.Segments.Take(3).Sum(s => s.DurationSeconds), FourDecimals);
        Assert.Equal(1.1747, p.Segments.Skip(3).Sum(s => s.DurationSeconds), FourDecimals);
        Assert.Equal(8.4136, p.Segments[3].Velocity, FourDecimals);
    }

    [Theory]
    [InlineData(7.0, 0.4666 + 1.4718)] // example 3.11
    [InlineData(7.5, 2.6667)] // example 3.12
    public void Examples_3_11_and_3_12_are_matched_or_beaten(double startVelocity, double publishedSeconds)
    {
        // The first ramp does not reach the acceleration limit. The book then lowers that limit for both ramps in steps of 1 % (3.11: to 6.9641), or
        // gives up the first ramp and brakes throughout (3.12: at 2.9190 at most). Neither is the fastest motion within the limits, which this
        // program finds; so it may only be faster, and must keep the limits of the examples.
        MotionProfile p = MotionProfile.DoubleS(10.0, startVelocity, 0.0, 10.0, 10.0, 30.0);
        Assert.True(p.DurationSeconds < publishedSeconds, $"takes {p.DurationSeconds} s");
        Assert.InRange(p.Segments.Max(s => s.Velocity), startVelocity, 10.0);
        Assert.All(p.Segments, s => Assert.InRange(s.Acceleration, -10.0 - 1e-12, 10.0 + 1e-12));
        Assert.Equal(10.0, p.Segments[^1].After(p.Segments[^1].DurationSeconds).Position, 1e-12);
    }

    [Fact]
    public void Triangular_profile()
    {
        // Textbook: peak 2 d/T. 12 rad in 4 s: 6 rad/s at 3 rad/s2.
        MotionProfile p = MotionProfile.Trapezoid(12.0, 100.0, 3.0);
        Assert.Equal(4.0, p.DurationSeconds, 1e-12);
        Assert.Equal(2.0 * 12.0 / 4.0, p.At(2.0).Velocity, 1e-12);
    }

    [Fact]
    public void One_third_profile()
    {
        // Trade rule (from memory; exact by area): a third each of rise, cruise and fall has the rate 1.5 d/T and the acceleration 4.5 d/T2.
        const double D = 12.0;
        const double T = 6.0;
        MotionProfile p = MotionProfile.Trapezoid(D, 1.5 * D / T, 4.5 * D / (T * T));
        Assert.Equal(T, p.DurationSeconds, 1e-12);
        Assert.All(p.Segments, s => Assert.Equal(T / 3.0, s.DurationSeconds, 1e-12));
    }

    [Fact]
    public void Step_by_step_ramp()
    {
        // Stepper ramp rule: speed after each step v_i = sqrt(v_(i-1)^2 + 2 a), so v = sqrt(v0^2 + 2 a S) after S steps (in steps and s).
        const double A = 2000.0;
        const double V0 = 100.0;
        MotionProfile p = MotionProfile.Trapezoid(4000.0, 1e6, A, V0);
        double v = V0;
        for (int step = 1; step <= 1500; step++)
        {
            v = Math.Sqrt((v * v) + (2.0 * A));
            MotionSample sample = p.At((v - V0) / A);
            Assert.Equal(step, sample.Position, 1e-9 * step);
            Assert.Equal(Math.Sqrt((V0 * V0) + (2.0 * A * step)), sample.Velocity, 1e-9 * v);
        }
    }
}
