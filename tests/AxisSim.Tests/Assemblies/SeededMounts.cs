using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core;

namespace AxisSim.Tests.Assemblies;

/// <summary>Mounts drawn at random: reductions from 27 to 2000, loads up to a thousand times the rotor's inertia, with and without elastic stages, flexible payload and sagging supply.</summary>
internal static class SeededMounts
{
    public static MountSetup Of(int seed)
    {
        // Neighbouring seeds of this generator begin alike; far ones do not.
        var random = new Random(unchecked((int)(seed * 2654435761L)) & int.MaxValue);
        random.Next();
        double Even(double low, double high) => low + ((high - low) * random.NextDouble());
        double Log(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
        bool OneIn(int many) => random.Next(many) == 0;
        StepperMotor motor = Motor(random, Even, Log);
        int teeth = random.Next(3, 10) * 24;
        double ratio = Log(27.0, 2000.0);
        teeth = (int)Math.Min(teeth, ratio);
        double stage = ratio / teeth;
        double inertia = Log(1.0, 1000.0) * motor.RotorInertiaKilogramSquareMetres * ratio * ratio;
        double efficiency = Even(0.35, 0.9);
        double pull = 0.7 * motor.HoldingTorqueNewtonMetres * ratio * efficiency;

        // The axis on its mesh swings at 4 to 20 Hz, but the mesh winds up by no more than a degree under the motor's full torque.
        double swing = 2.0 * Math.PI * Log(4.0, 20.0);
        double stiffness = Math.Max(inertia * swing * swing, pull / 0.017);
        var model = new AxisModel
        {
            Motor = motor,
            Drive = Drive(random, motor, Even, Log),
            Train = new GearTrain
            {
                Stages =
                [
                    new GearStage
                    {
                        Name = "belt", DrivenTeeth = stage, DrivingTeeth = 1.0, Efficiency = Even(0.94, 0.99), InertiaKilogramSquareMetres = OneIn(2) ? Log(1e-6, 2e-5) : 0.0,
                    },
                ],
                Worm = new WormStage
                {
                    WheelTeeth = teeth, GivenDrivingEfficiency = efficiency, InertiaKilogramSquareMetres = Log(1e-6, 1e-5),
                    PeriodicError = new PeriodicError(Even(0.0, 15.0) * BenchmarkCase.Arcsecond, Even(0.0, 6.0), 0.0, 0.0, 0.0, 0.0),
                },
                BacklashRadians = Even(0.0, 60.0) * BenchmarkCase.Arcsecond,
                StiffnessNewtonMetresPerRadian = stiffness,
                DampingRatio = Even(0.03, 0.08),
            },
            Bearings = new AxisBearings { CoulombNewtonMetres = Even(0.02, 0.1) * pull, ViscousNewtonMetreSecondsPerRadian = Even(0.0, 0.1) },
            Flexible = OneIn(4) ? new FlexiblePayload { FrequencyHertz = Even(5.0, 12.0), InertiaShare = Even(0.2, 0.6) } : null,
            Motion = new AxisMotion { SlewRateRadiansPerSecond = Log(8.0, 50.0) / ratio, Ramp = Ramp.OfSeconds(2.0) },
        };
        model = OneIn(3) ? Elastic(model) : model;
        return new MountSetup
        {
            Polar = model,
            Load = MountLoadBuilder.FromLumped(new LumpedLoad(inertia, 0.0, 0.0), null, 0.9),
            Move = new MoveSettings { Start = new MountPose(0, 0), End = new MountPose(1, 0), SettleToleranceRadians = 2 * BenchmarkCase.Arcsecond },
            Disturbances = new Disturbances { ColdGreaseFactor = OneIn(3) ? 1.4 : 1.0 },
        };
    }

    private static StepperMotor Motor(Random random, Func<double, double, double> even, Func<double, double, double> log)
    {
        double holding = log(0.15, 1.5);
        double current = even(0.8, 2.8);
        double resistance = 4.0 / (current * current);
        return new StepperMotor
        {
            StepsPerRevolution = random.Next(2) == 0 ? 200 : 400,
            HoldingTorqueNewtonMetres = holding,
            RatedCurrentAmperes = current,
            ResistanceOhms = resistance,
            InductanceHenries = resistance * even(1.4e-3, 2.6e-3),
            RotorInertiaKilogramSquareMetres = holding * even(1.2e-5, 2.4e-5),
            DetentTorqueNewtonMetres = holding * even(0.02, 0.05),
            ViscousNewtonMetreSecondsPerRadian = 1e-5,
            CoulombTorqueNewtonMetres = 0.01 * holding,
            GivenThermalResistanceKelvinPerWatt = 0.0,
        };
    }

    private static ChopperDrive Drive(Random random, StepperMotor motor, Func<double, double, double> even, Func<double, double, double> log)
    {
        double current = even(0.7, 1.0) * motor.RatedCurrentAmperes;
        double swing = Math.Sqrt(motor.RotorTeeth * motor.TorqueConstantNewtonMetresPerAmpere * current * motor.RotorInertiaKilogramSquareMetres);
        return new ChopperDrive
        {
            SupplyVolts = even(18.0, 48.0),
            SupplyResistanceOhms = random.Next(4) == 0 ? 0.3 : 0.0,
            SlewCurrentAmperes = current,
            TrackingCurrentAmperes = current,
            HoldingCurrentAmperes = current,
            MicrostepsPerFullStep = 1 << random.Next(4, 8),
            FullStepCurrentFraction = random.Next(2) == 0 ? 1.0 : 0.8,
            RegulatorSeconds = log(20e-6, 100e-6),

            // 3 to 10 % of critical.
            GivenDampingNewtonMetreSecondsPerRadian = 2.0 * even(0.03, 0.1) * swing,
        };
    }

    private static AxisModel Elastic(AxisModel model)
    {
        GearStage stage = model.Train.Stages[0];

        // Ten times as stiff as the worm mesh, seen at the axis.
        double stiffness = 10.0 * model.Train.StiffnessNewtonMetresPerRadian / (model.Train.Worm.Ratio * model.Train.Worm.Ratio);
        return model with
        {
            Train = model.Train with
            {
                Stages = [stage with { StiffnessNewtonMetresPerRadian = stiffness, BacklashRadians = 60 * BenchmarkCase.Arcsecond, InertiaKilogramSquareMetres = Math.Max(stage.InertiaKilogramSquareMetres, 2e-6) }],
            },
        };
    }
}
