using AxisSim.Cli.Output;
using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Payloads;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Invented;

/// <summary>Invented results for texts alone: no number here comes from a simulation, so that texts change only when words do.</summary>
internal static class SampleReports
{
    private const double Degree = Math.PI / 180.0;
    private const double ArcSecond = Degree / 3600.0;
    private const double Latitude = 54.4 * Degree;
    private const double Ratio = 720.0;

    /// <summary>A lumped polar axis that arrives, with a thin margin and its step shortened.</summary>
    public static MoveReport Arriving() => Report([Arrives(MountAxis.Polar) with { Step = new StepChoice(25e-6, "the motor turns 0.50 electrical rad in 50 us; up to 0.38 is accurate") }]) with
    {
        Lumped = new Dictionary<MountAxis, LumpedLoad> { [MountAxis.Polar] = new(6.0, -4.0, 0.0) },
        Notes = ["polar.drive.slew_current: 1.06 A rms is 1.5 A peak of the phase sine"],
    };

    /// <summary>A polar axis with bodies that stalls, beside a declination axis that arrives.</summary>
    public static MoveReport Stalling() => Advised(Report([Stalls(), Arrives(MountAxis.Declination)]) with { Payload = Bodies, LatitudeRadians = Latitude });

    /// <summary>A run that was stopped by a number that is not finite.</summary>
    public static MoveReport Broken()
    {
        AxisResult result = Arrives(MountAxis.Polar);
        return Report([result with { Outcome = result.Outcome with { LoadFactor = null, Settling = null }, Broken = new BrokenRun("rotor speed", 1.25, 47.1, 12.6, 0.0654, 0.0175) }]);
    }

    /// <summary>A slipping clutch, and an axis that does not settle.</summary>
    public static MoveReport SlippingAndSwinging()
    {
        AxisResult slip = Stalls(), swing = Arrives(MountAxis.Declination);
        return Advised(Report(
        [
            slip with
            {
                Outcome = slip.Outcome with { Verdict = Verdict.ClutchSlips, Loss = null, LostFullSteps = 0, ClutchSlipSeconds = 0.42, ClutchSlipRadians = 1.5 * Degree },
                Diagnosis = new Diagnosis(
                    slip.Diagnosis!.Why with { Limit = Limit.Clutch, Changes = [new(OneChange.WithoutImbalance, false), new(OneChange.RigidClutch, true)] },
                    new Cures(
                        [
                            new(CureKind.FirmerClutch, 60.0, 72.0, 480.0),
                            new(CureKind.LongerRamp, 2.0, null, 16.0, ArrivesAtTried: true),
                            new(CureKind.LowerSlewRate, 3.0 * Degree, null, 0.6 * Degree),
                            new(CureKind.MoreVoltage, 24.0, null, 96.0),
                        ],
                        [])),
            },
            swing with { Outcome = swing.Outcome with { Verdict = Verdict.DoesNotSettle, Settling = new Settling(null, null, 12.0 * ArcSecond, null, 2.0 * ArcSecond, 0.0, 0.1 * ArcSecond, false) } },
        ]) with
        { Payload = Bodies, LatitudeRadians = Latitude });
    }

    /// <summary>A polar axis that tracks after a slew the other way, and goes on creeping.</summary>
    public static MoveReport Creeping()
    {
        AxisResult polar = Arrives(MountAxis.Polar);
        AxisModel model = Model();
        model = model with
        {
            Bearings = new AxisBearings { CoulombNewtonMetres = 1.2, BreakawayNewtonMetres = 1.5 },
            Train = model.Train with { BacklashRadians = 25.0 * ArcSecond, StiffnessNewtonMetresPerRadian = 4e4 },
        };
        MoveReport report = Report([polar with { Outcome = polar.Outcome with { Verdict = Verdict.DoesNotSettle, LoadFactor = new LoadFactor(5.54, false), Settling = new Settling(null, null, 4.9 * ArcSecond, null, 2.0 * ArcSecond, 0.0, 0.1 * ArcSecond, false) } }]);
        return Advised(report with { Setup = report.Setup with { Polar = model } });
    }

    public static AxisModel Model(Ramp? ramp = null) => new()
    {
        Motor = new StepperMotor
        {
            StepsPerRevolution = 400,
            HoldingTorqueNewtonMetres = 0.40,
            RatedCurrentAmperes = 1.5,
            ResistanceOhms = 1.5,
            InductanceHenries = 3e-3,
            RotorInertiaKilogramSquareMetres = 6e-6,
        },
        Drive = new ChopperDrive
        {
            SupplyVolts = 24.0,
            BrakeLimitVolts = 30.0,
            SlewCurrentAmperes = 1.2,
            TrackingCurrentAmperes = 0.8,
            HoldingCurrentAmperes = 0.5,
            MicrostepsPerFullStep = 64,
            ChangeoverRadiansPerSecond = 20.0,
        },
        Train = new GearTrain { Worm = new WormStage { WheelTeeth = 144, GivenDrivingEfficiency = 0.45 }, Stages = [new GearStage { Name = "belt", DrivenTeeth = 5, DrivingTeeth = 1 }], StiffnessNewtonMetresPerRadian = 2e4 },
        Bearings = new AxisBearings { CoulombNewtonMetres = 0.8, BreakawayNewtonMetres = 0.8 },
        Motion = new AxisMotion { SlewRateRadiansPerSecond = 3.0 * Degree, Ramp = ramp ?? Ramp.OfSeconds(2.0) },
    };

