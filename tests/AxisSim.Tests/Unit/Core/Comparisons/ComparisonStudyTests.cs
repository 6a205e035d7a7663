using AxisSim.Core.Batches;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Comparisons;

/// <summary>The best of a small set against trying everything, and what the closed form may rule out.</summary>
public sealed class ComparisonStudyTests
{
    private const double Degree = Math.PI / 180.0;
    private const double Resolution = 0.1 * Degree;
    private const double LoadFactor = 1.3;
    /// <summary>Errors are counted in steps from two different ends of a slew.</summary>
    private const double OneStep = 51e-6;

    private static readonly MountAxis[] Polar = [MountAxis.Polar];

    // A short move: some seconds of simulated time for each rate. A wide tolerance, for settling on a rough axis hangs on details.
    private static readonly MountSetup Mount = ScenarioReader.ReadFile(
        Repository.PathOf("scenarios", "heavy-reflector-stalls.toml"),
        ["move.end_polar=-11 deg", "move.end_declination=13 deg", "move.observe=4 s", "settling.tolerance=60 arcsec", "polar.drive.microsteps=16"]).Scenario!.Setup;

    private static readonly Candidate[] Small =
    [
        .. new[] { "17 short, 1.8 deg", "17 long, 0.9 deg", "14 medium, 0.9 deg" }
            .SelectMany(name => new double?[] { 144.0, 360.0 }.SelectMany(ratio => new double?[] { 11.2, 24.0 }.Select(volts => new Candidate(SampleMotors.Of(name), ratio, volts)))),
    ];

    private static readonly Lazy<IReadOnlyList<CandidateResult>> s_all = new(() => Run(all: true));

