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
    public void The_first_swing_of_the_stalling_scenario_is_as_on_paper()
    {
        // Breaking loose: the mesh winds from 4.37 to 4.37 + 1.875 N m, 1.875/4e4 = 46.9 urad, while the plan runs on at 0.218 rad/s2 from rest:
        // sqrt(2 x 46.9e-6 x 0.218) = 4.5 mrad/s. On a rigid load of 7.8 kg m2 and 4e4 N m/rad: 71.6 rad/s, so the swing about 7.87 N m is
        // sqrt((J a)^2 + (k v / w)^2) = sqrt(1.70^2 + 2.53^2) = 3.05 N m: 10.9 N m at its peak.
        const double Paper = 10.9;
        // The tube bends (two modes instead of one), the mesh is damped, and the rotor shakes it a little.
        const double Tolerance = 0.05;
        double peak = RampTable.SwingPeak(RampTable.Run(0.4, "trapezoid", explain: false), 0.4);
        Assert.InRange(peak, Paper * (1 - Tolerance), Paper * (1 + Tolerance));
    }
}