    // As if everything suggested had been run and held.
    private static MoveReport Advised(MoveReport report) => report with { Advice = AdviceWork.Drafts(report) };

    private static PayloadModel Bodies => new()
    {
        Bodies = [new PayloadBody { Name = "tube", Shape = BodyShape.Point, MassKilograms = 20.0, OutMetres = 0.3 }],
        Counterweight = new Counterweight { MassKilograms = 14.0, DistanceMetres = 0.3, GreatestDistanceMetres = 0.55 },
    };

    private static MoveReport Report(AxisResult[] results) => new()
    {
        Name = "sample",
        File = "my mount.toml",
        Settings = ["polar.motion.ramp_time=2 s"],
        Setup = new MountSetup
        {
            Polar = Model(),
            Declination = Model(),
            Load = MountLoadBuilder.FromBodies(Bodies, Latitude),
            Move = new MoveSettings { Start = new(-5.0 * Degree, 0.0), End = new(-75.0 * Degree, 40.0 * Degree), FollowUp = FollowUp.Sidereal, SettleToleranceRadians = 2.0 * ArcSecond },
            Disturbances = new Disturbances(),
        },
        AskedStepSeconds = 50e-6,
        Results = results,
    };

    private static AxisResult Arrives(MountAxis axis) => new(Outcome(axis), new Trace(), Curves, null, new StepChoice(50e-6, null), null);

    private static AxisResult Stalls()
    {
        AxisOutcome outcome = Outcome(MountAxis.Polar) with
        {
            Verdict = Verdict.Stalls,
            Loss = new LossOfSync(1.43, -2.145 * Degree, -26.95, MovePhase.Accelerating, true),
            LostFullSteps = 42_980,
            LoadFactor = null,
            Settling = null,
            Margin = new TorqueMargin(-0.073, 1.43, 0.156, 0.1454, 26.95),
        };
        var diagnosis = new Diagnosis(
            new LimitFinding(
                Limit.SupplyVoltage,
                new TorqueShares(1.43, 26.95, true, 0.0067, 0.0273, 0.0, 0.0103, 0.112, 0.1454),
                [
                    new(OneChange.AmpleVoltage, true), new(OneChange.WithoutImbalance, false), new(OneChange.WithoutFriction, true),
                    new(OneChange.TenthOfInertia, false), new(OneChange.WithoutFullStepping, false),
                ],
                []),
            new Cures(
                [
                    new(CureKind.LowerSlewRate, 3.0 * Degree, 2.4 * Degree, 2.4 * Degree),
                    new(CureKind.MoreVoltage, 24.0, 36.0, 36.0),
                    new(CureKind.LongerRamp, 2.0, 3.4, 3.6),
                    new(CureKind.BetterBalance, 9.96, 6.0, 5.4),
                    new(CureKind.Changeover, 20.0, double.PositiveInfinity, 3.77),
                    new(CureKind.MoreCurrent, 1.2, null, 1.5),
                ],
                []));
        return new AxisResult(outcome, new Trace(), Curves, diagnosis, new StepChoice(50e-6, null), null);
    }

    private static TorqueSpeedCurves Curves => new() { SpeedsRadiansPerSecond = [], Curves = [], Bands = [], Path = [], ChangeoverRadiansPerSecond = 20.0 };

    private static AxisOutcome Outcome(MountAxis axis) => new()
    {
        Axis = axis,
        Verdict = Verdict.Arrives,
        LostFullSteps = 0,
        Margin = new TorqueMargin(0.214, 24.7, 0.1102, 0.1402, 36.6),
        LoadFactor = new LoadFactor(1.17, false),
        SlewSeconds = (70.0 / 3.0) + 2.0,
        Settling = new Settling(0.824, null, 3.21 * ArcSecond, -0.61 * ArcSecond, 2.0 * ArcSecond, -6.0 * ArcSecond, 0.1 * ArcSecond, false),
        Offset = new OffsetSplit(-6.02 * ArcSecond, -3.5 * ArcSecond, -2.02 * ArcSecond, -1.0 * ArcSecond, 0.5 * ArcSecond, 0.0, 0.0),
        Power = new PowerAndHeat(1.234, 0.8, 13_600.0, 23.5, 24.2, 24.4, 141.0, ContinuousDuty.Slewing, 130.0, InsulationClass.B),
        Facts = new DerivedFacts
        {
            TotalReduction = Ratio,
            FullStepRadians = 2.0 * Math.PI / 400.0 / Ratio,
            MicrostepRadians = 2.0 * Math.PI / 400.0 / 64.0 / Ratio,
            MotorSpeedRadiansPerSecond = 3.0 * Degree * Ratio,
            FullStepsPerSecond = 2400.0,
            PulsesPerSecond = 153_600.0,
            SlewRateRadiansPerSecond = 3.0 * Degree,
            AccelerationRadiansPerSecondSquared = 1.5 * Degree,
            AxisInertiaKilogramSquareMetres = axis == MountAxis.Polar ? 6.0 : 3.06,
            ReflectedInertiaKilogramSquareMetres = (axis == MountAxis.Polar ? 6.0 : 3.06) / Ratio / Ratio,
            WormEfficiency = 0.45,
            TrainEfficiency = 0.45,
            SelfLocking = true,
            WormPeriodSeconds = 598.36,
            RotorResonanceHertz = 345.6,
            DampingNewtonMetreSecondsPerRadian = 1.31e-3,
            DampingShare = 0.05,
            EncoderCountRadians = 18.0 * ArcSecond,
        },
        StepSeconds = 50e-6,
    };
}
