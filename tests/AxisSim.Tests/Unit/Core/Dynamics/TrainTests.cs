using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Dynamics;

/// <summary>Clutch, elastic stages and the self-locking worm.</summary>
public sealed class TrainTests
{
    /// <summary>With the rotor held and 10 N m on the axis, a clutch of 6 N m slips: the axis accelerates with (10 - 6)/J.</summary>
    [Fact]
    public void ASlippingClutchPassesItsTorqueAndNoMore()
    {
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, Mesh = new MeshContact(2e4, 20.0, 0.0), Clutch = 6.0, AxisInertia = 5.0 };
        var axis = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, new FunctionLoad(axis: (_, _) => 10.0), default);
        Assemblies.Stepping.Run(ref axis, 50e-6, 2.0);
        double speed = axis.State.AxisSpeed;
        Assemblies.Stepping.Run(ref axis, 50e-6, 1.0);
        Assert.Equal(4.0 / 5.0, axis.State.AxisSpeed - speed, 1e-9);
        Assert.Equal(-6.0, axis.MeshTorque, 1e-12);

        // What the axis has turned is slip and the twist that 6 N m hold.
        Assert.Equal(axis.State.Axis - (6.0 / 2e4), -axis.State.Slip, 1e-4);
    }

    /// <summary>Below its torque the clutch holds to the last bit.</summary>
    [Fact]
    public void AClutchHoldsBelowItsTorque()
    {
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, Mesh = new MeshContact(2e4, 200.0, 0.0), Clutch = 12.0, AxisInertia = 5.0 };
        var axis = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, new FunctionLoad(axis: (t, _) => 10.0 * Math.Min(1.0, t)), default);
        Assemblies.Stepping.Run(ref axis, 50e-6, 4.0);
        Assert.Equal(0.0, axis.State.Slip);
        Assert.Equal(10.0 / 2e4, axis.State.Axis, 1e-7);
    }

    /// <summary>A self-locking worm (eta_b below zero) holds an imbalance with the motor unpowered, for ever and without creep; one that does not lock lets it fall.</summary>
    [Fact]
    public void ASelfLockingWormHoldsWithoutTheMotor()
    {
        AxisState held = Unpowered(MeshLoss.FromEfficiencies(0.45, -0.2), 20.0);
        AxisState later = Unpowered(MeshLoss.FromEfficiencies(0.45, -0.2), 40.0);
        Assert.Equal(0.0, held.RotorSpeed);
        Assert.Equal(held.Rotor, later.Rotor);
        Assert.Equal(held.Axis, later.Axis);
        AxisState falling = Unpowered(MeshLoss.FromEfficiencies(0.8, 0.5), 0.5);
        Assert.True(falling.RotorSpeed > 1.0, $"rotor at {falling.RotorSpeed} rad/s");

        // By hand: 0.5 x 5 N m/100 drives the rotor and what is geared to it: a = n x 0.5 x 5/100... at the axis 2.5/(J + n^2 Jm x ...) bounds it.
        Assert.InRange(falling.AxisSpeed, 0.0, 5.0 / 2.0 * 0.5);
    }

    /// <summary>Worm shaft on the stage's spring, motor held, axis disconnected: sqrt(k/J)/2 pi = sqrt(200/5e-6)/2 pi = 1006.6 Hz.</summary>
    [Fact]
    public void AnElasticStageIsASpringAtTheWormShaft()
    {
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, StageRatio = 3.0, ShaftInertia = 5e-6, StageMesh = new MeshContact(200.0, 0.0, 0.0), WormRatio = 144.0 };
        var train = new AxisDynamics<NoMotor, NoLoad>(parameters, default, default, new AxisState { Shaft = 1e-3 });
        var crossings = new List<double>();
        double before = 1e-3;
        Assemblies.Stepping.Run(ref train, 5e-6, 0.05, null, (double t, ref AxisDynamics<NoMotor, NoLoad> d) =>
        {
            if (before * d.State.Shaft < 0.0)
            {
                crossings.Add(t - (5e-6 * d.State.Shaft / (d.State.Shaft - before)));
            }

            before = d.State.Shaft;
        });
        Assert.Equal(1006.6, (crossings.Count - 1) / 2.0 / (crossings[^1] - crossings[0]), 1.0);
    }

    /// <summary>A stiff stage without backlash moves the axis as the rigid one does; the stage's twist under the final load is load over stiffness.</summary>
    [Fact]
    public void AStiffStageTendsToTheRigidOne()
    {
        AxisState rigid = EndOfMove(double.PositiveInfinity, 0.0);
        AxisState stiff = EndOfMove(300.0, 0.0);
        Assert.Equal(rigid.Axis / BenchmarkCase.Arcsecond, stiff.Axis / BenchmarkCase.Arcsecond, 0.5);
        double stageTwist = (stiff.Rotor / 5.0) - stiff.Shaft;
        Assert.True(Math.Abs(stageTwist) < 0.4 / 300.0, $"twist {stageTwist} rad"); // at most the motor's 0.4 N m x 5 over 300 N m/rad, and it is lightly loaded
    }

    /// <summary>Backlash before the worm is taken up at the worm shaft: with the axis loaded through the locking worm it shows as rotor play that the axis does not feel.</summary>
    [Fact]
    public void BacklashBeforeALockingWormDoesNotMoveTheAxis()
    {
        const double Play = 0.02; // rad at the worm shaft
        var parameters = new AxisParameters
        {
            RotorInertia = 1e-5,
            RotorCoulomb = 0.002,
            RotorViscous = 0.02, // slow: a rotor that hammers through its play would shake the worm loose, as a real one does
            StageRatio = 5.0,
            ShaftInertia = 5e-6,
            StageMesh = new MeshContact(200.0, 0.002, 0.5 * Play),
            StageLoss = MeshLoss.None,
            WormRatio = 144.0,
            Mesh = new MeshContact(2e4, 30.0, 0.0),
            Loss = MeshLoss.FromEfficiencies(0.4, -0.3),
            AxisInertia = 6.0,
            AxisCoulomb = 0.5,
            AxisBreakaway = 0.5,
        };

        // 4 N m on the axis lock the worm: lowering it takes 0.3 x 4/144 = 0.0083 N m at the worm shaft. A torque of 0.003 - 0.002 N m, so 0.005 there, pushes the rotor to and fro.
        var load = new FunctionLoad(rotor: (t, _) => 0.003 * Math.Sign(Math.Sin(0.2 * Math.PI * t)), axis: (_, _) => 4.0);
        var train = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, load, new AxisState { Axis = 4.0 / 2e4 });
        Assemblies.Stepping.Run(ref train, 20e-6, 0.5);
        double axis = train.State.Axis;
        double most = 0.0;
        double least = 0.0;
        Assemblies.Stepping.Run(ref train, 20e-6, 20.0, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) =>
        {
            most = Math.Max(most, d.State.Rotor);
            least = Math.Min(least, d.State.Rotor);
        });
        Assert.Equal(axis, train.State.Axis, 1e-12);
        Assert.Equal(0.0, train.State.Shaft, 1e-6);
        Assert.Equal(5.0 * Play, most - least, 0.05 * 5.0 * Play); // the play seen at the rotor, and a little of the spring
    }

    private static AxisState Unpowered(MeshLoss loss, double seconds)
    {
        var parameters = new AxisParameters { RotorInertia = 1e-5, WormRatio = 100.0, Mesh = new MeshContact(2e4, 50.0, 1e-4), Loss = loss, AxisInertia = 2.0 };
        var train = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, new FunctionLoad(axis: (_, _) => 5.0), default);
        Assemblies.Stepping.Run(ref train, 50e-6, seconds);
        return train.State;
    }

    private static AxisState EndOfMove(double stiffness, double backlash)
    {
        AxisModel axis = BenchmarkCase.Axis with
        {
            Train = BenchmarkCase.Axis.Train with
            {
                Stages = [new GearStage { Name = "belt", DrivenTeeth = 5, DrivingTeeth = 1, InertiaKilogramSquareMetres = 4e-6, StiffnessNewtonMetresPerRadian = stiffness, BacklashRadians = backlash }],
                Worm = BenchmarkCase.Axis.Train.Worm with { InertiaKilogramSquareMetres = 2e-6 },
            },
            Drive = BenchmarkCase.Drive with { GivenDampingNewtonMetreSecondsPerRadian = 3e-4 },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 2 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(0.5) },
        };
        MountSetup setup = BenchmarkCase.Setup(axis, -10.0, 3 * BenchmarkCase.Degree, 1.0);
        var run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), 20e-6);
        var none = default(NoObserver);
        Assert.True(run.RunTo(run.Plan.EndSeconds, ref none, stopWhenLost: true));
        return run.State;
    }
}
