using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Outcomes;

/// <summary>Close-ups keep what a figure of any length needs, and traces stay of one size however long a run is.</summary>
public sealed class CloseUpTests
{
    private const double Step = 50e-6;

    [Theory]
    [InlineData(100)]
    [InlineData(50_000)]
    [InlineData(3_000_000)]
    public void A_settling_has_about_a_thousand_stretches_up_to_any_time(int steps)
    {
        CloseUp near = new(TraceQuantity.SettleErrorRadians);
        SettlingCloseUp recorder = new(near, steps);
        for (int i = 0; i < steps; i++)
        {
            // Swings at 60 Hz that die out, and one step that sticks out late.
            recorder.See(i * Step, (i + 1) * Step, i == steps - 10 ? 5.0 : Math.Exp(-i * Step) * Math.Sin(377.0 * i * Step));
        }

        recorder.Finish();
        Assert.InRange(near.Count, Math.Min(steps, 1024), 1024 * (2.0 + Math.Log2(1.0 + (steps / 1024.0))));
        Assert.Equal(5.0, near.Greatest.Max());
        Assert.Equal(0.0, near.FromSeconds[0]);
        Assert.Equal(near.FromSeconds.Skip(1), near.ToSeconds.SkipLast(1));
        Assert.Equal(steps * Step, near.ToSeconds[^1], 1e-9);
        Assert.All(near.FromSeconds.Zip(near.ToSeconds), stretch => Assert.True(stretch.Second - stretch.First <= Math.Max(1.001 * Step, stretch.Second / 1000.0)));
    }

    [Theory]
    [InlineData(50e-6)]
    [InlineData(3e-6)]
    public void The_loss_of_sync_is_kept_with_what_came_before_and_after(double step)
    {
        // The rotor passes the unstable point twice and comes back, the second time later than the ring would hold; then it is lost and runs away.
        const double First = 0.7, Second = 0.9, Lost = 1.4;
        double LoadAngle(double t) => t >= Lost ? Math.PI + (40.0 * (t - Lost)) : (t is > First and < First + 0.01) || (t is > Second and < Second + 0.2) ? 3.3 : Math.Sin(300.0 * t);
        LossCloseUp recorder = new(step);
        double beyond = double.NaN;
        for (int i = 0; i < 2.0 / step; i++)
        {
            double time = (i * step) + step, angle = LoadAngle(time);
            beyond = Math.Abs(angle) <= Math.PI ? double.NaN : double.IsNaN(beyond) ? time : beyond;
            recorder.See(time, angle, beyond);
        }

        CloseUp near = new(TraceQuantity.LoadAngleRadians);
        recorder.Finish(beyond, near);
        Assert.Equal(Lost - LossCloseUp.SecondsBefore, near.FromSeconds[0], 1e-3);
        Assert.Equal(Lost + LossCloseUp.SecondsAfter, near.ToSeconds[^1], 1e-3);
        Assert.InRange(near.Count, 4096, 8200);
        Assert.Equal(near.FromSeconds.Skip(1), near.ToSeconds.SkipLast(1));
        Assert.Equal(Math.PI + (40.0 * LossCloseUp.SecondsAfter), near.Greatest[^1], 0.1);
        for (int i = 0; i < near.Count; i++)
        {
            Assert.InRange(LoadAngle(near.ToSeconds[i]), near.Least[i], near.Greatest[i]);
        }
    }

    [Fact]
    public void A_long_observation_takes_no_more_stretches_than_a_short_one()
    {
        AxisModel axis = BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = 0.05, Ramp = Ramp.OfSeconds(0.3) } };
        Trace brief = Run(axis, 1.5), lengthy = Run(axis, 60.0);
        Assert.InRange(brief.Count, TraceRecorder.MostStretches / 2, TraceRecorder.MostStretches);
        Assert.InRange(lengthy.Count, TraceRecorder.MostStretches / 2, TraceRecorder.MostStretches);
        Assert.InRange(lengthy.Settling.Count, brief.Settling.Count, 14_000);
    }

    private static Trace Run(AxisModel axis, double observe) =>
        MoveStudy.Run(BenchmarkCase.Setup(axis, -4.0, 0.1, observe), MountAxis.Polar, new MoveOptions { Explain = false }).Trace;
}
