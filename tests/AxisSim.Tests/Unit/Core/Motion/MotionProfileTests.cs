using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Motion;

public sealed class MotionProfileTests
{
    // Seven cubic pieces summed in double precision, relative to the size of the quantity.
    private const double Rounding = 1e-12;

    [Fact]
    public void Trapezoid_has_three_phases_and_arrives()
    {
        // 90 rad at 3 rad/s with 1.5 rad/s2: ramps of 2 s and 3 rad each leave 84 rad = 28 s of cruise; 32 s in all.
        MotionProfile profile = MotionProfile.Trapezoid(90.0, 3.0, 1.5);
        Assert.Equal(3, profile.Segments.Count);
        Assert.Equal(32.0, profile.DurationSeconds, Rounding);
        Assert.Equal(3.0, profile.Segments[1].Position, Rounding);
        Assert.Equal(28.0, profile.Segments[1].DurationSeconds, Rounding);
        AssertContinuous(profile, jumpsAllowed: true);
    }

    [Fact]
    public void Short_trapezoid_is_triangular()
    {
        // 4 rad at 1 rad/s2: peak sqrt(4 * 1) = 2 rad/s, two ramps of 2 s.
        MotionProfile profile = MotionProfile.Trapezoid(4.0, 3.0, 1.0);
        Assert.Equal(2, profile.Segments.Count);
        Assert.Equal(4.0, profile.DurationSeconds, Rounding);
        Assert.Equal(2.0, profile.At(2.0).Velocity, Rounding);
    }

    [Fact]
    public void Start_rate_jumps_and_stops()
    {
        // From 1 to 3 rad/s at 1 rad/s2: 2 s and 4 rad a ramp; 10 rad leave 2 rad of cruise.
        MotionProfile profile = MotionProfile.Trapezoid(10.0, 3.0, 1.0, 1.0);
        Assert.Equal(4.0 + (2.0 / 3.0), profile.DurationSeconds, Rounding);
        Assert.Equal(1.0, profile.At(0.0).Velocity);
        Assert.Equal(0.0, profile.At(-1e-9).Velocity);
        Assert.Equal(0.0, profile.At(profile.DurationSeconds).Velocity);
    }

    [Fact]
    public void Start_rate_above_the_rate_needs_no_ramp()
    {
        MotionProfile profile = MotionProfile.Trapezoid(-6.0, 3.0, 1.0, 5.0);
        MotionSegment only = Assert.Single(profile.Segments);
        Assert.Equal(-3.0, only.Velocity);
        Assert.Equal(2.0, profile.DurationSeconds, Rounding);
    }

    [Fact]
    public void Nothing_to_do_has_no_segments()
    {
        AxisMotion motion = new() { SlewRateRadiansPerSecond = 1.0, Ramp = Ramp.OfSeconds(1.0), Shape = RampShape.SCurve };
        Assert.Empty(MotionProfile.Create(0.0, motion).Segments);
        Assert.Empty(MotionProfile.Trapezoid(0.0, 1.0, 1.0).Segments);
        Assert.Equal(0.0, MotionProfile.Create(0.0, motion).At(3.0).Position);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(0.1)]
    public void S_curve_ramp_lasts_the_ramp_time_and_its_jerk_phases_their_share(double share)
    {
        // Gain 2 rad/s in 4 s: peak acceleration 2/(4 - 4 share); the mean speed of a ramp is (1 + 3)/2.
        AxisMotion motion = new()
        {
            SlewRateRadiansPerSecond = 3.0,
            StartRateRadiansPerSecond = 1.0,
            Ramp = Ramp.OfSeconds(4.0),
            Shape = RampShape.SCurve,
            JerkShare = share,
        };
        MotionProfile profile = MotionProfile.Create(40.0, motion);
        Assert.Equal(8.0 + ((40.0 - 16.0) / 3.0), profile.DurationSeconds, Rounding);
        Assert.Equal(4.0 * share, profile.Segments[0].DurationSeconds, Rounding);
        Assert.Equal(2.0 / (4.0 * (1.0 - share)), profile.At(4.0 * share).Acceleration, Rounding);
        Assert.Equal(3.0, profile.At(4.0).Velocity, Rounding);
        AssertContinuous(profile, jumpsAllowed: false);
    }

    [Fact]
    public void S_curve_by_acceleration_equals_the_one_by_its_ramp_time()
    {
        // a = v/(Tr (1 - share)): 3 rad/s in 2 s at a share of 0.25 asks for 2 rad/s2.
        AxisMotion byTime = new() { SlewRateRadiansPerSecond = 3.0, Ramp = Ramp.OfSeconds(2.0), Shape = RampShape.SCurve };
        AxisMotion byAcceleration = byTime with { Ramp = Ramp.OfAcceleration(2.0) };
        Assert.Equal(MotionProfile.Create(9.0, byTime).Segments, MotionProfile.Create(9.0, byAcceleration).Segments);
    }

