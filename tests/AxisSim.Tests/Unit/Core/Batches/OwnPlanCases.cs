using AxisSim.Core.Batches;
using AxisSim.Core.Drives;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Batches;

/// <summary>Short moves that have nothing in common: rates, ramps and their shapes, start rates, changeover, microsteps, falls of the current, probe, damping, wind, the other axis, direction.</summary>
internal static class OwnPlanCases
{
    private const double Degree = BenchmarkCase.Degree;
    private static readonly int[] Microsteps = [1, 2, 3, 5, 7, 10, 16, 64, 100, 256];

    public static List<BatchCase> Of(int count)
    {
        var random = new Random(20261128);
        return [.. Enumerable.Range(0, count).Select(i => Case(i, random))];
    }

    private static BatchCase Case(int i, Random random)
    {
        MountSetup setup = i % 2 == 0
            ? BenchmarkCase.Setup(BenchmarkCase.Axis, 1.0 + (i % 3), 2 * Degree, 1.0)
            : EveryFeature.Slew with { Move = EveryFeature.Slew.Move with { ObserveSeconds = 1.0, End = Beside(EveryFeature.Slew.Move.Start, i) } };
        setup = setup with
        {
            Polar = Varied(setup.Polar!, random),
            Declination = setup.Declination is { } declination ? Varied(declination, random) : null,
            Disturbances = setup.Disturbances with { SyncProbe = i % 3 != 0, TurbulenceSeed = i % 4 < 2 ? 1 : 2 },
        };
        if (i % 5 < 2)
        {
            setup = setup with { Move = setup.Move with { Start = setup.Move.End, End = setup.Move.Start } };
        }

        return new BatchCase(setup, setup.Declination is not null && i % 4 == 1 ? MountAxis.Declination : MountAxis.Polar);
    }

    private static MountPose Beside(MountPose start, int i) => new(start.PolarRadians + ((i % 3 == 0 ? 1.2 : -1.5) * Degree), start.DeclinationRadians + ((i % 4 < 2 ? 1.0 : -0.8) * Degree));

    private static AxisModel Varied(AxisModel axis, Random random)
    {
        ChopperDrive drive = axis.Drive;
        return axis with
        {
            Motion = axis.Motion with
            {
                SlewRateRadiansPerSecond = (0.8 + (2.5 * random.NextDouble())) * Degree,
                Ramp = Ramp.OfSeconds(0.1 + (0.4 * random.NextDouble())),
                Shape = random.Next(3) == 0 ? RampShape.SCurve : RampShape.Trapezoid,
                StartRateRadiansPerSecond = random.Next(3) == 0 ? 0.1 * Degree : 0.0,
            },
            Drive = drive with
            {
                MicrostepsPerFullStep = Microsteps[random.Next(Microsteps.Length)],
                ChangeoverRadiansPerSecond = random.Next(3) == 0 ? double.PositiveInfinity : 5.0 + (20.0 * random.NextDouble()),
                CurrentFallDelaySeconds = 0.05 + (0.2 * random.NextDouble()),
                GivenDampingNewtonMetreSecondsPerRadian = random.Next(2) * 1e-4,
            },
        };
    }
}
