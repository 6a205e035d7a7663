using AxisSim.Core.Batches;
using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Stepping;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Tests.Unit.Core.Batches;

/// <summary>Lanes with plans of their own get the commands that each would get alone, to the last bit.</summary>
public sealed class OwnPlanTests
{
    private const int Steps = MoveRun.BlockSteps;
    private static readonly BatchWidth[] Widths = [BatchWidth.One, BatchWidth.Two, BatchWidth.Four, BatchWidth.Eight];

    [Fact]
    public void Their_ends_are_those_of_single_runs_at_every_width_in_any_company()
    {
        List<BatchCase> cases = OwnPlanCases.Of(44);
        BatchResult[] expected = [.. cases.Select(BatchTests.Single)];
        Assert.Contains(expected, r => r.End == BatchEnd.Stalls);
        Assert.Contains(expected, r => r.End == BatchEnd.Arrives);
        foreach (BatchWidth width in Widths)
        {
            Assert.Equal(expected, BatchStudy.Run(cases, new BatchOptions { Width = width, Threads = 2 }));
        }

        int[] some = [.. Enumerable.Range(0, cases.Count).Where(i => i % 3 == 1).Reverse()];
        Assert.Equal([.. some.Select(i => expected[i])], BatchStudy.Run([.. some.Select(i => cases[i])], new BatchOptions { Threads = 1 }));
    }

    /// <summary>The temperature is the sum of all currents of the slew, so it tells a difference in the last bit of any command.</summary>
    [Fact]
    public void Their_settling_and_heat_are_the_same_at_every_width_in_any_company()
    {
        List<BatchCase> cases = OwnPlanCases.Of(44);
        var options = new BatchOptions { Depth = BatchDepth.Settling, Threads = 1 };
        BatchResult[] expected = BatchStudy.Run(cases, options with { Width = BatchWidth.One });
        Assert.Contains(expected, r => double.IsFinite(r.ContinuousCelsius) && r.ContinuousCelsius > 30.0);
        foreach (BatchWidth width in Widths)
        {
            Assert.Equal(expected, BatchStudy.Run(cases, options with { Width = width, Threads = 2 }));
        }

        for (int i = 0; i < cases.Count; i += 7)
        {
            Assert.Equal(expected[i], Assert.Single(BatchStudy.Run([cases[i]], options)));
        }
    }

    [Fact]
    public void Commands_of_a_quiet_block_are_those_given_step_by_step()
    {
        long microstepping = 0, fullStepping = 0, split = 0, probed = 0;
        foreach (BatchCase item in OwnPlanCases.Of(20))
        {
            var axis = new LaneAxis(item.Setup, item.Axis, new MovePlan(item.Setup), StepChoice.DefaultSeconds);
            LaneCommands commands = axis.Commands();
            double step = axis.Choice.StepSeconds;
            var given = new LaneCommand[Steps];
            var kinds = new LaneStepKind[Steps];
            var quiet = new LaneCommand[Steps];
            var quietKinds = new LaneStepKind[Steps];
            var moments = new LaneMicrostep[Steps + 1];
            double[] probes = new double[Steps];
            while (commands.Index * step < axis.Plan.EndSeconds)
            {
                long first = commands.Index;
                bool isQuiet = (first + Steps) * step < commands.PieceEndSeconds && commands.EventSeconds >= ((first + Steps - 1) * step) + step;
                LanePlan plan = commands.Plan(axis.Parameters);
                commands.Fill(given, kinds);
                if (!isQuiet)
                {
                    continue;
                }

                for (int k = 0; k < Steps; k++)
                {
                    probes[k] = new SyncProbe(1.0, double.PositiveInfinity).Mean((first + k) * step, step);
                }

                double end = LaneDrive.Fill(ref plan, (MicrostepRow[][])[commands.Microsteps], new LaneTimes(first, step, probes), ref moments[0], ref quiet[0], quietKinds);
                Assert.Equal(commands.PlanFullSteps, end);
                for (int k = 0; k < Steps; k++)
                {
                    LaneLevels levels = axis.Parameters.Levels;
                    double level = levels.Of(kinds[k].FirstLevel);
                    Assert.Equal((level * given[k].FirstA, level * given[k].FirstB), (quiet[k].FirstA, quiet[k].FirstB));
                    Assert.Equal((given[k].PlanRate, given[k].Probe), (quiet[k].PlanRate, quiet[k].Probe));
                    Assert.Equal(kinds[k].Split, quietKinds[k].Split);
                    Assert.True(!kinds[k].Pushed || quietKinds[k].Pushed);
                    probed += given[k].Probe != 0.0 ? 1 : 0;
                    if (kinds[k].Split)
                    {
                        split++;
                        Assert.Equal((given[k].Split, level * given[k].SecondA, level * given[k].SecondB), (quiet[k].Split, quiet[k].SecondA, quiet[k].SecondB));
                    }
                }

                (microstepping, fullStepping) = commands.FullStepping ? (microstepping, fullStepping + 1) : (microstepping + 1, fullStepping);
            }
        }

        Assert.True(microstepping > 1000 && fullStepping > 1000 && split > 1000 && probed > 1000, $"{microstepping} {fullStepping} {split} {probed}");
    }

    /// <summary>A vector alone waits for itself: few cases stay together on one thread, many are spread; what few share is not worth a team.</summary>
    [Fact]
    public void Few_cases_are_one_team_and_many_keep_all_threads_busy()
    {
        Assert.Equal([20], Teams(20, shared: false));
        Assert.Equal([24, 24], Teams(48, shared: false));
        Assert.Equal(9, Teams(480, shared: false).Length);
        Assert.Equal([12], Teams(12, shared: true));
        Assert.Equal([24], Teams(24, shared: true));
    }

    private static int[] Teams(int count, bool shared)
    {
        BatchCase one = OwnPlanCases.Of(1)[0];
        var cases = Enumerable.Range(0, count).Select(i => new LaneCase(i, shared ? one : Faster(one, i), new BatchOptions()));
        List<TeamPlan> teams = TeamPlan.Of(cases, 8, 2);
        Assert.All(teams, team => Assert.Equal(shared && team.Cases.Count >= 16, team.Shared));
        return [.. teams.Select(team => team.Cases.Count)];
    }

    private static BatchCase Faster(BatchCase one, int i) => one with
    {
        Setup = one.Setup with { Polar = one.Setup.Polar! with { Motion = one.Setup.Polar.Motion with { SlewRateRadiansPerSecond = 0.02 + (1e-5 * i) } } },
    };
}
