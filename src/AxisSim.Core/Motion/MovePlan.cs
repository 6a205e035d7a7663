using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Motion;

/// <summary>The plan of both axes for one move; the slew ends when the slower axis ends.</summary>
internal sealed class MovePlan
{
    private readonly MotorPlan _polar;
    private readonly MotorPlan _declination;

    public MovePlan(MountSetup setup)
    {
        MoveSettings move = setup.Move;
        PolarTracking = move.FollowUp == FollowUp.Sidereal ? SkyRates.MeanSiderealRadiansPerSecond : 0.0;
        PolarProfile = Profile(setup.Polar, move.End.PolarRadians - move.Start.PolarRadians);
        DeclinationProfile = Profile(setup.Declination, move.End.DeclinationRadians - move.Start.DeclinationRadians);
        _polar = new MotorPlan(move.Start.PolarRadians, PolarProfile, PolarTracking, 1.0);
        _declination = new MotorPlan(move.Start.DeclinationRadians, DeclinationProfile, 0.0, 1.0);
        SlewSeconds = Math.Max(PolarProfile.DurationSeconds, DeclinationProfile.DurationSeconds);
        EndSeconds = SlewSeconds + move.ObserveSeconds;
    }

    public MotionProfile PolarProfile { get; }

    public MotionProfile DeclinationProfile { get; }

    /// <summary>Rate that is added to the polar axis throughout, rad/s.</summary>
    public double PolarTracking { get; }

    /// <summary>Duration of the slew of the slower axis, s.</summary>
    public double SlewSeconds { get; }

    /// <summary>End of the simulated time, s.</summary>
    public double EndSeconds { get; }

    /// <summary>Plan of one axis' shaft, <paramref name="ratio"/> turns per axis turn.</summary>
    public MotorPlan For(MountAxis axis, MoveSettings move, double ratio) => axis == MountAxis.Polar
        ? new MotorPlan(move.Start.PolarRadians, PolarProfile, PolarTracking, ratio)
        : new MotorPlan(move.Start.DeclinationRadians, DeclinationProfile, 0.0, ratio);

    /// <summary>Plan of one axis at the axis itself.</summary>
    public MotorPlan At(MountAxis axis) => axis == MountAxis.Polar ? _polar : _declination;

    public MountPose Pose(double seconds) => new(_polar.Position(seconds), _declination.Position(seconds));

    private static MotionProfile Profile(AxisModel? axis, double distance) =>
        MotionProfile.Create(axis is null ? 0.0 : distance, axis?.Motion ?? new AxisMotion { SlewRateRadiansPerSecond = 1.0, Ramp = Ramp.OfSeconds(1.0) });
}
