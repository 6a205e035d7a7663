using AxisSim.Core.Comparisons;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;

namespace AxisSim.Cli.Text.Comparisons;

/// <summary>What was taken for granted of every candidate.</summary>
internal static class Assumptions
{
    /// <summary>Writes them.</summary>
    public static void Write(Page page, ComparisonReport report)
    {
        page.Heading("What was assumed of each");
        AxisModel model = report.Mount.Axis(report.Axes[0]);
        string load = Say.Number(1.0 + report.Margin);
        page.Item("-", $"Margin: at the rate told, and at every lower one that was tried, the simulated move still keeps sync and clutch with {load} times the inertia, imbalance and friction of the axis. Settling, heat and power are those of the load as it is.");
        page.Item("-", $"Ramp time {Say.List([.. report.Axes.Select(axis => Units.Time(report.Mount.Axis(axis).Motion.RampInUseSeconds)).Distinct()])} ({(model.Motion.Shape == RampShape.SCurve ? "S-curve" : "trapezoid")}), {Say.Count(model.Drive.MicrostepsPerFullStep)} microsteps{Pulses(model)}, damping and supply resistance as in the file. Rates are whole multiples of {Say.With(Units.Degrees(report.ResolutionRadiansPerSecond), "deg/s")}.");
        page.Item("-", $"Slew current {(report.CurrentShare == 1.0 ? "at" : Units.Percent(report.CurrentShare) + " of")} the rated current (direct current is the peak of the sine); tracking and holding current keep the share of the rated current that they have in the file.");
        page.Item("-", double.IsFinite(model.Drive.ChangeoverRadiansPerSecond)
            ? $"Full-stepping above {Say.Number(model.Drive.ChangeoverRadiansPerSecond * model.Motor.StepsPerRevolution / (2.0 * Math.PI))} full steps a second, as in the file, whatever the motor."
            : "Microstepping at every speed, as in the file.");
        page.Item("-", report.Results.Any(result => result.Candidate.TotalReduction is not null)
            ? $"Reduction: the worm of the file stays; {(model.Train.Stages.Count > 0 ? $"the last stage before it ({model.Train.Stages[^1].Name}) takes the ratio needed, its efficiency, inertia and backlash as they are" : $"a belt with an efficiency of {Units.Percent(SetupEdits.BeltEfficiency)} is put before it")}."
            : "Gears as in the file.");
        page.Item("-", $"Rank: time until on target, then power. Too hot for the insulation class, not settling, or no safe rate puts a motor behind all others. {Simulated(report)}");
    }

    private static string Pulses(AxisModel model) =>
        double.IsFinite(model.Drive.MaximumPulseRateHertz) ? $" and up to {Say.With(model.Drive.MaximumPulseRateHertz / 1000.0, "kHz")}" : "";

    private static string Simulated(ComparisonReport report)
    {
        int left = report.Results.Count(result => result.Fate is CandidateFate.Slower or CandidateFate.Hopeless);
        return left == 0 ? $"All {Say.Many(report.Results.Count, "candidate")} were simulated."
            : $"{Say.Count(report.Results.Count - left)} of {Say.Many(report.Results.Count, "candidate")} were simulated; the others cannot be the best of their motor by the closed form, given {Units.Percent(ComparisonStudy.Allowance - 1.0)} more torque than it has.";
    }
}