    [Fact]
    [Trait("speed", "slow")]
    public void The_best_is_that_of_trying_every_rate_of_every_candidate()
    {
        var times = new List<(Candidate Candidate, double Rate, double Slew)>();
        foreach (CandidateResult result in s_all.Value.Where(result => !double.IsNaN(result.Axes[0].RateRadiansPerSecond)))
        {
            MountSetup setup = CandidateSetup.Of(Mount, Polar, result.Candidate, 1.0);
            double least = ComparisonStudy.LeastShare * Mount.Polar!.Motion.SlewRateRadiansPerSecond, top = RateCap.Of(setup, MountAxis.Polar, 0.4).RateRadiansPerSecond;
            int[] rates = [.. Enumerable.Range((int)Math.Ceiling((least / Resolution) - 1e-9), (int)((top / Resolution) + 1e-9) - (int)Math.Ceiling((least / Resolution) - 1e-9) + 1)];
            BatchResult[] ends = BatchStudy.Run([.. rates.Select(k => new BatchCase(SetupEdits.Loaded(EnvelopeStudy.With(setup, MountAxis.Polar, 0.4, k * Resolution), MountAxis.Polar, LoadFactor), MountAxis.Polar))], new BatchOptions());
            int bad = Array.FindIndex(ends, end => end.End != BatchEnd.Arrives);
            double rate = (bad < 0 ? rates[^1] : rates[0] + bad - 1) * Resolution;

            // The same rate at the edge; the search may step over a narrow band of failure, which then lies in its stated blind spot.
            Assert.Equal(rate / Resolution, result.Axes[0].Search!.RateRadiansPerSecond / Resolution, 1e-6);
            times.Add((result.Candidate, rate, new MovePlan(EnvelopeStudy.With(setup, MountAxis.Polar, 0.4, rate)).PolarProfile.DurationSeconds));
        }

        // No candidate slews so fast that it could be on target sooner, even if it settled at once, and does settle.
        CandidateResult winner = s_all.Value[0];
        Assert.Equal(CandidateFate.Ranked, winner.Fate);
        Assert.All(s_all.Value.Where(result => result.Fate == CandidateFate.Ranked), result => Assert.True(result.OnTargetSeconds >= winner.OnTargetSeconds));
        foreach ((Candidate candidate, _, double slew) in times.Where(time => time.Slew < winner.SlewSeconds))
        {
            CandidateResult faster = s_all.Value.Single(result => result.Candidate == candidate);
            Assert.True(faster.Fate != CandidateFate.Ranked || slew + faster.Axes[0].SettleSeconds >= winner.OnTargetSeconds);
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void What_the_closed_form_rules_out_would_not_have_won()
    {
        IReadOnlyList<CandidateResult> spared = Run(all: false), all = s_all.Value;
        CandidateResult[] dropped = [.. spared.Where(result => result.Fate is CandidateFate.Slower or CandidateFate.Hopeless)];
        Assert.NotEmpty(dropped);

        // The best of every motor is the same, to the last bit.
        foreach (MotorChoice motor in Small.Select(candidate => candidate.Motor).Distinct())
        {
            CandidateResult a = spared.First(result => result.Candidate.Motor == motor), b = all.First(result => result.Candidate.Motor == motor);
            if (b.Fate == CandidateFate.Ranked)
            {
                Assert.Equal((b.Candidate, b.OnTargetSeconds), (a.Candidate, a.OnTargetSeconds));
            }
        }

        // None of the dropped beats the time that the closed form told.
        foreach (CandidateResult result in dropped)
        {
            CandidateResult simulated = all.Single(one => one.Candidate == result.Candidate);
            Assert.True(simulated.Fate != CandidateFate.Ranked || simulated.OnTargetSeconds >= result.SlewSeconds);
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void No_simulated_rate_is_above_the_bound_of_the_closed_form()
    {
        foreach (CandidateAxis axis in s_all.Value.Select(result => result.Axes[0]).Where(axis => !double.IsNaN(axis.RateRadiansPerSecond)))
        {
            Assert.True(axis.Search!.RateRadiansPerSecond <= axis.BoundRadiansPerSecond + Resolution, $"{axis.Search.RateRadiansPerSecond / Degree} above {axis.BoundRadiansPerSecond / Degree} deg/s");
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Settling_heat_and_verdict_are_those_of_a_simulated_move()
    {
        foreach (CandidateResult result in s_all.Value.Where(result => result.Fate == CandidateFate.Ranked).Take(3))
        {
            AxisResult move = MoveStudy.Run(result.Setup, MountAxis.Polar, new MoveOptions { Explain = false });
            Assert.Equal(Verdict.Arrives, move.Outcome.Verdict);

            // A simulated move counts from the end of the slower axis, which is the declination here.
            double settled = result.Axes[0].OwnSlewSeconds + result.Axes[0].SettleSeconds;
            Assert.Equal(move.Outcome.Settling!.AgainstRestSeconds!.Value, Math.Max(0.0, settled - move.Outcome.SlewSeconds), OneStep);
            Assert.Equal(move.Outcome.Power.ContinuousCelsius, result.Axes[0].ContinuousCelsius, 1e-9);
            Assert.Equal(move.Outcome.Power.MeanSupplyAmperes * result.Setup.Polar!.Drive.SupplyVolts, result.Axes[0].MeanWatts, 1e-9);
            Assert.Equal(result.Axes[0].OwnSlewSeconds, result.SlewSeconds);
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Threads_change_nothing_and_a_weak_motor_is_hopeless_for_its_reason()
    {
        Candidate[] two = [Small[0], new Candidate(SampleMotors.Of("11 short, 1.8 deg"), 144.0, 24.0)];
        IReadOnlyList<CandidateResult> one = Run(false, two, 1), three = Run(false, two, 3);
        Assert.Equal(one.Select(result => (result.Index, result.Fate, result.OnTargetSeconds)), three.Select(result => (result.Index, result.Fate, result.OnTargetSeconds)));

        // Paper: 9.7 N m of load (the scenario's own estimate) x 1.3 over 144 x 0.32 x 0.97 is 0.28 N m; the motor holds 0.09 N m.
        // Of that load imbalance is 6.4 N m and friction of the bearings 1.8 N m.
        CandidateResult weak = one[^1];
        Assert.Equal((CandidateFate.Hopeless, Limit.Imbalance), (weak.Fate, weak.Axes[0].Limit));
    }

    [Fact]
    [Trait("speed", "slow")]
    public void A_winding_that_gets_too_hot_loses_however_fast_it_is()
    {
        // No cooling to speak of: a hundred times the usual thermal resistance, and the insulation of paper.
        MotorChoice cool = SampleMotors.Of("17 long, 0.9 deg"), hot = cool with
        {
            Name = "hot",
            Motor = cool.Motor with { GivenThermalResistanceKelvinPerWatt = 100.0 * cool.Motor.ThermalResistanceKelvinPerWatt, Insulation = InsulationClass.A },
        };
        IReadOnlyList<CandidateResult> results = Run(false, [new Candidate(hot, 360.0, 24.0), new Candidate(cool, 360.0, 24.0)], 0);
        Assert.Equal((cool, CandidateFate.Ranked), (results[0].Candidate.Motor, results[0].Fate));
        Assert.Equal((hot, CandidateFate.TooHot), (results[1].Candidate.Motor, results[1].Fate));
        Assert.True(results[1].Axes[0].ContinuousCelsius > 105.0);
    }

    private static IReadOnlyList<CandidateResult> Run(bool all) => Run(all, Small, 0);

    private static IReadOnlyList<CandidateResult> Run(bool all, IReadOnlyList<Candidate> candidates, int threads) =>
        ComparisonStudy.Run(Mount, Polar, candidates, new ComparisonOptions { LoadFactor = LoadFactor, ResolutionRadiansPerSecond = Resolution, All = all, Threads = threads });
}
