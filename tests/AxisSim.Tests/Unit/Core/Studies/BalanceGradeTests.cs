using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Unit.Core.Controllers;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>An imbalance held against friction, motor and clutch, and the poses in which it counts.</summary>
public sealed class BalanceGradeTests
{
    private const double Degree = Math.PI / 180.0, Latitude = 54.4 * Degree, G = 9.80665;

    // Closed forms against closed forms: the regulator's lag takes 0.02 % of the torque at this speed.
    private const double Hand = 1e-3;

    [Fact]
    public void Thresholds_are_those_of_the_paper()
    {
        // 0.02 deg/s, so slow that the voltage does not count: Km I = 0.26/(sqrt 2 x 1.0) x 0.9 = 0.16546 N m. Train: 216 x 0.4 = 86.4.
        // Without imbalance: J a = 8 x 0.02 deg/s / 1.5 s = 0.0018617 N m, friction 1.2, sum 1.2018617 N m: 0.0139104 N m; the rotor: 38e-7 x 216 x 2.3271e-4 = 1.9e-7.
        GradedImbalance graded = GradedImbalance.Of(Setup(45.0), MountAxis.Polar, new PoseImbalance(default, 7.0));
        Assert.Equal(1.2, graded.HiddenNewtonMetres, 1e-12);
        Assert.Equal(((0.16546 - 0.0139104) * 86.4), graded.LiftNewtonMetres, Hand * 13.1); // 13.09 N m
        Assert.Equal((0.16546 / 1.3 - 0.0139104) * 86.4, graded.HarmlessNewtonMetres, Hand * 13.1); // 9.795 N m
        Assert.Equal(45.0 - 1.2018617, graded.ClutchNewtonMetres, 1e-6);
        Assert.Equal(7.0 / 86.4 / 0.16546, graded.TorqueShare, Hand); // 49 %
        Assert.Equal(ImbalanceGrade.Harmless, graded.Grade);
    }

    [Theory]
    [InlineData(1.1, 45.0, ImbalanceGrade.CannotBeFelt)]
    [InlineData(1.3, 45.0, ImbalanceGrade.Harmless)]
    [InlineData(9.7, 45.0, ImbalanceGrade.Harmless)]
    [InlineData(9.9, 45.0, ImbalanceGrade.TakesTorque)]
    [InlineData(13.3, 45.0, ImbalanceGrade.TooMuch)]
    [InlineData(5.0, 8.0, ImbalanceGrade.TakesTorque)] // 8/1.3 - 1.2 = 4.95 N m
    [InlineData(6.9, 8.0, ImbalanceGrade.TooMuch)] // the clutch: 8 - 1.2 = 6.8 N m
    [InlineData(1.1, 2.0, ImbalanceGrade.TooMuch)] // hidden from a hand, not from the clutch
    [InlineData(0.3, 1.5, ImbalanceGrade.CannotBeFelt)] // less than what friction is known to
    public void A_grade_follows_its_thresholds(double newtonMetres, double clutch, ImbalanceGrade grade) =>
        Assert.Equal(grade, GradedImbalance.Of(Setup(clutch), MountAxis.Polar, new PoseImbalance(default, newtonMetres)).Grade);

    /// <summary>What the closed form says the motor lifts, the simulated move lifts too, and not much more.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void The_motor_lifts_in_the_simulation_what_is_said()
    {
        double lift = GradedImbalance.Of(Setup(45.0), MountAxis.Polar, new PoseImbalance(default, 1.0)).LiftNewtonMetres;
        Assert.Equal(AxisSim.Core.Outcomes.MoveEnd.Arrives, Run(0.85 * lift));
        Assert.Equal(AxisSim.Core.Outcomes.MoveEnd.Stalls, Run(1.15 * lift));
    }

