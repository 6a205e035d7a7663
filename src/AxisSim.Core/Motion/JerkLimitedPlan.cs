namespace AxisSim.Core.Motion;

/// <summary>Limits of a jerk-limited motion.</summary>
/// <param name="Velocity">Greatest velocity, rad/s.</param>
/// <param name="Acceleration">Greatest acceleration, rad/s2.</param>
/// <param name="Jerk">Greatest jerk, rad/s3.</param>
internal readonly record struct JerkLimits(double Velocity, double Acceleration, double Jerk);

/// <summary>The fastest jerk-limited motion over a distance between two velocities (double S), in the positive direction.</summary>
/// <remarks>
/// A ramp between velocities v and V takes, with dv = |V - v|: if <c>dv j &lt; a2</c>, twice <c>Tj = sqrt(dv/j)</c> (the acceleration
/// limit is not reached), else <c>Tj + dv/a</c> with <c>Tj = a/j</c>. It covers the mean velocity times that. The distance of a rise to a
/// peak and the fall from it grows with the peak; so the peak is the limit with a cruise, or the one root by bisection.
/// Source of the ramps: Biagiotti and Melchiorri (2008), eqs 3.19 to 3.31.
/// </remarks>
internal static class JerkLimitedPlan
{
    // A few roundings: a distance that is the shortest one itself may fall short of it, a flat of no length may get one.
    private const double FewRoundings = 1e-14;

    /// <summary>Plans the motion; throws when the distance is too short to change between the two velocities.</summary>
    public static ProfileSketch Make(double distance, double startVelocity, double endVelocity, JerkLimits limits)
    {
        if (!(startVelocity >= 0.0 && startVelocity <= limits.Velocity && endVelocity >= 0.0 && endVelocity <= limits.Velocity))
        {
            throw new ArgumentException(
                "start and end velocity must point along the distance (or be zero) and not exceed the greatest velocity", nameof(startVelocity));
        }

        ProfileSketch sketch = new(startVelocity);
        if (distance <= 0.0)
        {
            return sketch;
        }

        // The unknown is the rise above the faster of the two velocities: near that velocity the time goes with the root of the rise,
        // so half the digits would be lost if the peak itself were solved for.
        double faster = Math.Max(startVelocity, endVelocity);
        double Way(double rise) => RampWay(startVelocity, faster - startVelocity + rise, limits) + RampWay(endVelocity, faster - endVelocity + rise, limits);
        if (Way(0.0) > distance * (1.0 + FewRoundings))
        {
            throw new ArgumentException("the distance is too short to pass from the start velocity to the end velocity within the limits", nameof(distance));
        }

        double greatestRise = limits.Velocity - faster;
        double cruise = (distance - Way(greatestRise)) / limits.Velocity;
        double rise = cruise >= 0.0 ? greatestRise : Bisect(Way, distance, greatestRise);
        AddRamp(sketch, faster - startVelocity + rise, limits.Jerk, limits);
        sketch.Add(cruise, 0.0, 0.0);
        AddRamp(sketch, faster - endVelocity + rise, -limits.Jerk, limits);
        return sketch;
    }

    private static double Bisect(Func<double, double> way, double distance, double high)
    {
        // Ends when the middle no longer lies between the ends: the last digit.
        double low = 0.0;
        while (true)
        {
            double middle = low + ((high - low) / 2.0);
            if (middle <= low || middle >= high)
            {
                return low;
            }

            (low, high) = way(middle) <= distance ? (middle, high) : (low, middle);
        }
    }

    private static (double JerkTime, double FlatTime) Ramp(double change, JerkLimits limits)
    {
        double needed = change * limits.Jerk / limits.Acceleration;
        return needed < limits.Acceleration
            ? (Math.Sqrt(change / limits.Jerk), 0.0)
            : (limits.Acceleration / limits.Jerk, (needed - limits.Acceleration) / limits.Jerk);
    }

    private static double RampWay(double slow, double change, JerkLimits limits)
    {
        (double jerkTime, double flatTime) = Ramp(change, limits);
        return (slow + (change / 2.0)) * ((2.0 * jerkTime) + flatTime);
    }

    private static void AddRamp(ProfileSketch sketch, double change, double jerk, JerkLimits limits)
    {
        (double jerkTime, double flatTime) = Ramp(change, limits);
        sketch.Add(jerkTime, 0.0, jerk);
        sketch.Add(flatTime, jerk * jerkTime, 0.0, onlyIf: flatTime > FewRoundings * jerkTime);
        sketch.Add(jerkTime, jerk * jerkTime, -jerk);
    }
}
