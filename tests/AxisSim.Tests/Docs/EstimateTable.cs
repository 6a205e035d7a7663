using System.Globalization;
using System.Text;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>A paper estimate of the polar axis at its hardest moment, from two or three digits.</summary>
/// <param name="Scenario">Scenario.</param>
/// <param name="Accelerate">J a, N m at the axis.</param>
/// <param name="Lift">Imbalance against the motion, with wind, N m.</param>
/// <param name="Friction">Bearings and seals, N m.</param>
/// <param name="Gain">Total reduction times driving efficiency of the train.</param>
/// <param name="PullOut">Km I, less the regulator's lag where it counts, less the motor's own friction, mN m.</param>
internal sealed record Estimate(string Scenario, double Accelerate, double Lift, double Friction, double Gain, double PullOut)
{
    public double Axis => Accelerate + Lift + Friction;

    public double ShaftMillinewtonMetres => 1000.0 * Axis / Gain;
}

/// <summary>Paper estimates beside the program's figures.</summary>
internal static class EstimateTable
{
    /// <summary>Each is worked in docs/paper-estimates.md, in the section of its scenario.</summary>
    public static IReadOnlyList<Estimate> Estimates { get; } =
    [
        new("heavy-reflector", 6.9 * 0.0465, 0.57, 1.2, 216 * 0.416 * 0.97, 161),
        new("heavy-reflector-stalls", 7.5 * 0.218, 6.36, 1.8, 216 * 0.321 * 0.97, 161),
        new("heavy-reflector-rescued", 0, 2.56, 1.8, 216 * 0.321 * 0.97, 161),
        new("light-refractor", 0.51 * 0.0175, 0.12 + 0.11, 0.5, 720 * 0.419 * 0.97, 770),
        new("nominal", 6 * 0.0262, 0, 0.8, 720 * 0.45, 278),
        new("nominal-opposing", 0, 2.57, 0.8, 720 * 0.45, 332),
        new("two-stage-newtonian", 2.7 * 0.0349, 0.27, 0.3, 810 * 0.419 * 0.97 * 0.96, 228),
    ];

    private const int Looks = 4000;

    private static readonly Lazy<IReadOnlyList<AxisResult>> s_results = new(() => [.. Estimates.Select(estimate => Shipped.Polar(estimate.Scenario, explain: true))]);

    public static IReadOnlyList<AxisResult> Results => s_results.Value;

    /// <summary>The hardest moment of the plan, taken as steady: without swings.</summary>
    public static NeedPoint Hardest(AxisResult result)
    {
        MountSetup setup = Shipped.Read(Estimates[Results.Index().First(one => ReferenceEquals(one.Item, result)).Index].Scenario).Setup;
        var plan = new MovePlan(setup);
        var need = new ShaftNeed(setup, MountAxis.Polar, plan);
        return Enumerable.Range(0, Looks + 1)
            .Select(i => plan.SlewSeconds * i / Looks)
            .Select(time => (Time: time, Need: need.At(time)))
            .Select(at => new NeedPoint(at.Time, Math.Abs(at.Need.Speed), at.Need.Torque))
            .MaxBy(point => Math.Abs(point.TorqueNewtonMetres))!;
    }

    /// <summary>The greatest need with the swings of axis and payload, N m.</summary>
    public static double WithSwings(AxisResult result) => result.Curves.Path.Max(point => Math.Abs(point.TorqueNewtonMetres));

    public static double ClosedFormNewtonMetres(string scenario, NeedPoint point)
    {
        AxisModel model = Shipped.Read(scenario).Setup.Axis(MountAxis.Polar);
        return PullOutLaw.OnDrive(model.Motor, model.Drive, point.SpeedRadiansPerSecond > model.Drive.ChangeoverRadiansPerSecond, model.Drive.SupplyVolts, point.SpeedRadiansPerSecond);
    }

    public static string Markdown()
    {
        var text = new StringBuilder();
        text.Append("| scenario, polar axis | paper: axis torque, N m | reduction x efficiency | paper: at the shaft, mN m | program, steady, mN m | program, with swings, mN m | pull-out on paper, mN m | program's closed form, mN m | least margin, simulated | verdict |\n");
        text.Append("|---|---|---|---|---|---|---|---|---|---|\n");
        foreach ((Estimate paper, AxisResult result) in Estimates.Zip(Results))
        {
            NeedPoint hardest = Hardest(result);
            text.Append(CultureInfo.InvariantCulture, $"| {paper.Scenario} | {paper.Accelerate:0.00} + {paper.Lift:0.00} + {paper.Friction:0.0} = {paper.Axis:0.00} | {paper.Gain:0.0} | {paper.ShaftMillinewtonMetres:0.0} ")
                .Append(CultureInfo.InvariantCulture, $"| {1000.0 * Math.Abs(hardest.TorqueNewtonMetres):0.0} | {1000.0 * WithSwings(result):0.0} | {paper.PullOut:0} | {1000.0 * ClosedFormNewtonMetres(paper.Scenario, hardest):0} | {100.0 * result.Outcome.Margin.Value:0.0} % | {Words(result.Outcome)} |\n");
        }

        return text.ToString();
    }

    public static string Words(AxisOutcome outcome) => outcome switch
    {
        { Verdict: MoveEnd.Stalls, Loss: { } loss } => string.Create(CultureInfo.InvariantCulture, $"stalls at {loss.TimeSeconds:0.000} s"),
        { Verdict: MoveEnd.Arrives, LoadFactor: { AtLeast: true } factor } => string.Create(CultureInfo.InvariantCulture, $"arrives, load factor at least {factor.Value:0}"),
        { Verdict: MoveEnd.Arrives, LoadFactor: { } factor } => string.Create(CultureInfo.InvariantCulture, $"arrives, load factor {factor.Value:0.00}"),
        _ => outcome.Verdict.ToString(),
    };
}
