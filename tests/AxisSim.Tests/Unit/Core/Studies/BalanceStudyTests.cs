using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using CsCheck;

namespace AxisSim.Tests.Unit.Core.Studies;

public sealed class BalanceStudyTests
{
    private const double G = StandardGravity.MetresPerSecondSquared;

    // Rounding of torques of some 100 N m.
    private const double Rounding = 1e-11;

    private static readonly PayloadModel HeavyTube = new()
    {
        Bodies =
        [
            new()
            {
                Name = "tube",
                Shape = BodyShape.Tube,
                MassKilograms = 16.0,
                OutMetres = 0.25,
                ForwardMetres = 0.02,
                LengthMetres = 1.1,
                DiameterMetres = 0.36,
                InnerDiameterMetres = 0.35,
            },
            new() { Name = "camera", Shape = BodyShape.Point, MassKilograms = 2.0, OutMetres = 0.25, ForwardMetres = -0.5, SideMetres = 0.05 },
        ],
        Counterweight = new() { MassKilograms = 12.0, DistanceMetres = 0.30, GreatestDistanceMetres = 0.45, BarMassKilograms = 1.0, BarLengthMetres = 0.5 },
    };

    [Fact]
    public void Heavy_tube_by_hand()
    {
        // Mo = 18 * 0.25 - 12 * 0.30 - 1 * 0.25 = 0.65, Mf = 16 * 0.02 - 2 * 0.5 = -0.68, Ms = 0.1 kg m.
        // Weights need 4.5 - 0.25 = 4.25 kg m: 12 kg at 0.354167 m. The payload of 18 kg must go 0.037778 m forward, 5.5556 mm to the other side.
        double latitude = double.DegreesToRadians(54.4);
        BalanceReport report = BalanceStudy.Run(HeavyTube, latitude);
        double across = G * Math.Cos(latitude);
        Assert.Equal(across * 0.65, report.PolarFromCounterweightNewtonMetres, Rounding);
        Assert.Equal(across * Math.Sqrt((0.68 * 0.68) + 0.01), report.PolarFromTubeNewtonMetres, Rounding);
        Assert.Equal(across * Math.Sqrt((0.65 * 0.65) + (0.68 * 0.68) + 0.01), report.Polar.NewtonMetres, Rounding);
        Assert.Equal(G * Math.Sqrt((0.68 * 0.68) + 0.01), report.Declination.NewtonMetres, Rounding);
        Assert.Equal(CounterweightAction.Move, report.Counterweight.Action);
        Assert.Equal(4.25 / 12.0, report.Counterweight.DistanceMetres, Rounding);
        Assert.Equal(0.68 / 18.0, report.Shift.ForwardMetres, Rounding);
        Assert.Equal(-0.1 / 18.0, report.Shift.SideMetres, Rounding);
        Assert.Equal(G * 0.1, report.Shift.RemainderWithoutSideNewtonMetres, Rounding);
        Assert.Equal(0.0, report.RemainingPolarNewtonMetres, Rounding);
        Assert.Equal(0.0, report.RemainingDeclinationNewtonMetres, Rounding);
        // The weights move outwards: 12 (0.354167^2 - 0.30^2) = 0.42521 kg m2 more; the tube's shift changes nothing in its Out distance.
        Assert.True(report.PolarInertiaKilogramSquareMetres.After > report.PolarInertiaKilogramSquareMetres.Before);
    }

    [Fact]
    public void Weights_out_of_reach_need_mass()
    {
        // 8 kg would have to sit at 0.53 m; the bar ends at 0.45 m, where 4.25/0.45 = 9.444 kg are needed; 8 kg leave 4.25 - 3.6 = 0.65 kg m.
        BalanceReport report = BalanceStudy.Run(HeavyTube with { Counterweight = HeavyTube.Counterweight! with { MassKilograms = 8.0 } }, 0.95);
        Assert.Equal(CounterweightAction.AddMass, report.Counterweight.Action);
        Assert.Equal(0.45, report.Counterweight.DistanceMetres);
        Assert.Equal(4.25 / 0.45, report.Counterweight.MassKilograms, Rounding);
        Assert.Equal(0.65 * G * Math.Cos(0.95), report.Counterweight.ReachableRemainderNewtonMetres, Rounding);
        Assert.Equal(0.0, report.RemainingPolarNewtonMetres, Rounding);
    }

