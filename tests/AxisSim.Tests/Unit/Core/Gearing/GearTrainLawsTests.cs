using AxisSim.Core.Gearing;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Gearing;

public sealed class GearTrainLawsTests
{
    // Rounding of a handful of operations.
    private const double Rounding = 1e-12;

    private static readonly Gen<(double Lead, double Friction, double Pressure)> Worms =
        Gen.Select(Gen.Double[0.01, 0.8], Gen.Double[0.0, 0.3], Gen.Double[0.2, 0.5]);

    [Fact]
    public void Worm_without_friction_loses_nothing() => Worms.Sample(w =>
    {
        Assert.Equal(1.0, WormLaw.DrivingEfficiency(w.Lead, 0.0, w.Pressure), Rounding);
        Assert.Equal(1.0, WormLaw.BackDrivingEfficiency(w.Lead, 0.0, w.Pressure), Rounding);
    });

    [Fact]
    public void Worm_locks_itself_just_when_its_back_driving_efficiency_is_not_positive() => Worms.Sample(w =>
    {
        double back = WormLaw.BackDrivingEfficiency(w.Lead, w.Friction, w.Pressure);
        if (Math.Abs(back) > Rounding)
        {
            Assert.Equal(back < 0.0, WormLaw.IsSelfLocking(w.Lead, w.Friction, w.Pressure));
        }

        double limit = WormLaw.SelfLockingLeadAngle(Math.Max(w.Friction, 0.01), w.Pressure);
        Assert.Equal(0.0, WormLaw.BackDrivingEfficiency(limit, Math.Max(w.Friction, 0.01), w.Pressure), Rounding);
    });

    [Fact]
    public void More_friction_never_helps() => Worms.Sample(w =>
    {
        double more = w.Friction + 0.01;
        Assert.True(WormLaw.DrivingEfficiency(w.Lead, more, w.Pressure) < WormLaw.DrivingEfficiency(w.Lead, w.Friction, w.Pressure));
        Assert.True(WormLaw.BackDrivingEfficiency(w.Lead, more, w.Pressure) < WormLaw.BackDrivingEfficiency(w.Lead, w.Friction, w.Pressure));
    });

    [Fact]
    public void Self_locking_worm_drives_with_at_most_half() => Worms.Sample(w =>
    {
        // e at the limit f = cos pn tan L is (1 - tan2 L)/2 for any pressure angle.
        double friction = Math.Cos(w.Pressure) * Math.Tan(w.Lead);
        double tangent = Math.Tan(w.Lead);
        Assert.Equal((1.0 - (tangent * tangent)) / 2.0, WormLaw.DrivingEfficiency(w.Lead, friction, w.Pressure), Rounding);
    });

    [Fact]
    public void Plain_efficiency_implies_its_back_driving_one()
    {
        WormStage worm = new() { WheelTeeth = 144, GivenDrivingEfficiency = 0.45 };
        Assert.Equal(0.45, worm.DrivingEfficiency, Rounding);
        Assert.Equal(2.0 - (1.0 / 0.45), worm.BackDrivingEfficiency, Rounding);
        Assert.True(worm.SelfLocking);
        Assert.Equal(0.3, (worm with { GivenBackDrivingEfficiency = 0.3 }).BackDrivingEfficiency, Rounding);
        Assert.False((worm with { GivenDrivingEfficiency = 0.6 }).SelfLocking);
    }

    [Fact]
    public void Cold_grease_acts_on_plain_efficiencies_nearly_as_on_geometry()
    {
        // 3 degrees of lead and f = 0.005: losses of about 10 %, so the proportional law holds to their square.
        const double SquareOfLoss = 0.02;
        WormStage geometry = new() { WheelTeeth = 144, LeadAngleRadians = double.DegreesToRadians(3.0), FrictionCoefficient = 0.005 };
        WormStage plain = new()
        {
            WheelTeeth = 144,
            GivenDrivingEfficiency = geometry.DrivingEfficiency,
            GivenBackDrivingEfficiency = geometry.BackDrivingEfficiency,
        };
        Assert.Equal(geometry.DrivingEfficiencyWith(2.0), plain.DrivingEfficiencyWith(2.0), SquareOfLoss);
        Assert.Equal(geometry.BackDrivingEfficiencyWith(2.0), plain.BackDrivingEfficiencyWith(2.0), SquareOfLoss);
        Assert.True(plain.DrivingEfficiencyWith(2.0) < plain.DrivingEfficiency - 0.05);
    }

    [Fact]
    public void Train_multiplies_efficiencies_and_divides_inertias()
    {
        // Stages 5 and 2 before a worm 144: wheel inertias over 25 and 100, the worm's over 100 too; efficiency 0.98 * 0.95 * 0.5.
        GearTrain train = new()
        {
            Stages =
            [
                new() { Name = "belt", DrivenTeeth = 60, DrivingTeeth = 12, Efficiency = 0.98, InertiaKilogramSquareMetres = 5e-5 },
                new() { Name = "spur", DrivenTeeth = 40, DrivingTeeth = 20, Efficiency = 0.95, InertiaKilogramSquareMetres = 1e-5 },
            ],
            Worm = new() { WheelTeeth = 144, GivenDrivingEfficiency = 0.5, GivenBackDrivingEfficiency = 0.2, InertiaKilogramSquareMetres = 2e-5 },
            StiffnessNewtonMetresPerRadian = 2e4,
        };
        Assert.Equal(1440.0, train.TotalRatio, Rounding);
        Assert.Equal(0.98 * 0.95 * 0.5, train.DrivingEfficiency, Rounding);
        Assert.Equal(0.98 * 0.95 * 0.2, train.BackDrivingEfficiency, Rounding);
        Assert.Equal((5e-5 / 25.0) + (1e-5 / 100.0) + (2e-5 / 100.0), train.ReflectedTrainInertia, 1e-18);
        Assert.Equal(6.0 / (1440.0 * 1440.0), train.ReflectedToMotor(6.0), 1e-18);
        Assert.False(train.SelfLocking);
    }

    [Fact]
    public void Periodic_error_slope_is_its_derivative() =>
        Gen.Select(Gen.Double[-3.0, 3.0], Gen.Double[0.0, 6.0], Gen.Double[0.0, 6.0]).Sample((p, f1, f2) =>
        {
            // Central difference over h: error h2/6 (2N)3 A relative to slopes of N A.
            const double H = 1e-6;
            const double Tolerance = 1e-9;
            PeriodicError error = new(4e-5, f1, 1e-5, f2, 2e-5, f1 + f2);
            double slope = (PeriodicErrorLaw.Value(error, 144.0, p + H) - PeriodicErrorLaw.Value(error, 144.0, p - H)) / (2.0 * H);
            Assert.Equal(slope, PeriodicErrorLaw.Slope(error, 144.0, p), Tolerance);
        });

    [Fact]
    public void Matched_ratio_accelerates_fastest() =>
        Gen.Select(Gen.Double[0.5, 20.0], Gen.Double[1e-6, 1e-4], Gen.Double[-5.0, 5.0], Gen.Double[0.1, 2.0]).Sample((load, motor, torque, drive) =>
        {
            double best = InertiaMatch.OptimumRatio(load, motor, torque, drive);
            double top = InertiaMatch.LoadAcceleration(best, load, motor, torque, drive);
            Assert.True(InertiaMatch.LoadAcceleration(best * 1.01, load, motor, torque, drive) < top);
            Assert.True(InertiaMatch.LoadAcceleration(best * 0.99, load, motor, torque, drive) < top);
        });
}
