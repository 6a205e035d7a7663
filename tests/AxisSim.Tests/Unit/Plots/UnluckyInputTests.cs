using AxisSim.Core.Outcomes;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using AxisSim.Tests.Invented;
using OxyPlot;
using OxyPlot.Series;

namespace AxisSim.Tests.Unit.Plots;

/// <summary>Inputs that a run may well leave behind: nothing, one sample, samples that are no numbers.</summary>
public sealed class UnluckyInputTests
{
    [Fact]
    public void An_empty_trace_is_refused_in_words()
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Figures.Sheet((new Trace(), SampleMoves.Good().Outcome)));
        Assert.Contains("The trace is empty", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stretch_that_lacks_a_quantity_is_refused_in_words()
    {
        double[] all = new double[Enum.GetValues<TraceQuantity>().Length];
        Trace trace = new();
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => trace.Add(0, 1, all, all.AsSpan(1), all));
        Assert.Contains($"{all.Length - 1} mean", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(0, trace.Count);
    }

    [Fact]
    public void A_trace_of_one_sample_is_drawn()
    {
        (Trace trace, AxisOutcome outcome) = SampleMoves.Good(1000);
        Assert.Equal(1, trace.Count);
        AssertDrawn(Figures.Sheet((trace, outcome)));
    }

    [Fact]
    public void Samples_that_are_no_numbers_leave_gaps()
    {
        static void Spoil(int i, double[] values)
        {
            if (i < 300 || i % 7 != 0)
            {
                return;
            }

            values[(int)TraceQuantity.AxisErrorRadians] = double.NaN;
            values[(int)TraceQuantity.SettleErrorRadians] = double.NaN;
            values[(int)TraceQuantity.ActualRateRadiansPerSecond] = double.PositiveInfinity;
            values[(int)TraceQuantity.MotorTorqueNewtonMetres] = double.NegativeInfinity;
            values[(int)TraceQuantity.PhaseACurrentAmperes] = double.NaN;
            values[(int)TraceQuantity.LoadAngleRadians] = double.NaN;
        }

        AssertDrawn(Figures.Sheet(SampleMoves.Good(0.02, Spoil)));
        AssertDrawn(Figures.Sheet(SampleMoves.Stalled(0.004, Spoil)));
    }

    [Fact]
    public void A_quantity_that_is_never_a_number_leaves_its_panel_empty_and_the_others_whole() =>
        AssertDrawn(Figures.Sheet(SampleMoves.Good(0.02, (_, values) =>
        {
            values[(int)TraceQuantity.AxisErrorRadians] = double.NaN;
            values[(int)TraceQuantity.SettleErrorRadians] = double.NaN;
            values[(int)TraceQuantity.LoadAngleRadians] = double.NaN;
            values[(int)TraceQuantity.AvailableTorqueNewtonMetres] = double.NaN;
        })));

    [Fact]
    public void Nothing_to_draw_on_the_plane_is_refused_in_words()
    {
        TorqueSpeedCurves nothing = SampleMoves.Curves() with { SpeedsRadiansPerSecond = [], Curves = [], Path = [] };
        Assert.Contains("nothing to draw", Assert.Throws<ArgumentException>(() => TorqueSpeedFigure.Create(nothing, "t", 720)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => TorqueSpeedFigure.Create(SampleMoves.Curves(), "t", 0));
        Assert.Throws<ArgumentException>(() => TorqueSpeedFigure.Create(SampleMoves.Curves() with { SpeedsRadiansPerSecond = [1, 2] }, "t", 720));
    }

    [Fact]
    public void A_plane_without_changeover_bands_path_or_simulation_is_drawn()
    {
        TorqueSpeedCurves curves = SampleMoves.Curves(double.PositiveInfinity);
        AssertDrawn(TorqueSpeedFigure.Create(curves with { Bands = [], Path = [] }, "t", 720));
        AssertDrawn(TorqueSpeedFigure.Create(curves with { Curves = [] }, "t", 720));
        AssertDrawn(TorqueSpeedFigure.Create(curves with { Curves = [.. curves.Curves.Select(c => c with { LeastNewtonMetres = [.. c.LeastNewtonMetres.Select(_ => double.NaN)], GreatestNewtonMetres = [.. c.LeastNewtonMetres.Select(_ => double.NaN)] })] }, "t", 720));
        AssertDrawn(TorqueSpeedFigure.Create(curves with { Path = [new NeedPoint(0, 0, 0)] }, "t", 720));
    }

    [Fact]
    public void A_trade_off_without_a_point_is_refused_and_one_of_a_single_point_is_drawn()
    {
        FrontPicture picture = SampleFronts.Three();
        Assert.Contains("nothing to draw", Assert.Throws<ArgumentException>(() => FrontFigure.Create(picture with { Points = [], Chosen = null })).Message, StringComparison.Ordinal);
        AssertDrawn(FrontFigure.Create(picture with { Points = [picture.Points[0]], Chosen = null }));
        AssertDrawn(FrontFigure.Create(picture with { Points = [picture.Points[0] with { SettleSeconds = double.NaN, Celsius = double.PositiveInfinity }], Chosen = null }));
    }

    [Fact]
    public void A_balance_without_weights_move_or_a_place_above_the_horizon_is_drawn_and_one_without_places_is_refused()
    {
        BalancePicture picture = SampleBalances.Both();
        AssertDrawn(BalanceFigure.Create(picture with { Weights = null, Advised = null, BarMetres = 0.0, GreatestMetres = null, Move = [], Parts = [] }));
        AssertDrawn(BalanceFigure.Create(picture with { Axes = [.. picture.Axes.Select(axis => axis with { NewtonMetres = [.. axis.NewtonMetres.Select(_ => double.NaN)], HiddenNewtonMetres = double.NaN, Worst = null })] }));
        AssertDrawn(BalanceFigure.Create(picture with { Axes = [.. picture.Axes.Select(axis => axis with { NewtonMetres = [.. axis.NewtonMetres.Select(_ => 0.0)] })] }));
        Assert.Contains("one place at least", Assert.Throws<ArgumentException>(() => BalanceFigure.Create(picture with { HourAngles = [] })).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => BalanceFigure.Create(picture with { Axes = [picture.Axes[0] with { NewtonMetres = [1.0] }] }));
    }

    [Fact]
    public void What_OxyPlot_would_paint_as_an_error_is_thrown()
    {
        PlotModel model = Panel.NewModel(new PlotFrame(new Span(0, 1), new Span(0, 1), 500, 100), "y, m", "x, s");
        model.Series.Add(new LineSeries { YAxisKey = "no such axis" });
        using InterRenderContext context = new();
        InvalidOperationException failure = Assert.Throws<InvalidOperationException>(() => Panel.Render(context, model, new OxyRect(0, 0, 600, 200)));
        Assert.NotNull(failure.InnerException);
    }

    [Theory]
    [InlineData(3.0, "arcsec")]
    [InlineData(599.0, "arcsec")]
    [InlineData(601.0, "arcmin")]
    [InlineData(18_001.0, "deg")]
    public void The_unit_of_an_error_follows_its_range(double arcSeconds, string unit) =>
        Assert.Equal(unit, AngleUnit.For(arcSeconds / AngleUnit.ArcSeconds.PerRadian).Name);

    [Theory]
    [InlineData(0.30000000000000004, "0.3")]
    [InlineData(-12.5, "\u221212.5")]
    [InlineData(1e-17, "0")]
    [InlineData(0.004, "0.004")]
    public void Tick_labels_carry_no_noise(double value, string label) => Assert.Equal(label, Panel.Label(value));

    private static void AssertDrawn(IFigure figure)
    {
        Assert.NotEmpty(Figures.Png(figure));
        Assert.NotEmpty(Figures.Svg(figure));
    }
}
