using AxisSim.Core.Mount;

namespace AxisSim.Core.Motion;

/// <summary>A planned motion along one axis: pieces cubic in time.</summary>
/// <remarks>
/// <para>A negative distance is the exact mirror image of the positive one; a zero distance has no segments. Short moves that cannot
/// reach the rate turn round at a lower peak (triangular, or its jerk-limited kin).</para>
/// <para>Jerk-limited profiles: the double-S trajectory of Biagiotti and Melchiorri, "Trajectory Planning for Automatic Machines
/// and Robots" (2008), ch. 3, but where the rate is not reached the peak velocity is solved to the last digit, not stepped down
/// to, so the move is the fastest within the limits.</para>
/// </remarks>
public sealed class MotionProfile
{
    private readonly MotionSegment[] segments;
    private readonly double velocityBefore;
    private readonly double velocityAfter;

    private MotionProfile(ProfileSketch sketch, double sign, double distance, double velocityBefore, double velocityAfter)
    {
        segments = sketch.ToSegments(sign);
        Distance = distance;
        this.velocityBefore = velocityBefore;
        this.velocityAfter = velocityAfter;
        DurationSeconds = segments.Length == 0 ? 0.0 : segments[^1].StartSeconds + segments[^1].DurationSeconds;
    }

    /// <summary>Pieces in order of time, without gaps; those of no duration are left out.</summary>
    public IReadOnlyList<MotionSegment> Segments => segments;

    /// <summary>Duration, s.</summary>
    public double DurationSeconds { get; }

    /// <summary>Distance covered, rad (signed).</summary>
    public double Distance { get; }

    /// <summary>Constant-acceleration ramps.</summary>
    /// <param name="distance">Distance, rad (signed).</param>
    /// <param name="rate">Greatest rate, rad/s.</param>
    /// <param name="acceleration">Acceleration, rad/s2; not used when the start rate is not below the rate.</param>
    /// <param name="startRate">Rate to which the velocity jumps at once, and from which it stops, rad/s.</param>
    public static MotionProfile Trapezoid(double distance, double rate, double acceleration, double startRate = 0)
    {
        RequireFinite(distance, nameof(distance));
        RequirePositive(rate, nameof(rate));
        ArgumentOutOfRangeException.ThrowIfNegative(startRate);
        double way = Math.Abs(distance);
        double low = Math.Min(startRate, rate);
        ProfileSketch sketch = new(low);
        if (way > 0.0 && (low >= rate || double.IsPositiveInfinity(acceleration)))
        {
            sketch = new(rate);
            sketch.Add(way / rate, 0.0, 0.0);
        }
        else if (way > 0.0)
        {
            RequirePositive(acceleration, nameof(acceleration));
            double peak = Math.Min(rate, Math.Sqrt((acceleration * way) + (low * low)));
            double ramp = (peak - low) / acceleration;
            sketch.Add(ramp, acceleration, 0.0);
            sketch.Add((way - (ramp * (peak + low))) / peak, 0.0, 0.0, onlyIf: peak >= rate);
            sketch.Add(ramp, -acceleration, 0.0);
        }

        return new MotionProfile(sketch, Math.Sign(distance), distance, 0.0, 0.0);
    }

    /// <summary>Jerk-limited motion between two velocities, the fastest within the limits (double S).</summary>
    /// <param name="distance">Distance, rad (signed).</param>
    /// <param name="startVelocity">Velocity at the start, rad/s; in the direction of the distance or zero.</param>
    /// <param name="endVelocity">Velocity at the end, rad/s; likewise.</param>
    /// <param name="maxVelocity">Greatest speed, rad/s.</param>
    /// <param name="maxAcceleration">Greatest acceleration and deceleration, rad/s2.</param>
    /// <param name="maxJerk">Greatest jerk, rad/s3.</param>
    /// <remarks>Before its start and after its end the profile goes on at the start and the end velocity.</remarks>
    public static MotionProfile DoubleS(double distance, double startVelocity, double endVelocity, double maxVelocity, double maxAcceleration, double maxJerk)
    {
        RequireFinite(distance, nameof(distance));
        RequirePositive(maxVelocity, nameof(maxVelocity));
        RequirePositive(maxAcceleration, nameof(maxAcceleration));
        RequirePositive(maxJerk, nameof(maxJerk));
        double sign = Math.Sign(distance);
        JerkLimits limits = new(maxVelocity, maxAcceleration, maxJerk);
        ProfileSketch sketch = JerkLimitedPlan.Make(Math.Abs(distance), sign * startVelocity, sign * endVelocity, limits);
        return new MotionProfile(sketch, sign, distance, startVelocity, endVelocity);
    }

    /// <summary>The move that an axis is commanded to make over a distance, from rest to rest.</summary>
    /// <remarks>
    /// S-curve: with v the gain from start rate to slew rate, Tr the ramp time and Tj = share Tr the time in which the acceleration
    /// rises, <c>a = v/(Tr - Tj)</c> and <c>jerk = a/Tj</c>. Shorter moves keep that acceleration and jerk.
    /// </remarks>
    public static MotionProfile Create(double distance, AxisMotion motion)
    {
        ArgumentNullException.ThrowIfNull(motion);
        double rate = motion.SlewRateRadiansPerSecond;
        double low = motion.StartRateRadiansPerSecond;
        double acceleration = low < rate ? motion.PeakAcceleration : double.PositiveInfinity;
        if (motion.Shape == RampShape.Trapezoid || double.IsPositiveInfinity(acceleration) || distance == 0.0)
        {
            return Trapezoid(distance, rate, acceleration, low);
        }

        double share = motion.JerkShare;
        if (share is not (> 0.0 and <= 0.5))
        {
            throw new ArgumentOutOfRangeException(nameof(motion), share, "the jerk share of an S-curve must be above 0 and at most 0.5");
        }

        double jerk = acceleration * acceleration * (1.0 - share) / (share * (rate - low));
        JerkLimits limits = new(rate, acceleration, jerk);
        ProfileSketch sketch = JerkLimitedPlan.Make(Math.Abs(distance), low, low, limits);
        return new MotionProfile(sketch, Math.Sign(distance), distance, 0.0, 0.0);
    }

    /// <summary>State at a time from the start of the move, s.</summary>
    public MotionSample At(double t)
    {
        if (t >= DurationSeconds)
        {
            return new(Distance + (velocityAfter * (t - DurationSeconds)), velocityAfter, 0.0);
        }

        for (int i = segments.Length - 1; i >= 0; i--)
        {
            if (t >= segments[i].StartSeconds)
            {
                return segments[i].After(t - segments[i].StartSeconds);
            }
        }

        return new(velocityBefore * t, velocityBefore, 0.0);
    }

    private static void RequireFinite(double value, string name)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "must be a finite number");
        }
    }

    private static void RequirePositive(double value, string name)
    {
        if (!(double.IsFinite(value) && value > 0.0))
        {
            throw new ArgumentOutOfRangeException(name, value, "must be a finite number above zero");
        }
    }
}