    [Fact]
    public void Any_commanded_move_is_continuous_within_its_limits_and_mirrored_exactly() =>
        Gen.Select(Gen.Double[1e-4, 20.0], Gen.Double[0.01, 3.0], Gen.Double[0.05, 6.0], Gen.Double[0.0, 0.9], Gen.Double[0.02, 0.5], Gen.Bool)
            .Sample((distance, rate, ramp, startShare, share, curved) =>
            {
                AxisMotion motion = new()
                {
                    SlewRateRadiansPerSecond = rate,
                    Ramp = Ramp.OfSeconds(ramp),
                    StartRateRadiansPerSecond = startShare * rate,
                    Shape = curved ? RampShape.SCurve : RampShape.Trapezoid,
                    JerkShare = share,
                };
                MotionProfile profile = MotionProfile.Create(distance, motion);
                AssertContinuous(profile, jumpsAllowed: !curved);
                double limit = motion.PeakAcceleration * (1.0 + Rounding);
                Assert.All(Times(profile), t =>
                {
                    MotionSample now = profile.At(t);
                    Assert.InRange(now.Velocity, -Rounding * rate, rate * (1.0 + Rounding));
                    Assert.InRange(now.Acceleration, -limit, limit);
                });
                MotionProfile mirrored = MotionProfile.Create(-distance, motion);
                Assert.All(Times(profile), t => Assert.Equal(-profile.At(t).Position, mirrored.At(t).Position));
            });

    [Fact]
    public void Any_double_S_joins_its_velocities_within_its_limits() =>
        Gen.Select(Gen.Double[0.0, 1.0], Gen.Double[0.0, 1.0], Gen.Double[0.1, 10.0], Gen.Double[0.1, 10.0], Gen.Double[0.1, 30.0], Gen.Double[0.0, 20.0])
            .Sample((from, to, rate, acceleration, jerk, extra) =>
            {
                (double v0, double v1) = (from * rate, to * rate);
                // The shortest way between the velocities, by the ramp's own law, plus something.
                double change = Math.Abs(v1 - v0);
                double time = change * jerk < acceleration * acceleration
                    ? 2.0 * Math.Sqrt(change / jerk)
                    : (acceleration / jerk) + (change / acceleration);
                double distance = ((v0 + v1) / 2.0 * time) + extra + 1e-6;
                MotionProfile profile = MotionProfile.DoubleS(distance, v0, v1, rate, acceleration, jerk);
                AssertContinuous(profile, jumpsAllowed: false);
                Assert.Equal(v0, profile.At(-1.0).Velocity);
                Assert.Equal(v1, profile.At(profile.DurationSeconds).Velocity);
                MotionSample end = profile.Segments[^1].After(profile.Segments[^1].DurationSeconds);
                Assert.Equal(v1, end.Velocity, 1e-11 * (1.0 + rate));
                Assert.Equal(distance, end.Position, 1e-11 * (1.0 + distance));
            });

    [Fact]
    public void A_faster_double_S_within_the_limits_does_not_exist_nearby()
    {
        // Any lower peak needs a cruise and takes longer: the solved peak is the optimum.
        MotionProfile best = MotionProfile.DoubleS(10.0, 1.0, 0.0, 10.0, 10.0, 30.0);
        double peak = best.Segments.Max(s => s.Velocity);
        MotionProfile lower = MotionProfile.DoubleS(10.0, 1.0, 0.0, peak * 0.999, 10.0, 30.0);
        Assert.True(lower.DurationSeconds > best.DurationSeconds);
    }

    [Theory]
    [InlineData(0.1, 5.0, 0.0)]
    [InlineData(1.0, -1.0, 0.0)]
    [InlineData(1.0, 20.0, 0.0)]
    public void Impossible_double_S_is_refused(double distance, double startVelocity, double endVelocity) =>
        Assert.Throws<ArgumentException>(() => MotionProfile.DoubleS(distance, startVelocity, endVelocity, 10.0, 10.0, 30.0));

    private static IEnumerable<double> Times(MotionProfile profile) =>
        Enumerable.Range(0, 41).Select(i => profile.DurationSeconds * i / 40.0);

    private static void AssertContinuous(MotionProfile profile, bool jumpsAllowed)
    {
        double speed = profile.Segments.Max(s => Math.Abs(s.Velocity));
        double acceleration = profile.Segments.Max(s => Math.Abs(s.Acceleration) + Math.Abs(s.Jerk * s.DurationSeconds));
        Assert.Equal(0.0, profile.Segments[0].StartSeconds);
        Assert.Equal(0.0, profile.Segments[0].Position);
        for (int i = 1; i <= profile.Segments.Count; i++)
        {
            MotionSegment before = profile.Segments[i - 1];
            MotionSample end = before.After(before.DurationSeconds);
            if (i == profile.Segments.Count)
            {
                Assert.Equal(profile.Distance, end.Position, Rounding * Math.Max(1.0, Math.Abs(profile.Distance)));
                Assert.Equal(profile.Distance, profile.At(profile.DurationSeconds).Position);
                continue;
            }

            MotionSegment after = profile.Segments[i];
            Assert.Equal(before.StartSeconds + before.DurationSeconds, after.StartSeconds, Rounding * profile.DurationSeconds);
            Assert.Equal(end.Position, after.Position, Rounding * Math.Max(1.0, Math.Abs(profile.Distance)));
            Assert.Equal(end.Velocity, after.Velocity, Rounding * speed);
            if (!jumpsAllowed)
            {
                Assert.Equal(end.Acceleration, after.Acceleration, Rounding * acceleration);
            }
        }
    }
}
