using AxisSim.Core;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Tests.Assemblies;
using CsCheck;

namespace AxisSim.Tests.Laws;

/// <summary>A move and its mirror image end in mirrored states: pose, imbalance phase, periodic-error phase and wind mirrored too.</summary>
public sealed class MirrorTests
{
    /// <summary>Last bits differ where floor() meets zero from either side; impacts and stick magnify them, in 600 samples to 1.4e-4 arcsec at most.</summary>
    private const double Tolerance = 2e-3;

    private const double Arcsec = BenchmarkCase.Arcsecond;

    [Fact]
    [Trait("speed", "slow")]
    public void MirroredMovesEndMirrored() =>
        (from imbalance in Gen.Double[-30.0, 30.0]
         from phase in Gen.Double[-3.0, 3.0]
         from distance in Gen.Double[0.5, 3.0]
         from rate in Gen.Double[0.5, 3.5]
         from ramp in Gen.Double[0.1, 0.6]
         from wormPhase in Gen.Double[-3.0, 3.0]
         from wind in Gen.Double[-8.0, 8.0]
         from share in Gen.Double[0.0, 0.7]
         from changeover in Gen.Double[8.0, 60.0]
         select (imbalance, phase, distance, rate, ramp, wormPhase, wind, share, changeover)).Sample(
            g =>
            {
                AxisState one = End(g.imbalance, g.phase, g.distance, g.rate, g.ramp, g.wormPhase, g.wind, g.share, g.changeover, 1.0);
                AxisState other = End(g.imbalance, g.phase, g.distance, g.rate, g.ramp, g.wormPhase, g.wind, g.share, g.changeover, -1.0);

                Assert.Equal(one.Axis / Arcsec, -other.Axis / Arcsec, Tolerance);
                Assert.Equal(one.Rotor, -other.Rotor, 1e-6);
            },
            iter: 100,
            print: g => g.ToString());

    private static AxisState End(double imbalance, double phase, double distance, double rate, double ramp, double wormPhase, double wind, double share, double changeover, double sign)
    {
        AxisModel axis = BenchmarkCase.Axis with
        {
            Drive = BenchmarkCase.Drive with { ChangeoverRadiansPerSecond = changeover, HoldingCurrentAmperes = 0.7, CurrentFallDelaySeconds = 0.1 },
            Train = BenchmarkCase.Axis.Train with
            {
                Worm = BenchmarkCase.Axis.Train.Worm with { PeriodicError = new PeriodicError(8 * Arcsec, sign * wormPhase, 2 * Arcsec, sign * wormPhase * 0.5, 5 * Arcsec, sign * 0.3) },
            },
            Flexible = share > 0.1 ? new FlexiblePayload { FrequencyHertz = 8.0, InertiaShare = share } : null,
            Motion = new AxisMotion { SlewRateRadiansPerSecond = rate * BenchmarkCase.Degree, RampSeconds = ramp },
        };
        MountSetup setup = BenchmarkCase.Setup(axis, 0.0, sign * distance * BenchmarkCase.Degree, 0.5) with
        {
            Load = MountLoadBuilder.FromLumped(new LumpedLoad(6.0, imbalance, sign * phase), null, 50 * BenchmarkCase.Degree),
            Disturbances = new Disturbances { SyncProbe = false, WindMetresPerSecond = sign * wind, AreaSquareMetres = 0.2, LeverMetres = 0.4, GustMetresPerSecond = sign * 3.0, GustStartSeconds = 0.2 },
        };
        var run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), StepChoice.DefaultSeconds);
        var none = default(NoObserver);
        run.RunTo(run.Plan.EndSeconds, ref none, stopWhenLost: false);
        return run.Dynamics.State;
    }
}
