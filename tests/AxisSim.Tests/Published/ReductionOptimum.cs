using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Reductions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Published;

/// <summary>The reduction of greatest acceleration, found by search, against both closed forms.</summary>
public sealed class ReductionOptimum
{
    /// <summary>A search for a flat maximum by values alone cannot come nearer than the root of the last bit, 1.5e-8.</summary>
    private const double SearchTolerance = 1e-6;

    /// <summary>The need is taken 1 ns after the start, where viscous friction has hardly begun.</summary>
    private const double NeedTolerance = 1e-6;

    [Fact]
    public void Without_load_torque_and_loss_it_is_the_root_of_the_ratio_of_inertias()
    {
        // Petersen, Trans. ASME 76 (1954) 493 (read: the abstract): sqrt(JL/JM); 4 and 1e-4 kg m2 give 200 (derived).
        ReductionMatch match = Match(4.0, 1e-4, load: 0.0, efficiency: 1.0);
        Assert.Equal(200.0, match.TextbookRatio, 1e-10);
        Assert.Equal(1.0, match.InertiaRatio(200.0), 1e-12);
        Assert.Equal(1.0, Search(match) / 200.0, SearchTolerance);
    }

    [Theory]
    [InlineData(1.76, 0.403, 0.113)]
    [InlineData(8.18, 0.311, 0.113)]
    [InlineData(0.65, 0.45, 0.54)]
    public void With_load_torque_and_loss_it_is_the_closed_form(double load, double efficiency, double torque)
    {
        // TL/Tm + sqrt((TL/Tm)^2 + JL/JM) (from memory; derived by setting the slope of a(n) to zero), with e Tm, e Jm and J + e Jw for Tm, Jm and JL.
        ReductionMatch match = Match(6.91, 3.8e-6, load, efficiency) with { MotorTorqueNewtonMetres = torque, WormShaftInertiaAtAxisKilogramSquareMetres = 0.249 };
        double ratio = load / (efficiency * torque);
        double byHand = ratio + Math.Sqrt((ratio * ratio) + ((6.91 + (efficiency * 0.249)) / (efficiency * 3.8e-6)));
        Assert.Equal(1.0, match.OptimumRatio / byHand, 1e-12);
        Assert.Equal(1.0, Search(match) / byHand, SearchTolerance);
    }

    [Fact]
    public void Every_shipped_scenario_agrees_with_the_search()
    {
        foreach (string file in Directory.GetFiles(Repository.PathOf("scenarios"), "*.toml"))
        {
            MountSetup setup = ScenarioReader.ReadFile(file, []).Scenario!.Setup;
            ReductionMatch match = ReductionMatch.Of(setup, MountAxis.Polar, 0.3);
            Assert.Equal(1.0, Search(match) / match.OptimumRatio, SearchTolerance);
            Assert.True(match.OptimumRatio > match.TextbookRatio, "loss and load torque both ask for more reduction");
        }
    }

    [Theory]
    [InlineData(72.0)]
    [InlineData(216.0)]
    [InlineData(2000.0)]
    public void The_acceleration_asks_the_motor_for_just_its_torque(double total)
    {
        // The need of a plan is another piece of the program: train by train, with the losses in the direction of motion.
        string[] settings = ["polar.load.imbalance=0 N*m", "polar.stages.belt.inertia=90 g*cm^2", "polar.worm.inertia=30 g*cm^2", "polar.stages.belt.efficiency=0.97"];
        MountSetup setup = ScenarioReader.ReadFile(Repository.PathOf("scenarios", "nominal.toml"), settings).Scenario!.Setup;
        ReductionMatch match = ReductionMatch.Of(setup, MountAxis.Polar, 0.3);
        MountSetup changed = setup.WithReduction(MountAxis.Polar, total);
        AxisModel model = changed.Polar!;
        changed = changed.With(MountAxis.Polar, model with { Motion = model.Motion with { Ramp = Ramp.OfAcceleration(match.Acceleration(total)) } });
        changed = changed with { Move = changed.Move with { FollowUp = FollowUp.Rest } };
        double torque = Math.Abs(new ShaftNeed(changed, MountAxis.Polar, new MovePlan(changed)).At(1e-9).Torque);
        Assert.Equal(1.0, torque / match.MotorTorqueNewtonMetres, NeedTolerance);
    }

    private static ReductionMatch Match(double axis, double motor, double load, double efficiency) => new()
    {
        AxisInertiaKilogramSquareMetres = axis, WormShaftInertiaAtAxisKilogramSquareMetres = 0.0, MotorInertiaKilogramSquareMetres = motor, DrivingEfficiency = efficiency,
        MotorTorqueNewtonMetres = 1.0, LoadTorqueNewtonMetres = load,
    };

    /// <summary>Golden-section search on the logarithm of the reduction.</summary>
    private static double Search(ReductionMatch match)
    {
        double share = (Math.Sqrt(5.0) - 1.0) / 2.0, low = 0.0, high = Math.Log(1e6);
        double At(double log) => match.Acceleration(Math.Exp(log));
        for (int i = 0; i < 60; i++)
        {
            double a = high - (share * (high - low)), b = low + (share * (high - low));
            (low, high) = At(a) > At(b) ? (low, b) : (a, high);
        }

        return Math.Exp(0.5 * (low + high));
    }
}
