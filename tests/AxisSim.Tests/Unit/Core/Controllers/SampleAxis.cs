using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;

namespace AxisSim.Tests.Unit.Core.Controllers;

/// <summary>An axis of round numbers: 400 steps, 64 microsteps, belt 30/20, worm 144; 3 deg/s in 1.5 s.</summary>
internal static class SampleAxis
{
    public const double Degree = Math.PI / 180.0;

    public static AxisModel Model { get; } = new()
    {
        Motor = new StepperMotor
        {
            HoldingTorqueNewtonMetres = 0.26,
            RatedCurrentAmperes = 1.0,
            ResistanceOhms = 3.3,
            InductanceHenries = 7e-3,
            RotorInertiaKilogramSquareMetres = 38e-7,
            DetentTorqueNewtonMetres = 0.012,
            StepsPerRevolution = 400,
        },
        Drive = new ChopperDrive { SupplyVolts = 12.8, SlewCurrentAmperes = 0.9, TrackingCurrentAmperes = 0.6, HoldingCurrentAmperes = 0.5, MicrostepsPerFullStep = 64 },
        Train = new GearTrain
        {
            Worm = new WormStage { WheelTeeth = 144, GivenDrivingEfficiency = 0.4 },
            StiffnessNewtonMetresPerRadian = 4e4,
            BacklashRadians = 25.0 / 3600.0 * Degree,
            Stages = [new GearStage { Name = "belt", DrivenTeeth = 30, DrivingTeeth = 20, BacklashRadians = 12.0 / 60.0 * Degree }],
        },
        Bearings = new AxisBearings { CoulombNewtonMetres = 1.2 },
        Motion = new AxisMotion { SlewRateRadiansPerSecond = 3.0 * Degree, Ramp = Ramp.OfSeconds(1.5) },
        EncoderCounts = 72000.0,
    };
}
