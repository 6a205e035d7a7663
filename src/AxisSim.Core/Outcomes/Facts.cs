using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Outcomes;

/// <summary>Facts that follow from a setup without simulation.</summary>
public static class Facts
{
    /// <summary>Derives the facts of one axis.</summary>
    public static DerivedFacts Of(MountSetup setup, MountAxis axis)
    {
        AxisModel model = setup.Axis(axis);
        GearTrain train = model.Train;
        StepperMotor motor = model.Motor;
        double ratio = train.TotalRatio;
        double rate = model.Motion.SlewRateRadiansPerSecond;
        double fullStep = motor.FullStepRadians / ratio;
        double microstep = fullStep / model.Drive.MicrostepsPerFullStep;
        double inertia = setup.Load.Inertia(axis, setup.Move.Start.DeclinationRadians);
        double reflected = train.ReflectedToMotor(inertia);

        return new DerivedFacts
        {
            TotalReduction = ratio,
            FullStepRadians = fullStep,
            MicrostepRadians = microstep,
            MotorSpeedRadiansPerSecond = rate * ratio,
            FullStepsPerSecond = rate / fullStep,
            PulsesPerSecond = rate / microstep,
            SlewRateRadiansPerSecond = rate,
            AccelerationRadiansPerSecondSquared = model.Motion.PeakAcceleration,
            AxisInertiaKilogramSquareMetres = inertia,
            ReflectedInertiaKilogramSquareMetres = reflected,
            WormEfficiency = train.Worm.DrivingEfficiencyWith(setup.Disturbances.ColdGreaseFactor),
            TrainEfficiency = train.StageEfficiency * train.Worm.DrivingEfficiencyWith(setup.Disturbances.ColdGreaseFactor),
            SelfLocking = train.Worm.BackDrivingEfficiencyWith(setup.Disturbances.ColdGreaseFactor) <= 0.0,
            WormPeriodSeconds = train.Worm.WormPeriodSeconds,
            // With the axis coupled through its mesh the rotor swings on its own side's inertia alone: the mesh is soft against the field.
            RotorResonanceHertz = StaticTorque.ResonanceHertz(motor, StaticTorque.Peak(motor, model.Drive.SlewCurrentAmperes, 0.0), model.RotorSideInertiaKilogramSquareMetres),
            DampingNewtonMetreSecondsPerRadian = model.DampingNewtonMetreSecondsPerRadian,
            DampingShare = model.DampingNewtonMetreSecondsPerRadian / model.CriticalDampingNewtonMetreSecondsPerRadian,
            EncoderCountRadians = model.EncoderCounts > 0.0 ? 2.0 * Math.PI / model.EncoderCounts : 0.0,
        };
    }
}
