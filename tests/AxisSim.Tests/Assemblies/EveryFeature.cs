using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Assemblies;

/// <summary>The benchmark case with all that the model has: nothing in the step is compiled or branched away.</summary>
/// <remarks>
/// Flexible payload, gust and turbulence, sagging supply, heating winding, bodies in three dimensions, the declination axis moving
/// too (so the polar inertia changes), an elastic stage with backlash, a worm with geometry, three terms of periodic error, a clutch, breakaway, cold grease, the sync probe.
/// </remarks>
internal static class EveryFeature
{
    private const double Degree = BenchmarkCase.Degree;
    private const double Arcsecond = BenchmarkCase.Arcsecond;

    public static MountSetup Slew { get; } = new()
    {
        Polar = Axis,
        Declination = Axis,
        Load = MountLoadBuilder.FromBodies(Payload, 54.4 * Degree),
        Move = new MoveSettings
        {
            Start = new MountPose(-100 * Degree, 10 * Degree),
            End = new MountPose(-10 * Degree, 70 * Degree),
            FollowUp = FollowUp.Sidereal,
            ObserveSeconds = 3.0,
            SettleToleranceRadians = 2 * Arcsecond,
        },
        Disturbances = new Disturbances
        {
            WindMetresPerSecond = 5.0,
            GustMetresPerSecond = 3.0,
            GustStartSeconds = 5.0,
            TurbulenceIntensity = 0.15,
            AreaSquareMetres = 0.3,
            LeverMetres = 0.3,
            ColdGreaseFactor = 1.3,
            AmbientCelsius = 5.0,
            SyncProbe = true,
        },
    };

    private static AxisModel Axis => BenchmarkCase.Axis with
    {
        Motor = BenchmarkCase.Motor with { GivenThermalResistanceKelvinPerWatt = null },
        Drive = BenchmarkCase.Drive with
        {
            SupplyResistanceOhms = 0.3,
            BrakeLimitVolts = 30.0,
            TrackingCurrentAmperes = 1.0,
            HoldingCurrentAmperes = 0.7,
            GivenDampingNewtonMetreSecondsPerRadian = 1e-4,
            FullStepCurrentFraction = 0.9,
        },
        Train = new GearTrain
        {
            Stages =
            [
                new GearStage
                {
                    Name = "belt", DrivenTeeth = 60, DrivingTeeth = 12, Efficiency = 0.95, InertiaKilogramSquareMetres = 2e-5,
                    BacklashRadians = 120 * Arcsecond, StiffnessNewtonMetresPerRadian = 200.0,
                },
            ],
            Worm = new WormStage
            {
                WheelTeeth = 144, LeadAngleRadians = 4.0 * Degree, FrictionCoefficient = 0.06, InertiaKilogramSquareMetres = 5e-6,
                PeriodicError = new PeriodicError(8 * Arcsecond, 0.3, 2 * Arcsecond, 1.0, 5 * Arcsecond, 2.0),
            },
            BacklashRadians = 30 * Arcsecond,
            StiffnessNewtonMetresPerRadian = 2e4,
            ClutchNewtonMetres = 60,
        },
        Bearings = new AxisBearings { CoulombNewtonMetres = 0.8, BreakawayNewtonMetres = 1.0, ViscousNewtonMetreSecondsPerRadian = 0.1 },
        Flexible = new FlexiblePayload { FrequencyHertz = 8.0 },
    };

    private static PayloadModel Payload => new()
    {
        Bodies =
        [
            new PayloadBody
            {
                Name = "tube", Shape = BodyShape.Tube, MassKilograms = 14.0, OutMetres = 0.25, ForwardMetres = 0.01, SideMetres = 0.004,
                LengthMetres = 1.0, DiameterMetres = 0.3, InnerDiameterMetres = 0.29,
            },
            new PayloadBody { Name = "camera", Shape = BodyShape.Point, MassKilograms = 1.5, OutMetres = 0.25, ForwardMetres = -0.1, SideMetres = 0.05 },
        ],
        Counterweight = new Counterweight { MassKilograms = 12.0, DistanceMetres = 0.30, DiameterMetres = 0.2, LengthMetres = 0.05, BarMassKilograms = 2.0, BarLengthMetres = 0.4 },
    };
}
