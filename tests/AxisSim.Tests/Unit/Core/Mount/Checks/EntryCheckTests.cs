using AxisSim.Core.Batches;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Gearing;
using AxisSim.Core.Maps;
using AxisSim.Core.Mount;
using AxisSim.Core.Mount.Checks;
using AxisSim.Core.Payloads;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;
using AxisSim.Tests.Docs;

namespace AxisSim.Tests.Unit.Core.Mount.Checks;

/// <summary>Every study refuses a setup that will not do, with one exception that tells all problems.</summary>
public sealed class EntryCheckTests
{
    private const MountAxis Polar = MountAxis.Polar;

    private static readonly MountSetup s_good = Shipped.Read("nominal").Setup;

    private static readonly MountSetup s_bad = s_good with
    {
        Polar = s_good.Polar! with
        {
            Motor = s_good.Polar!.Motor with { RotorInertiaKilogramSquareMetres = 0.0 },
            Drive = s_good.Polar!.Drive with { MicrostepsPerFullStep = 0 },
            Train = s_good.Polar!.Train with { StiffnessNewtonMetresPerRadian = 0.0 },
            Motion = s_good.Polar!.Motion with { Ramp = default },
        },
        Load = s_good.Load with { PolarGravity = [double.NaN, 0, 0, 0, 0, 0] },
    };

    private static readonly string[] s_expected =
    [
        "Polar.Motor.RotorInertiaKilogramSquareMetres: found 0; allowed: above 0 kg m2 and up to 0.1 kg m2",
        "Polar.Drive.MicrostepsPerFullStep: found 0; allowed: a whole number from 1 to 1024",
        "Polar.Train.StiffnessNewtonMetresPerRadian: found 0; allowed: from 1 N m/rad to 1E+09 N m/rad",
        "Polar.Motion.Ramp.Seconds: found 0; allowed: above 0 s and up to 600 s",
        "Load.PolarGravity: found NaN among its terms; allowed: finite numbers",
    ];

    private static readonly Dictionary<string, Action<MountSetup>> s_studies = new()
    {
        ["move"] = setup => MoveStudy.Run(setup, Polar, new MoveOptions()),
        ["batch"] = setup => BatchStudy.Run([new BatchCase(s_good, Polar), new BatchCase(setup, Polar)], new BatchOptions()),
        ["envelope"] = setup => EnvelopeStudy.Run([new EnvelopeCase(setup, 1.0)], Polar, new EnvelopeOptions { ResolutionRadiansPerSecond = 0.01 }),
        ["curve"] = setup => CurveStudy.Run(setup, Polar),
        ["map"] = setup => MapStudy.Run(new MapCells(2, 2, MapMetric.Outcome), new MapOptions { Axes = [Polar], Setup = _ => setup, Full = true }),
        ["comparison"] = setup => ComparisonStudy.Run(setup, [Polar], [], new ComparisonOptions { LoadFactor = 1.3, ResolutionRadiansPerSecond = 0.01 }),
        ["recommend"] = setup => RecommendStudy.Run(setup, [Polar], new RecommendOptions { LatitudeRadians = 0.9 }),
        ["reduction"] = setup => ReductionStudy.Run(setup, Polar, new ReductionOptions { TotalRatios = [] }),
    };

    public static TheoryData<string> Studies => [.. s_studies.Keys];