    [Fact]
    public void Missing_counterweight_is_asked_for()
    {
        BalanceReport report = BalanceStudy.Run(HeavyTube with { Counterweight = null }, 0.95);
        Assert.Equal(CounterweightAction.Provide, report.Counterweight.Action);
        Assert.Equal(4.5, report.Counterweight.NeededMomentKilogramMetres, Rounding);
        Assert.Equal(4.5 * G * Math.Cos(0.95), report.RemainingPolarNewtonMetres, Rounding);
    }

    [Fact]
    public void Empty_bar_of_unknown_length_needs_a_moment()
    {
        Counterweight empty = new() { MassKilograms = 0.0, DistanceMetres = 0.3 };
        BalanceReport report = BalanceStudy.Run(HeavyTube with { Counterweight = empty }, 0.95);
        Assert.Equal(CounterweightAction.Provide, report.Counterweight.Action);
        Assert.Equal(4.5, report.Counterweight.NeededMomentKilogramMetres, Rounding);
        Assert.Equal(0.3, report.Counterweight.DistanceMetres);
        Assert.True(double.IsFinite(report.RemainingPolarNewtonMetres));
    }

    [Fact]
    public void Bar_heavier_than_the_payload_sheds_its_weights()
    {
        BalanceReport report = BalanceStudy.Run(
            HeavyTube with { Counterweight = HeavyTube.Counterweight! with { BarMassKilograms = 20.0 } }, 0.95);
        Assert.Equal(CounterweightAction.Remove, report.Counterweight.Action);
        Assert.Equal(0.5 * G * Math.Cos(0.95), report.RemainingPolarNewtonMetres, Rounding);
    }

    [Fact]
    public void Balanced_payload_needs_nothing_more()
    {
        BalanceReport again = BalanceStudy.Run(BalanceStudy.Run(HeavyTube, 0.95).Balanced, 0.95);
        Assert.Equal(CounterweightAction.Keep, again.Counterweight.Action);
        Assert.Equal(0.0, again.Shift.ForwardMetres, Rounding);
    }

    [Fact]
    public void No_pose_is_worse_than_the_worst() =>
        Gen.Select(Gen.Double[-1.0, 1.0], Gen.Double[-0.3, 0.3], Gen.Double[-0.3, 0.3], Gen.Double[-1.5, 1.5]).Sample((o, f, s, latitude) =>
        {
            PayloadModel payload = new()
            {
                Bodies = [new() { Name = "body", Shape = BodyShape.Point, MassKilograms = 10.0, OutMetres = o, ForwardMetres = f, SideMetres = s }],
            };
            BalanceReport report = BalanceStudy.Run(payload, latitude, 36);
            MountLoad load = MountLoadBuilder.FromBodies(payload, latitude);
            double polar = report.Grid.Max(g => Math.Abs(g.PolarNewtonMetres));
            double declination = report.Grid.Max(g => Math.Abs(g.DeclinationNewtonMetres));
            Assert.InRange(polar, 0.0, report.Polar.NewtonMetres + Rounding);
            Assert.InRange(declination, 0.0, report.Declination.NewtonMetres + Rounding);
            // The grid misses a peak by at most 5 degrees in each angle: cos(5 deg) each.
            double near = Math.Pow(Math.Cos(double.DegreesToRadians(5.0)), 2.0);
            Assert.True(polar >= (near * report.Polar.NewtonMetres) - Rounding);
            Assert.True(declination >= (near * report.Declination.NewtonMetres) - Rounding);
            Assert.Equal(report.Polar.NewtonMetres, load.GravityTorque(MountAxis.Polar, report.Polar.Pose), Rounding);
            Assert.Equal(report.Declination.NewtonMetres, load.GravityTorque(MountAxis.Declination, report.Declination.Pose), Rounding);
        });
}