    [Fact]
    public void The_worst_pose_in_the_sky_is_above_the_horizon_and_as_bad_as_any()
    {
        // Paper: 2 kg x 0.1 m too little counterweight at 54.4 deg: 0.2 x 9.80665 x cos 54.4 deg = 1.1417 N m at any declination, bar level.
        const double Expected = 1.1417;
        ReachedImbalance reached = BalanceReach.Of(Point(0.1, 0.0, (-60.0, 20.0), (-50.0, 20.0)), Latitude, MountAxis.Polar);
        Assert.Equal(Expected, reached.InSky.NewtonMetres, 1e-4 * Expected);
        Assert.True(SkyPose.SineOfAltitude(reached.InSky.Pose, Latitude) > 0.0);
        Assert.True(SkyPose.SineOfAltitude(SkyPose.ToMechanical(0.0, -40.0 * Degree, PierSide.West, Latitude), Latitude) < 0.0); // culminates at 90 - 54.4 - 40 = -4.4 deg
        Assert.True(SkyPose.SineOfAltitude(SkyPose.ToMechanical(0.0, -30.0 * Degree, PierSide.West, Latitude), Latitude) > 0.0);

        // On the move the bar comes no nearer to level than -50 deg.
        Assert.Equal(Expected * Math.Cos(50.0 * Degree), reached.OnMove.NewtonMetres, 1e-4 * Expected);
        Assert.Equal(reached.InSky, reached.Worst);
    }

    [Fact]
    public void A_pose_that_only_the_ground_has_does_not_count()
    {
        // All of the moment ahead: about the declination axis it is greatest with the tube level and that axis level too, g m f. At the meridian the tube may be level only towards the
        // horizon: what is reached is a little less, or the same half a turn on; never more.
        ReachedImbalance reached = BalanceReach.Of(Point(0.0, 0.1, (-60.0, 20.0), (-50.0, 20.0)), Latitude, MountAxis.Declination);
        Assert.InRange(reached.InSky.NewtonMetres, 0.9 * 0.2 * G, 0.2 * G);
        Assert.True(SkyPose.SineOfAltitude(reached.Worst.Pose, Latitude) > 0.0);
    }

    [Fact]
    public void A_move_below_the_horizon_counts_as_it_is_made()
    {
        // Straight down the meridian below the horizon, the bar level: the greatest of all.
        ReachedImbalance reached = BalanceReach.Of(Point(0.1, 0.0, (0.0, -45.0), (0.0, -50.0)), Latitude, MountAxis.Polar);
        Assert.Equal(1.1417, reached.OnMove.NewtonMetres, 1e-3);
    }

    private static AxisSim.Core.Outcomes.MoveEnd Run(double imbalance)
    {
        // A quarter of a turn about level: at 0 the whole of it is lifted, cos(latitude) is given back.
        MountSetup setup = Setup(45.0) with
        {
            Load = MountLoadBuilder.FromLumped(new LumpedLoad(8.0, -imbalance / Math.Cos(Latitude), 90.0 * Degree), null, Latitude),
            Move = new MoveSettings { Start = new MountPose(-0.1 * Degree, 0.0), End = new MountPose(0.1 * Degree, 0.0), SettleToleranceRadians = 1e-4 },
        };
        return MoveStudy.Run(setup, MountAxis.Polar, new MoveOptions { Explain = false }).Outcome.Verdict;
    }

    private static MountSetup Setup(double clutch) => new()
    {
        Polar = SampleAxis.Model with
        {
            Train = SampleAxis.Model.Train with { ClutchNewtonMetres = clutch, BacklashRadians = 0.0, Stages = [SampleAxis.Model.Train.Stages[0] with { BacklashRadians = 0.0 }] },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 0.02 * Degree, Ramp = Ramp.OfSeconds(1.5) },
        },
        Load = MountLoadBuilder.FromLumped(new LumpedLoad(8.0, 0.0, 0.0), null, Latitude),
        Move = new MoveSettings { Start = default, End = new MountPose(0.1 * Degree, 0.0), SettleToleranceRadians = 1e-4 },
        Disturbances = new Disturbances(),
    };

    private static MountSetup Point(double outMetres, double forward, (double Polar, double Declination) from, (double Polar, double Declination) to) => Setup(45.0) with
    {
        Declination = SampleAxis.Model,
        Load = MountLoadBuilder.FromBodies(
            new PayloadModel { Bodies = [new PayloadBody { Name = "tube", Shape = BodyShape.Point, MassKilograms = 2.0, OutMetres = outMetres, ForwardMetres = forward }] }, Latitude),
        Move = new MoveSettings
        {
            Start = new MountPose(from.Polar * Degree, from.Declination * Degree), End = new MountPose(to.Polar * Degree, to.Declination * Degree), SettleToleranceRadians = 1e-5,
        },
    };
}