    [Theory]
    [MemberData(nameof(Studies))]
    public void All_problems_are_told_at_once(string study)
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => s_studies[study](s_bad));
        Assert.All(s_expected, line => Assert.Contains(line, refusal.Message, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Studies))]
    public void An_axis_that_is_not_there_is_told(string study)
    {
        MountSetup other = s_good with { Polar = null, Declination = s_good.Polar, Load = s_good.Load with { DeclinationInertiaKilogramSquareMetres = 1.0 } };
        Assert.Empty(SetupChecks.Problems(other));
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => s_studies[study](other));
        Assert.Contains("Polar: found null; allowed: a model of the axis that is to be simulated", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_problem_names_its_case() => Assert.Contains("[1].Polar.Motor.", Assert.Throws<ArgumentException>(() => s_studies["batch"](s_bad)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1e-6)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_step_that_is_none_is_refused(double step) =>
        Assert.Contains("StepSeconds", Assert.Throws<ArgumentException>(() => MoveStudy.Run(s_good, Polar, new MoveOptions { StepSeconds = step })).Message, StringComparison.Ordinal);

    [Fact]
    public void What_is_null_is_told()
    {
        MountSetup empty = s_good with { Polar = s_good.Polar! with { Motor = null!, Train = s_good.Polar!.Train with { Worm = null! } }, Load = null!, Disturbances = null! };
        Assert.Equal(
            ["Load: found null; allowed: a value", "Disturbances: found null; allowed: a value", "Polar.Motor: found null; allowed: a value", "Polar.Train.Worm: found null; allowed: a value"],
            SetupChecks.Problems(empty).Select(problem => problem.ToString()));
    }

    [Theory]
    [InlineData(new double[] { 0, 0, 0, 0, 0 }, "found 0 kg m2 about the polar axis")]
    [InlineData(new double[] { 1, 2, 0, 0, 0 }, "found terms that may go below zero (1 less 2 kg m2)")]
    [InlineData(new double[] { 1, 0, 0, 0 }, "found 4 terms")]
    public void An_inertia_that_cannot_be_is_told(double[] terms, string why) =>
        Assert.Contains(why, Assert.Single(SetupChecks.Problems(s_good with { Load = s_good.Load with { PolarInertia = terms } })).ToString(), StringComparison.Ordinal);

    /// <summary>A turn of 0.5 rad at 1e-300 rad/s, or with 1e-10 rad/s2 until half-way, would be simulated for ever.</summary>
    [Fact]
    public void A_move_without_end_is_told()
    {
        AxisModel polar = s_good.Polar!;
        MountSetup turn = s_good with { Move = s_good.Move with { Start = default, End = default(MountPose) with { PolarRadians = -0.5 } } };
        string Told(AxisMotion motion) => Assert.Single(SetupChecks.Problems(turn with { Polar = polar with { Motion = motion } })).ToString();
        Assert.Contains("Polar.Motion.SlewRateRadiansPerSecond: found 1E-300, with which the move of 0.5 rad takes 5E+299 s or more", Told(polar.Motion with { SlewRateRadiansPerSecond = 1e-300 }), StringComparison.Ordinal);
        Assert.Contains("Polar.Motion.Ramp: found 1E-10 rad/s2", Told(polar.Motion with { Ramp = Ramp.OfAcceleration(1e-10) }), StringComparison.Ordinal);
        Assert.Empty(SetupChecks.Problems(turn with { Polar = polar with { Motion = polar.Motion with { Ramp = Ramp.OfAcceleration(1e-9) } } }));
        Assert.Equal(2.0 * Math.Sqrt(0.5 / 1e-9), (polar.Motion with { Ramp = Ramp.OfAcceleration(1e-9) }).LeastSeconds(0.5), 1e-6);
    }

    [Fact]
    public void A_train_beyond_any_is_told()
    {
        MountSetup With(params GearStage[] stages) => s_good with { Polar = s_good.Polar! with { Train = s_good.Polar!.Train with { Stages = stages } } };
        var stage = new GearStage { Name = "wheel", DrivenTeeth = 100.0, DrivingTeeth = 1.0, Efficiency = 0.09 };
        Assert.Equal(
            ["Polar.Train.TotalRatio: found 1.44E+06; allowed: from 0.1 to 100000", "Polar.Train.Stages: found stages that pass on 0.0081 of the power together; allowed: from 0.01 to 1"],
            SetupChecks.Problems(With(stage, stage)).Select(problem => problem.ToString()));
        Assert.Empty(SetupChecks.Problems(With(stage)));
    }

    [Fact]
    public void A_load_that_cannot_be_is_refused()
    {
        Assert.Contains("InertiaKilogramSquareMetres: found -6", Assert.Throws<ArgumentException>(() => MountLoadBuilder.FromLumped(new LumpedLoad(-6.0, 4.0, 0.0), null, 0.9)).Message, StringComparison.Ordinal);
        var tube = new PayloadBody { Name = "tube", Shape = BodyShape.Tube, MassKilograms = 0.0, OutMetres = double.NaN, LengthMetres = 1.0, DiameterMetres = 0.2, InnerDiameterMetres = 0.3 };
        string message = Assert.Throws<ArgumentException>(() => MountLoadBuilder.FromBodies(new PayloadModel { Bodies = [tube] }, 0.9)).Message;
        Assert.All(["Bodies[0].MassKilograms: found 0;", "Bodies[0].OutMetres: found NaN;", "Bodies[0].InnerDiameterMetres: found 0.3 (not below the outer diameter)"], line => Assert.Contains(line, message, StringComparison.Ordinal));
    }

    [Fact]
    public void Breakaway_that_is_not_given_is_the_running_friction()
    {
        var bearings = new AxisBearings { CoulombNewtonMetres = 0.8 };
        Assert.Equal((0.8, 1.6, 1.0), (bearings.BreakawayNewtonMetres, (bearings with { CoulombNewtonMetres = 1.6 }).BreakawayNewtonMetres, (bearings with { BreakawayNewtonMetres = 1.0 }).BreakawayNewtonMetres));
    }

    /// <summary>A map asks this of every cell, so it must not cost: nothing but the collector is made as long as nothing is wrong.</summary>
    [Fact]
    public void A_check_that_finds_nothing_makes_nothing()
    {
        MountSetup every = EveryFeature.Slew;
        Assert.Empty(SetupChecks.Problems(every));
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 100; i++)
        {
            SetupChecks.Problems(every);
        }

        Assert.InRange((GC.GetAllocatedBytesForCurrentThread() - before) / 100, 0, 128);
    }
}
