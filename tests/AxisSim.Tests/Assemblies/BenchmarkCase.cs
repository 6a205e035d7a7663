using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Assemblies;

/// <summary>The benchmark case: a 400-step motor on a 5 x 144 reduction, polar axis alone, lumped load.</summary>
internal static class BenchmarkCase
{
    public const double Degree = Math.PI / 180.0;
    public const double Arcsecond = Math.PI / 648000.0;

    public static StepperMotor Motor { get; } = new()
    {
        StepsPerRevolution = 400,
        HoldingTorqueNewtonMetres = 0.40,
        RatedCurrentAmperes = 1.5,
        ResistanceOhms = 1.5,
        InductanceHenries = 3e-3,
        RotorInertiaKilogramSquareMetres = 6e-6,
        DetentTorqueNewtonMetres = 0.015,
        ViscousNewtonMetreSecondsPerRadian = 1e-5,
        CoulombTorqueNewtonMetres = 0.005,
        GivenThermalResistanceKelvinPerWatt = 0.0,
    };

    public static ChopperDrive Drive { get; } = new()
    {
        SupplyVolts = 24.0,
        SlewCurrentAmperes = 1.5,
        TrackingCurrentAmperes = 1.5,
        HoldingCurrentAmperes = 1.5,
        MicrostepsPerFullStep = 64,
        ChangeoverRadiansPerSecond = 20.0,
        RegulatorSeconds = 100e-6,
        GivenDampingNewtonMetreSecondsPerRadian = 0.0,
    };

    /// <summary>The axis; a fine microstep stands for an unquantised command.</summary>
    public static AxisModel Axis { get; } = new()
    {
        Motor = Motor,
        Drive = Drive,
        Train = new GearTrain
        {
            Stages = [new GearStage { Name = "belt", DrivenTeeth = 5, DrivingTeeth = 1 }],
            Worm = new WormStage { WheelTeeth = 144, GivenDrivingEfficiency = 0.45, PeriodicError = new PeriodicError(8 * Arcsecond, 0, 0, 0, 0, 0) },
            BacklashRadians = 30 * Arcsecond,
            StiffnessNewtonMetresPerRadian = 2e4,
            DampingRatio = 0.05,
            ClutchNewtonMetres = 60,
        },
        Bearings = new AxisBearings { CoulombNewtonMetres = 0.8, ViscousNewtonMetreSecondsPerRadian = 0.1 },
        Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * Degree, Ramp = Ramp.OfSeconds(2) },
    };

    /// <summary>The 90 degree slew; a negative imbalance opposes it.</summary>
    public static MountSetup Slew(double imbalance, bool probe = false) => Setup(Axis, imbalance, 90 * Degree, 3.0, probe);

    public static MountSetup Setup(AxisModel axis, double imbalance, double distance, double observe, bool probe = false) => new()
    {
        Polar = axis,
        Load = MountLoadBuilder.FromLumped(new LumpedLoad(6.0, imbalance, 0.0), null, 50 * Degree),
        Move = new MoveSettings
        {
            Start = new MountPose(0, 0),
            End = new MountPose(distance, 0),
            ObserveSeconds = observe,
            SettleToleranceRadians = 2 * Arcsecond,
        },
        Disturbances = new Disturbances { SyncProbe = probe },
    };

    /// <summary>The same axis with a command so fine that it is as good as not quantised.</summary>
    public static AxisModel Unquantised(AxisModel axis) => axis with { Drive = axis.Drive with { MicrostepsPerFullStep = 65536 } };
}
