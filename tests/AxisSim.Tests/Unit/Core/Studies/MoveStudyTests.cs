using AxisSim.Core.Drives;
using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>Outcomes of moves against estimates on paper.</summary>
public sealed class MoveStudyTests
{
    private static readonly MoveOptions Plain = new() { Explain = false };

    /// <summary>The offset's parts add up, in an arriving, a bent and a stalled move.</summary>
    [Theory]
    [InlineData(4.0, 2.0)]
    [InlineData(-30.0, 0.4)]
    [InlineData(-200.0, 0.05)]
    public void OffsetPartsAddUp(double imbalance, double ramp)
    {
        AxisModel axis = BenchmarkCase.Axis with
        {
            Flexible = new FlexiblePayload { FrequencyHertz = 8.0 },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(ramp) },
        };
        AxisOutcome outcome = MoveStudy.Run(BenchmarkCase.Setup(axis, imbalance, 20 * BenchmarkCase.Degree, 2.0), MountAxis.Polar, Plain).Outcome;
        OffsetSplit o = outcome.Offset;
        Assert.Equal(o.TotalRadians, o.BacklashRadians + o.WindUpRadians + o.FrictionRadians + o.PeriodicRadians + o.FlexureRadians + o.SlippedRadians, 1e-12);
        Assert.Equal(outcome.Verdict == Verdict.Stalls, o.SlippedRadians != 0.0);
    }

    /// <summary>
    /// Margin on paper, opposing imbalance of 30 N m at the end of 90 degrees: 30 x cos 50 deg = 19.3 N m + 0.8 + 0.1 x 0.052, over 720 and efficiency 0.45: 0.062 N m,
    /// less what braking spares (6 kg m2 x 0.026 rad/s2 = 0.16 N m).
    /// </summary>
    [Fact]
    public void NeededTorqueMatchesTheHandEstimate()
    {
        TorqueMargin margin = MoveStudy.Run(BenchmarkCase.Slew(-30.0), MountAxis.Polar, Plain).Outcome.Margin;
        Assert.Equal((19.28 + 0.8) / (720 * 0.45), margin.NeededNewtonMetres, 0.001);
        Assert.InRange(margin.TimeSeconds, 29.0, 32.0);
        Assert.InRange(margin.AvailableNewtonMetres, 0.18, 0.37);
    }

    /// <summary>
    /// Slew energy on paper: copper loss about I^2 R x 32 s + hold 3 s = 3.4 W x 35 s = 118 J microstepped, up to 4/pi^2... more full-stepped; work at the axis
    /// (2.6 N m mean 1.6 x 1.57 rad, and friction 0.8 x 1.57) over 0.45: 9 J. The supply's mean current is that power over 24 V.
    /// </summary>
    [Fact]
    public void EnergyMatchesTheHandEstimate()
    {
        PowerAndHeat power = MoveStudy.Run(BenchmarkCase.Slew(-4.0), MountAxis.Polar, Plain).Outcome.Power;
        Assert.InRange(power.EnergyJoules, 118.0, 1.4 * 127.0);
        Assert.InRange(power.MeanSupplyAmperes, 3.4 / 24.0, 1.4 * 3.9 / 24.0);
        Assert.Equal(24.0, power.LowestBusVolts);
    }

    /// <summary>
    /// Winding temperature on paper: holding with 1.5 A microstepped, I^2 R = 3.375 W at 20 degC; Rth = 80/(2 x 3.375 x 1.3144) = 9.017 K/W; for ever
    /// T = 20 + 30.43 (1 + 0.00393 (T - 20)) = 54.6 degC.
    /// </summary>
    [Fact]
    public void WindingTemperatureMatchesTheHandEstimate()
    {
        AxisModel axis = BenchmarkCase.Axis with
        {
            Motor = BenchmarkCase.Motor with { GivenThermalResistanceKelvinPerWatt = null, ThermalTimeConstantSeconds = 5.0 },
            Drive = BenchmarkCase.Drive with { ChangeoverRadiansPerSecond = double.PositiveInfinity },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 0.3 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(1) }, // slow, for the regulator lags a fast sine and its current falls
        };
        AxisOutcome outcome = MoveStudy.Run(BenchmarkCase.Setup(axis, 0.0, 0.1, 40.0), MountAxis.Polar, Plain).Outcome;
        Assert.Equal(54.56, outcome.Power.ContinuousCelsius, 0.3); // 377 electrical rad/s x 100 us of lag take 0.3 % of the loss
        Assert.Equal(54.56, outcome.Power.EndCelsius, 0.3); // 8 time constants
    }

    /// <summary>
    /// Start-stop limit: without a ramp the rotor must catch up within half a turn of load angle; energy gives about w = sqrt(4 T/(Nr J)) = 2 x sqrt(0.283/(100 x 6e-6)) = 43 rad/s
    /// for the bare rotor at best (pull-in of an undamped rotor, no friction). Well below it starts; well above it does not.
    /// </summary>
    [Theory]
    [InlineData(12.0, true)]
    [InlineData(80.0, false)]
    public void StartStopLimitShows(double startSpeed, bool starts)
    {
        double rate = startSpeed / 720;
        AxisModel axis = BenchmarkCase.Axis with
        {
            Drive = BenchmarkCase.Drive with { ChangeoverRadiansPerSecond = double.PositiveInfinity },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = rate, Ramp = Ramp.OfSeconds(1.0), StartRateRadiansPerSecond = rate },
        };
        AxisOutcome outcome = MoveStudy.Run(BenchmarkCase.Setup(axis, 0.0, rate * 2.0, 0.5), MountAxis.Polar, Plain).Outcome;
        Assert.Equal(starts, outcome.Verdict != Verdict.Stalls);
    }

    /// <summary>Braking feeds the bus up to its limit and no further.</summary>
    [Fact]
    public void TheBrakeLimitHoldsTheBus()
    {
        AxisModel axis = BenchmarkCase.Axis with
        {
            Drive = BenchmarkCase.Drive with { SupplyResistanceOhms = 0.3, BusCapacitanceFarads = 2e-4, BrakeLimitVolts = 25.0, SlewCurrentAmperes = 0.5 },
            Train = BenchmarkCase.Axis.Train with { Worm = BenchmarkCase.Axis.Train.Worm with { GivenDrivingEfficiency = 0.9, GivenBackDrivingEfficiency = 0.85 }, ClutchNewtonMetres = 1e3 },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 4 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(0.4) },
        };

        // 100 N m help through a worm that does not lock: 64 N m x 0.07 rad/s x 0.85 = 3.8 W against 0.4 W of copper.
        AxisOutcome outcome = MoveStudy.Run(BenchmarkCase.Setup(axis, 100.0, 90 * BenchmarkCase.Degree, 0.5), MountAxis.Polar, Plain).Outcome;
        Assert.True(outcome.Verdict != Verdict.Stalls);
        Assert.Equal(25.0, outcome.Power.HighestBusVolts, 1e-9);
    }

    /// <summary>A clutch weaker than the imbalance slips, and is named.</summary>
    [Fact]
    public void AWeakClutchIsNamed()
    {
        AxisModel axis = BenchmarkCase.Axis with { Train = BenchmarkCase.Axis.Train with { ClutchNewtonMetres = 8.0 } };
        AxisResult result = MoveStudy.Run(BenchmarkCase.Setup(axis, -30.0, 60 * BenchmarkCase.Degree, 0.5), MountAxis.Polar, new MoveOptions());
        Assert.Equal(Verdict.ClutchSlips, result.Outcome.Verdict);
        Assert.Equal(Limit.Clutch, result.Diagnosis!.Why.Limit);

        // By hand: 30 cos 50 deg sin x + 0.8 = 8 at x = 21.9 deg, reached after 1 s of half rate and then at 3 deg/s: 8.3 s.
        Assert.Equal(8.3, result.Outcome.ClutchSlipSeconds!.Value, 0.5);
    }

    /// <summary>Both axes move; the polar inertia that changes with declination is taken along, and the slew ends with the slower axis.</summary>
    [Fact]
    public void TheSlowerAxisEndsTheSlew()
    {
        MountSetup setup = BenchmarkCase.Slew(4.0) with { Declination = BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = 1 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(2) } } };
        setup = setup with { Load = setup.Load with { DeclinationInertiaKilogramSquareMetres = 2.0 }, Move = setup.Move with { End = new MountPose(90 * BenchmarkCase.Degree, 60 * BenchmarkCase.Degree) } };
        AxisOutcome polar = MoveStudy.Run(setup, MountAxis.Polar, Plain).Outcome;
        Assert.Equal(62.0, polar.SlewSeconds, 1e-9); // 60 deg at 1 deg/s and a 2 s ramp
    }

    /// <summary>A current that would fall after the end of the watch does not lengthen it, and makes no jump.</summary>
    [Fact]
    public void AWatchShorterThanTheDelayOfTheCurrentIsKept()
    {
        AxisModel axis = BenchmarkCase.Axis with
        {
            Drive = BenchmarkCase.Drive with { HoldingCurrentAmperes = 0.7, CurrentFallDelaySeconds = 5.0 },
            Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(0.5) },
        };
        AxisResult result = MoveStudy.Run(BenchmarkCase.Setup(axis, 4.0, 3 * BenchmarkCase.Degree, 1.5), MountAxis.Polar, Plain);
        Assert.Equal(3.0, result.Trace.ToSeconds[^1], 2e-3); // 1.5 s of slew and 1.5 s of watch
        Assert.Null(result.Outcome.Settling!.HoldJumpRadians);
    }
}
