using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>The paper estimates of the shipped scenarios against the program.</summary>
[Trait("speed", "slow")]
public sealed class EstimateTests
{
    /// <summary>Two or three digits on paper, and the rotor's own inertia left out.</summary>
    private const double PaperTolerance = 0.05;

    [Fact]
    public void Torque_at_the_shaft_and_pull_out_are_as_on_paper()
    {
        foreach ((Estimate paper, AxisResult result) in EstimateTable.Estimates.Zip(EstimateTable.Results))
        {
            NeedPoint hardest = EstimateTable.Hardest(result);
            double need = 1000.0 * Math.Abs(hardest.TorqueNewtonMetres);
            double pullOut = 1000.0 * EstimateTable.ClosedFormNewtonMetres(paper.Scenario, hardest);
            Assert.True(Math.Abs((need / paper.ShaftMillinewtonMetres) - 1.0) < PaperTolerance, $"{paper.Scenario}: {paper.ShaftMillinewtonMetres} mN m on paper, {need} mN m");
            Assert.True(Math.Abs((pullOut / paper.PullOut) - 1.0) < PaperTolerance, $"{paper.Scenario}: {paper.PullOut} mN m on paper, {pullOut} mN m");
        }
    }

    [Fact]
    public void The_first_swing_of_the_stalling_scenario_is_more_than_its_motor_has_and_less_than_undamped()
    {
        // Breaking loose: the mesh winds from 6.36 to 6.36 + 1.80 N m, 1.80/4e4 = 45 urad, while the plan runs on at 0.218 rad/s2 from rest:
        // sqrt(2 x 45e-6 x 0.218) = 4.43 mrad/s. On a rigid load of 7.5 kg m2 and 4e4 N m/rad: 73 rad/s, so the swing about 9.80 N m is
        // sqrt((J a)^2 + (k v / w)^2) = sqrt(1.64^2 + 2.43^2) = 2.93 N m without damping: 12.7 N m at its peak.
        const double Undamped = 12.7;
        // Pull-out 161 mN m by formula, times 67.3 from shaft to axis.
        const double MotorHas = 0.161 * 67.3;
        // Half a period of the rigid load, 43 ms, after breaking loose at 20 ms, and a little for the bending tube.
        const double FirstSwingSeconds = 0.08;
        (AxisResult strong, StepRows steps) = Shipped.PolarSteps("heavy-reflector-stalls", explain: false, "polar.motor.holding_torque=0.52 N*m");
        Assert.Null(strong.Outcome.Loss);
        Assert.InRange(RampTable.Peak(steps, FirstSwingSeconds), MotorHas, Undamped);
    }
}
