using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Moves;
using AxisSim.Tests.Assemblies;
using AxisSim.Tests.Docs;
using OxyPlot.Series;

namespace AxisSim.Tests.Unit.Core.Outcomes;

/// <summary>A trace of stretches hides nothing that every step shows: on each axis of each shipped scenario.</summary>
[Trait("speed", "slow")]
public sealed class TraceEnvelopeTests
{
    /// <summary>Sums of some hundred numbers in another order.</summary>
    private const double Rounding = 1e-12;

    /// <summary>Points that lie on a line within a fifth of a pixel are not drawn, so an extreme may be short by that; the numbers of the panel's own unit round too.</summary>
    private const double Pixels = 0.2 + 1e-6;

    public static TheoryData<string, MountAxis> Axes
    {
        get
        {
            TheoryData<string, MountAxis> axes = [];
            foreach (string name in Directory.GetFiles(Repository.PathOf("scenarios"), "*.toml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal))
            {
                foreach (MountAxis axis in Enum.GetValues<MountAxis>())
                {
                    if ((axis == MountAxis.Polar ? Shipped.Read(name).Setup.Polar : Shipped.Read(name).Setup.Declination) is not null)
                    {
                        axes.Add(name, axis);
                    }
                }
            }

            return axes;
        }
    }

    [Theory]
    [MemberData(nameof(Axes))]
    public void Stretches_and_panels_have_the_extremes_of_every_step(string scenario, MountAxis axis)
    {
        var steps = new StepRows();
        AxisResult plain = Run(scenario, axis, null), full = Run(scenario, axis, steps);
        AssertSame(plain.Trace, full.Trace);
        AssertRanges(plain.Trace, steps);
        AssertCloseUp(plain.Trace.Settling, steps);
        AssertCloseUp(plain.Trace.Loss, steps);
        Assert.Equal(plain.Outcome.Loss is null, plain.Trace.Loss.Count == 0);
        AssertPanels(plain, steps);
    }

    private static AxisResult Run(string scenario, MountAxis axis, IStepSink? sink) =>
        MoveStudy.Run(Shipped.Read(scenario).Setup, axis, new MoveOptions { Explain = false, EveryStep = sink });

    /// <summary>That somebody takes every step changes no bit of the trace, and so of the figures, which know nothing else.</summary>
    private static void AssertSame(Trace plain, Trace full)
    {
        Assert.Equal(plain.ToSeconds, full.ToSeconds);
        foreach (TraceQuantity quantity in Enum.GetValues<TraceQuantity>())
        {
            Assert.Equal(plain[quantity].Least, full[quantity].Least);
            Assert.Equal(plain[quantity].Mean, full[quantity].Mean);
            Assert.Equal(plain[quantity].Greatest, full[quantity].Greatest);
        }
    }

    private static void AssertRanges(Trace trace, StepRows steps)
    {
        Assert.InRange(trace.Count, 1, TraceRecorder.MostStretches);
        Assert.Equal(0.0, trace.FromSeconds[0]);
        Assert.Equal(trace.FromSeconds.Skip(1), trace.ToSeconds.SkipLast(1));
        Assert.Equal(steps.TimeSeconds[^1], trace.ToSeconds[^1]);
        foreach (TraceQuantity quantity in Enum.GetValues<TraceQuantity>())
        {
            bool planned = quantity is TraceQuantity.NeededTorqueNewtonMetres or TraceQuantity.AvailableTorqueNewtonMetres;
            int k = 0;
            for (int i = 0; i < trace.Count; i++)
            {
                int first = k;
                (double least, double sum, double greatest) = (double.PositiveInfinity, 0.0, double.NegativeInfinity);
                for (; k < steps.Count && steps.TimeSeconds[k] <= trace.ToSeconds[i]; k++)
                {
                    double value = steps[quantity][k];
                    (least, sum, greatest) = (Math.Min(least, value), sum + value, Math.Max(greatest, value));
                }

                string where = $"{quantity} up to {trace.ToSeconds[i]} s";
                Assert.True(least == trace[quantity].Least[i] && greatest == trace[quantity].Greatest[i], $"{where}: {trace[quantity].Least[i]} to {trace[quantity].Greatest[i]}, every step {least} to {greatest}");
                if (!planned)
                {
                    Assert.True(Math.Abs((sum / (k - first)) - trace[quantity].Mean[i]) <= Rounding * Math.Max(Math.Abs(least), Math.Abs(greatest)), where);
                }
            }

            Assert.Equal(steps.Count, k);
        }
    }

    private static void AssertCloseUp(CloseUp closeUp, StepRows steps)
    {
        int k = 0;
        for (int i = 0; i < closeUp.Count; i++)
        {
            for (; steps.TimeSeconds[k] <= closeUp.FromSeconds[i]; k++)
            {
            }

            (double least, double greatest) = (double.PositiveInfinity, double.NegativeInfinity);
            for (; k < steps.Count && steps.TimeSeconds[k] <= closeUp.ToSeconds[i]; k++)
            {
                (least, greatest) = (Math.Min(least, steps[closeUp.Quantity][k]), Math.Max(greatest, steps[closeUp.Quantity][k]));
            }

            Assert.True(least == closeUp.Least[i] && greatest == closeUp.Greatest[i], $"{closeUp.Quantity} up to {closeUp.ToSeconds[i]} s: {closeUp.Least[i]} to {closeUp.Greatest[i]}, every step {least} to {greatest}");
        }
    }

    private static void AssertPanels(AxisResult result, StepRows steps)
    {
        MoveData data = new(result.Trace, result.Outcome);
        IReadOnlyList<double> axisError = steps[TraceQuantity.AxisErrorRadians];
        Span errors = Span.Of(axisError, steps[TraceQuantity.PayloadErrorRadians]);
        double unit = AngleUnit.For(Math.Max(Math.Abs(errors.From), Math.Abs(errors.To))).PerRadian;
        AssertDrawn(RatePanel.Create(data), 0, steps[TraceQuantity.ActualRateRadiansPerSecond], AngleUnit.DegreesPerRadian);
        AssertDrawn(RatePanel.Create(data), 1, steps[TraceQuantity.PlannedRateRadiansPerSecond], AngleUnit.DegreesPerRadian);
        AssertDrawn(TorquePanel.Create(data), 0, steps[TraceQuantity.MotorTorqueNewtonMetres], data.Direction);
        AssertDrawn(TorquePanel.Create(data), 1, steps[TraceQuantity.AvailableTorqueNewtonMetres], 1.0);
        AssertDrawn(TorquePanel.Create(data), 2, steps[TraceQuantity.NeededTorqueNewtonMetres], data.Direction);
        AssertDrawn(LoadAnglePanel.Create(data), 0, steps[TraceQuantity.LoadAngleRadians], 2.0 / Math.PI);
        AssertDrawn(CurrentPanel.Create(data), 0, [.. steps[TraceQuantity.PhaseACurrentAmperes], .. steps[TraceQuantity.PhaseBCurrentAmperes]], 1.0);
        AssertDrawn(CurrentPanel.Create(data), 1, steps[TraceQuantity.CurrentAmplitudeAmperes], 1.0);
        AssertDrawn(ErrorPanel.Create(data), 0, axisError, unit);

        // A share needs a time over which it is taken: that of a stretch, which the ranges were held to above.
        AssertDrawn(SaturationPanel.Create(data), 0, [0.0, .. result.Trace[TraceQuantity.Saturated].Mean], 100.0);
        if (result.Outcome.Loss is { } loss)
        {
            double from = result.Trace.Loss.FromSeconds[0], to = result.Trace.Loss.ToSeconds[^1];
            Assert.InRange(from, Math.Max(0.0, loss.TimeSeconds - LossCloseUp.SecondsBefore - 1e-3), Math.Max(0.0, loss.TimeSeconds - LossCloseUp.SecondsBefore));
            Assert.InRange(to, Math.Min(steps.TimeSeconds[^1], loss.TimeSeconds + LossCloseUp.SecondsAfter), loss.TimeSeconds + LossCloseUp.SecondsAfter + 1e-3);
            AssertDrawn(LossPanel.Create(data, loss), 0, [.. steps[TraceQuantity.LoadAngleRadians].Where((_, i) => steps.TimeSeconds[i] > from && steps.TimeSeconds[i] <= to)], 2.0 / Math.PI);
        }
        else
        {
            AssertSettling(data, steps);
        }
    }

    private static void AssertSettling(MoveData data, StepRows steps)
    {
        Panel panel = SettlePanel.Create(data)!;
        double end = data.Outcome.SlewSeconds, rest = data.Outcome.Settling!.RestRadians - data.Outcome.Offset.PeriodicRadians, shown = end + panel.Model.Axes[0].Maximum;
        double last = data.Trace.Settling.ToSeconds.FirstOrDefault(time => time >= shown, data.Trace.Settling.ToSeconds[^1]);
        Assert.True(last - shown <= (shown - end) / 1000.0, "a stretch of the close-up is wider than about a pixel");
        double unit = panel.Model.Axes[1].Title.EndsWith("arcsec", StringComparison.Ordinal) ? AngleUnit.ArcSeconds.PerRadian : panel.Model.Axes[1].Title.EndsWith("arcmin", StringComparison.Ordinal) ? AngleUnit.ArcMinutes.PerRadian : AngleUnit.DegreesPerRadian;
        double[] errors = [.. steps[TraceQuantity.SettleErrorRadians].Where((_, i) => steps.TimeSeconds[i] > end && steps.TimeSeconds[i] <= last).Select(error => error - rest)];
        AssertDrawn(panel, panel.Model.Series.Count - 1, errors, unit);
    }

    /// <summary>A series of a panel reaches as far down and up as a quantity does in all steps.</summary>
    private static void AssertDrawn(Panel panel, int series, IReadOnlyList<double> values, double factor)
    {
        double[] drawn = panel.Model.Series[series] switch
        {
            AreaSeries band => [.. band.Points.Concat(band.Points2).Select(point => point.Y)],
            LineSeries line => [.. line.Points.Where(point => point.IsDefined()).Select(point => point.Y)],
            _ => throw new ArgumentException("neither a line nor a band", nameof(panel)),
        };
        double pixel = (panel.Model.Axes[1].Maximum - panel.Model.Axes[1].Minimum) / panel.PlotHeight;
        double a = factor * values.Min(), b = factor * values.Max();
        Assert.Equal(Math.Min(a, b), drawn.Min(), Pixels * pixel);
        Assert.Equal(Math.Max(a, b), drawn.Max(), Pixels * pixel);
    }
}
