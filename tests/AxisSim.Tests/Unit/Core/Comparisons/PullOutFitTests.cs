using AxisSim.Core.Drives;
using AxisSim.Core.Comparisons;
using AxisSim.Core.Motors;

namespace AxisSim.Tests.Unit.Core.Comparisons;

/// <summary>Measured curves that are made from the law are found again; noise and too few points are dealt with.</summary>
public sealed class PullOutFitTests
{
    /// <summary>Without noise the least squares are zero at the truth: what is left is the end of the iteration.</summary>
    private const double Exact = 1e-3;

    /// <summary>Noise of 2 % on twelve points leaves some per cent on what decides where the curve falls.</summary>
    private const double Noisy = 0.06;

    private static readonly StepperMotor Motor = SampleMotors.Of("17 long, 1.8 deg").Motor;
    private static readonly double[] Speeds = [5, 20, 40, 60, 80, 100, 120, 150, 180, 220, 260, 300];

    public static TheoryData<double, double> Truths => new() { { 1.0, 1.0 }, { 0.8, 1.0 }, { 0.9, 1.6 }, { 1.2, 0.7 }, { 0.7, 2.2 } };

    [Theory]
    [MemberData(nameof(Truths))]
    public void A_curve_made_by_the_law_is_found_again(double torque, double inductance)
    {
        MeasuredFit fit = PullOutFit.Of("x", Motor, Made(torque, inductance, 0.0, [24.0], Speeds));
        Assert.Equal(FitKind.TorqueAndInductance, fit.Kind);
        Assert.Equal(torque, fit.TorqueScale, Exact);
        Assert.Equal(inductance, fit.InductanceScale, Exact);
        Assert.False(fit.AtBound);
        Assert.True(fit.RSquared > 0.99999, $"R2 {fit.RSquared}");
        Assert.Equal(Motor.HoldingTorqueNewtonMetres * fit.TorqueScale, fit.Fitted.HoldingTorqueNewtonMetres);
        Assert.Equal(Motor.InductanceHenries * fit.InductanceScale, fit.Fitted.InductanceHenries);
    }

    [Fact]
    public void A_loss_of_voltage_is_told_from_inductance_by_two_supplies()
    {
        MeasuredFit fit = PullOutFit.Of("x", Motor, Made(0.9, 1.3, 2.5, [12.0, 24.0], Speeds));
        Assert.Equal(FitKind.TorqueInductanceAndLoss, fit.Kind);
        Assert.Equal(0.9, fit.TorqueScale, Exact);
        Assert.Equal(1.3, fit.InductanceScale, 5.0 * Exact);
        Assert.Equal(2.5, fit.VoltageLossVolts, 10.0 * Exact);
    }

    [Fact]
    public void Noise_moves_the_fit_by_some_per_cent_and_no_loss_is_read_into_it()
    {
        // Seeded, even noise of +-2 % of the greatest torque.
        var random = new Random(5);
        MeasuredPoint[] points = [.. Made(0.85, 1.4, 0.0, [24.0], Speeds)];
        double most = points.Max(point => point.TorqueNewtonMetres);
        MeasuredFit fit = PullOutFit.Of("x", Motor, [.. points.Select(point => point with { TorqueNewtonMetres = point.TorqueNewtonMetres + (0.02 * most * ((2.0 * random.NextDouble()) - 1.0)) })]);
        Assert.Equal(FitKind.TorqueAndInductance, fit.Kind);
        Assert.InRange(fit.TorqueScale, 0.85 * (1.0 - Noisy), 0.85 * (1.0 + Noisy));
        Assert.InRange(fit.InductanceScale, 1.4 * (1.0 - Noisy), 1.4 * (1.0 + Noisy));
        Assert.InRange(fit.RmsNewtonMetres, 0.002 * most, 0.02 * most);
        Assert.True(fit.RSquared > 0.98, $"R2 {fit.RSquared}");
    }

    [Fact]
    public void The_fit_is_least_no_neighbour_is_better()
    {
        var random = new Random(11);
        MeasuredPoint[] points = [.. Made(1.1, 1.2, 0.0, [24.0], Speeds).Select(point => point with { TorqueNewtonMetres = point.TorqueNewtonMetres * (0.95 + (0.1 * random.NextDouble())) })];
        MeasuredFit fit = PullOutFit.Of("x", Motor, points);
        foreach ((double torque, double inductance) in new[] { (1.01, 1.0), (0.99, 1.0), (1.0, 1.01), (1.0, 0.99) })
        {
            StepperMotor near = PullOutFit.Scaled(fit.Fitted, torque, inductance);
            double rms = Math.Sqrt(points.Average(point => Math.Pow(PullOutFit.Torque(near, point, fit.VoltageLossVolts) - point.TorqueNewtonMetres, 2.0)));
            Assert.True(rms > fit.RmsNewtonMetres, $"{torque}, {inductance}: {rms} is no more than {fit.RmsNewtonMetres}");
        }
    }

    [Theory]
    [InlineData(0.8, 0.8)]
    [InlineData(1.3, 1.0)]
    public void Three_speeds_only_lower_the_torque(double measured, double expected)
    {
        MeasuredFit fit = PullOutFit.Of("x", Motor, Made(measured, 1.0, 0.0, [24.0], [10, 40, 80]));
        Assert.Equal(FitKind.Cap, fit.Kind);
        Assert.Equal(expected, fit.TorqueScale, Exact);
        Assert.Equal(1.0, fit.InductanceScale);
        Assert.All(fit.Points.Zip(fit.FittedNewtonMetres), pair => Assert.True(pair.Second <= pair.First.TorqueNewtonMetres + 1e-12));
        Assert.True(double.IsNaN(fit.RSquared));
    }

    [Fact]
    public void Torque_far_above_the_datasheet_ends_at_the_bound_and_says_so()
    {
        // Newton centimetres taken for newton metres.
        MeasuredFit fit = PullOutFit.Of("x", Motor, [.. Made(1.0, 1.0, 0.0, [24.0], Speeds).Select(point => point with { TorqueNewtonMetres = 100.0 * point.TorqueNewtonMetres })]);
        Assert.True(fit.AtBound);
        Assert.True(fit.RSquared < 0.9);
    }

    [Fact]
    public void Full_steps_and_the_current_of_the_measurement_count()
    {
        MeasuredPoint point = new(10.0, 0.1, 24.0, 0.85, true);
        double lag = PullOutLaw.RegulatorShare(Motor.RotorTeeth, 10.0, ChopperDrive.UsualRegulatorSeconds);
        double expected = (Motor.TorqueConstantNewtonMetresPerAmpere * 0.85 * PullOutLaw.SquareWaveFundamental * lag) - Motor.CoulombTorqueNewtonMetres - (Motor.ViscousNewtonMetreSecondsPerRadian * 10.0);
        Assert.Equal(expected, PullOutFit.Torque(Motor, point, 0.0), 1e-9);
    }

    private static IReadOnlyList<MeasuredPoint> Made(double torque, double inductance, double loss, double[] volts, double[] speeds)
    {
        StepperMotor truth = PullOutFit.Scaled(Motor, torque, inductance);
        return
        [
            .. volts.SelectMany(v => speeds.Select(speed => new MeasuredPoint(speed, 0.0, v, Motor.RatedCurrentAmperes, false))).Select(point => point with { TorqueNewtonMetres = PullOutFit.Torque(truth, point, loss) }),
        ];
    }
}
