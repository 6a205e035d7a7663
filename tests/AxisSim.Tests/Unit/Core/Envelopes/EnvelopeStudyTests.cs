using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Core.Envelopes;

/// <summary>The greatest safe rate against trying every rate, and the ends of the search against paper.</summary>
public sealed class EnvelopeStudyTests
{
    private const double Degree = Math.PI / 180.0;
    private const double Resolution = 0.1 * Degree;
    private static readonly double[] Ramps = [0.1, 0.2, 0.4];

    // A short move about both axes: some seconds of simulated time for each rate.
    private static readonly MountSetup Heavy = Read("heavy-reflector-stalls.toml", "move.end_polar=-11 deg", "move.end_declination=13 deg");

    [Fact]
    [Trait("speed", "slow")]
    public void Every_rate_tried_one_by_one_gives_the_same_answer()
    {
        foreach (GreatestRate answer in Answers(0))
        {
            int most = (int)(answer.TopRadiansPerSecond / Resolution);
            BatchResult[] all = BatchStudy.Run(
                [.. Enumerable.Range(1, most).Select(k => new BatchCase(EnvelopeStudy.With(Heavy, MountAxis.Polar, answer.RampSeconds, k * Resolution), MountAxis.Polar))], new BatchOptions());
            int firstBad = 1 + Array.FindIndex(all, result => result.End != BatchEnd.Arrives);
            Assert.InRange(firstBad, 2, most);
            Assert.Equal(firstBad - 1, answer.RateRadiansPerSecond / Resolution, 1e-6);
            Assert.Equal(firstBad, answer.FirstFailingRadiansPerSecond / Resolution, 1e-6);
            Assert.Equal(all[firstBad - 1].End, answer.Failure);
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void The_rate_arrives_the_next_fails_and_threads_change_nothing()
    {
        IReadOnlyList<GreatestRate> one = Answers(1);
        Assert.Equal(one.SelectMany(answer => answer.Answers), Answers(3).SelectMany(answer => answer.Answers));
        foreach (GreatestRate answer in one)
        {
            Assert.Null(answer.Cap);
            Assert.Equal(BatchEnd.Arrives, End(answer.RampSeconds, answer.RateRadiansPerSecond));
            Assert.Equal(answer.Failure, End(answer.RampSeconds, answer.RateRadiansPerSecond + Resolution));
        }
    }

    [Fact]
    [Trait("speed", "slow")]
    public void Short_ramps_are_limited_by_acceleration()
    {
        // Paper: where torque, and not speed, is the limit, the greatest rate grows in proportion to the ramp; each is known to one resolution.
        IReadOnlyList<GreatestRate> answers = Answers(0);
        for (int i = 1; i < Ramps.Length; i++)
        {
            double expected = answers[i - 1].RateRadiansPerSecond * Ramps[i] / Ramps[i - 1];
            Assert.InRange(answers[i].RateRadiansPerSecond, expected - Resolution, expected + ((1.0 + (Ramps[i] / Ramps[i - 1])) * Resolution));
        }
    }

    [Fact]
    public void The_ends_of_the_search_are_those_of_paper()
    {
        AxisModel model = Heavy.Polar!;

        // 100 kHz / 64 microsteps / 400 steps / 216 of gearing = 0.01808 rev/s = 6.51 deg/s.
        Assert.Equal(100e3 / 64 / 400 / 216 * 360 * Degree, RateCap.Pulses(model), 1e-12);
        Assert.Equal((RateCap.Pulses(model), Limit.PulseRate), RateCap.Of(Heavy, MountAxis.Polar, 0.5));

        // 6 deg with two ramps of 2 s at half the rate: 3 deg/s.
        (double rate, Limit limit) = RateCap.Of(Heavy, MountAxis.Polar, 2.0);
        Assert.Equal((3.0, Limit.MoveLength), (rate / Degree, limit));
        Assert.Equal(6.0 * Degree / rate * 2.0, MotionProfile.Create(6.0 * Degree, EnvelopeStudy.With(Heavy, MountAxis.Polar, 2.0, rate).Polar!.Motion).DurationSeconds, 1e-9);

        // Without a limit of pulses the motor's own speed ends it; there the closed form gives 2 % of the holding torque.
        MountSetup free = Heavy.With(MountAxis.Polar, model with { Drive = model.Drive with { MaximumPulseRateHertz = double.PositiveInfinity } });
        (double spent, Limit by) = RateCap.Of(free, MountAxis.Polar, 0.01);
        Assert.Equal(Limit.MotorSpeed, by);
        double torque = new[] { false, true }.Max(full => PullOutLaw.OnDrive(model.Motor, model.Drive, full, model.Drive.SupplyVolts, spent * model.Train.TotalRatio));
        Assert.Equal(RateCap.LeastTorqueShare, torque / model.Motor.HoldingTorqueNewtonMetres, 1e-3);
    }

    [Fact]
    public void A_move_too_short_for_any_rate_has_no_answer()
    {
        GreatestRate answer = Assert.Single(EnvelopeStudy.Run([new EnvelopeCase(Heavy, 100.0)], MountAxis.Polar, new EnvelopeOptions { ResolutionRadiansPerSecond = Resolution }));
        Assert.Equal((0, (Limit?)Limit.MoveLength, true), (answer.Tried, answer.Cap, double.IsNaN(answer.RateRadiansPerSecond)));
    }

    [Fact]
    public void No_rate_below_the_start_rate_is_tried()
    {
        AxisModel model = Heavy.Polar!;
        MountSetup jump = Heavy.With(MountAxis.Polar, model with { Motion = model.Motion with { StartRateRadiansPerSecond = 0.55 * Degree } });
        GreatestRate answer = Assert.Single(EnvelopeStudy.Run([new EnvelopeCase(jump, 0.1, 0.1 * Degree)], MountAxis.Polar, new EnvelopeOptions { ResolutionRadiansPerSecond = Resolution }));
        Assert.Equal(0.6, answer.LeastTriedRadiansPerSecond / Degree, 1e-9);
    }

    private static IReadOnlyList<GreatestRate> Answers(int threads) => EnvelopeStudy.Run(
        [.. Ramps.Select(ramp => new EnvelopeCase(Heavy, ramp))], MountAxis.Polar, new EnvelopeOptions { ResolutionRadiansPerSecond = Resolution, Threads = threads });

    private static BatchEnd End(double ramp, double rate) => BatchStudy.Run([new BatchCase(EnvelopeStudy.With(Heavy, MountAxis.Polar, ramp, rate), MountAxis.Polar)], new BatchOptions())[0].End;

    private static MountSetup Read(string file, params string[] settings) => ScenarioReader.ReadFile(Repository.PathOf("scenarios", file), settings).Scenario!.Setup;
}
