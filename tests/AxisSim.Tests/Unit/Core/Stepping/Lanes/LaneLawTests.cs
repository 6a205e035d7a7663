using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Stepping.Lanes;

/// <summary>The step that is arranged for speed does what the laws written out one by one do.</summary>
public sealed class LaneLawTests
{
    /// <summary>
    /// Where elastic stages chatter on dry friction, a rounding of 1e-16 grows tenfold in some 6 ms; such moves are compared before it shows. A different law (a sign, a missing
    /// term) is off by 1e-3 arcsec or more in the first tenth of a second.
    /// </summary>
    private const double Arcseconds = 1e-4;

    /// <summary>The same of currents, voltages and temperatures: they follow the rotor.</summary>
    private const double Relative = 1e-6;

    public static TheoryData<string, MountAxis, double> Moves { get; } = new()
    {
        { "heavy-reflector", MountAxis.Polar, 4.0 },
        { "heavy-reflector", MountAxis.Declination, 4.0 },
        { "heavy-reflector-rescued", MountAxis.Polar, 4.0 },
        { "light-refractor", MountAxis.Polar, 0.45 },
        { "light-refractor", MountAxis.Declination, 0.28 },
        { "nominal", MountAxis.Polar, 4.0 },
        { "nominal-opposing", MountAxis.Polar, 4.0 },
        { "two-stage-newtonian", MountAxis.Polar, 0.3 },
        { "two-stage-newtonian", MountAxis.Declination, 0.2 },
    };

    [Theory]
    [MemberData(nameof(Moves))]
    [Trait("speed", "slow")]
    public void ShippedMovesAgree(string name, MountAxis axis, double seconds) => Agree(Setup(name), axis, seconds);

    [Theory]
    [InlineData(MountAxis.Polar)]
    [InlineData(MountAxis.Declination)]
    public void EveryFeatureAgrees(MountAxis axis) => Agree(EveryFeature.Slew, axis, 0.1);

    [Theory]
    [InlineData(MountAxis.Polar)]
    [InlineData(MountAxis.Declination)]
    public void EveryFeatureButElasticStagesAgreesForLonger(MountAxis axis)
    {
        AxisModel model = EveryFeature.Slew.Axis(axis);
        GearStage stage = model.Train.Stages[0] with { BacklashRadians = 0.0, StiffnessNewtonMetresPerRadian = double.PositiveInfinity };
        Agree(EveryFeature.Slew.With(axis, model with { Train = model.Train with { Stages = [stage] } }), axis, 3.0);
    }

    [Fact]
    public void ASupplyThatCollapsesAgrees()
    {
        AxisModel axis = BenchmarkCase.Axis with { Drive = BenchmarkCase.Drive with { SupplyVolts = 4.0, SupplyResistanceOhms = 2.0 } };
        MoveRun run = Agree(BenchmarkCase.Setup(axis, 0.0, 5 * BenchmarkCase.Degree, 1.0), MountAxis.Polar, 0.1);
        Assert.InRange(run.Reading.BusVolts, 0.0, 3.0);
    }

    [Fact]
    public void ASlippingClutchAgrees()
    {
        AxisModel axis = BenchmarkCase.Axis with
        {
            Train = BenchmarkCase.Axis.Train with { ClutchNewtonMetres = 2.0 },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(0.1) },
        };
        MoveRun run = Agree(BenchmarkCase.Setup(axis, 0.0, 5 * BenchmarkCase.Degree, 1.0), MountAxis.Polar, 1.0);
        Assert.NotEqual(0.0, run.SlipRadians);
    }

    private static MountSetup Setup(string name) =>
        ScenarioReader.ReadFile(Path.Combine(Repository.Root, "scenarios", name + ".toml"), []).Scenario!.Setup;

    private static MoveRun Agree(MountSetup setup, MountAxis axis, double seconds)
    {
        var run = new MoveRun(setup, axis, new MovePlan(setup), StepChoice.DefaultSeconds);
        var plain = new PlainRun(setup, axis, StepChoice.DefaultSeconds);
        var watch = default(Watch);
        for (double until = 0.02; until <= seconds; until += 0.02)
        {
            Assert.True(run.RunTo(until, ref watch, stopWhenLost: false));
            plain.RunTo(until);
            AxisState a = run.State;
            AxisState b = plain.State;
            string where = $"{axis} at {until:0.00} s: axis {(a.Axis - b.Axis) / BenchmarkCase.Arcsecond} arcsec, rotor {a.Rotor - b.Rotor} rad";
            Assert.True(Math.Abs(a.Axis - b.Axis) < Arcseconds * BenchmarkCase.Arcsecond, where);
            Assert.True(Math.Abs(a.Rotor - b.Rotor) / setup.Axis(axis).Train.TotalRatio < Arcseconds * BenchmarkCase.Arcsecond, where);
            Assert.True(Math.Abs(a.Payload - b.Payload) < Arcseconds * BenchmarkCase.Arcsecond || setup.Axis(axis).Flexible is null, where);
            Assert.True(Math.Abs(a.Slip - b.Slip) < Arcseconds * BenchmarkCase.Arcsecond, where);
            Near(run.Reading.BusVolts, plain.Stepper.Reading.BusVolts, where + ", bus");
            Near(run.Celsius, plain.Stepper.Celsius, where + ", winding");
            Near(run.Reading.ElectricalWatts, plain.Stepper.Reading.ElectricalWatts, where + ", power", 1e-3);
        }

        return run;
    }

    private static void Near(double a, double b, string what, double floor = 0.0) =>
        Assert.True(Math.Abs(a - b) <= (Relative * Math.Abs(b)) + floor, $"{what}: {a} against {b}");

    /// <summary>Asks for readings, and looks at nothing.</summary>
    private readonly struct Watch : IStepObserver
    {
        public static bool Wants => true;

        public void See(in StepContext step, MoveRun run)
        {
        }
    }
}
