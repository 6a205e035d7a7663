using System.Globalization;
using System.Text;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>Torque ripple in the audible band, microstepping against full-stepping.</summary>
internal static class RippleTable
{
    private const double FromSeconds = 10.0;

    /// <summary>Scenario and settings of one pair of runs, and the changeover of its full-stepped run.</summary>
    public static IReadOnlyList<(string Words, string Changeover, string[] Settings)> Cases { get; } =
    [
        ("as shipped, 3 deg/s", "20 rad/s", []),
        ("the same without detent torque", "20 rad/s", ["polar.motor.detent_torque=0 N*m"]),
        ("130 N m of imbalance, 1.5 deg/s", "7 rad/s", [.. CommonPracticeTests.Heavy, "polar.load.imbalance=-130 N*m"]),
    ];

    public static double Ripple(string changeover, string[] settings)
    {
        (AxisResult result, StepRows steps) = Shipped.PolarSteps("nominal-opposing", explain: false, [.. settings, $"polar.drive.changeover={changeover}"]);
        Assert.Null(result.Outcome.Loss);
        return AudibleRipple.RootMeanSquare(steps, result.Step.StepSeconds, FromSeconds);
    }

    private static string Ratio(double ratio) => ratio > 100.0 ? "over 100" : ratio.ToString("0.0", CultureInfo.InvariantCulture);

    public static string Markdown()
    {
        var text = new StringBuilder();
        text.Append("| nominal-opposing | microstepping, mN m rms | full-stepping, mN m rms | ratio |\n|---|---|---|---|\n");
        foreach ((string words, string changeover, string[] settings) in Cases)
        {
            double micro = 1000.0 * Ripple("never", settings), full = 1000.0 * Ripple(changeover, settings);
            text.Append(CultureInfo.InvariantCulture, $"| {words} | {micro:0.0} | {full:0.0} | {Ratio(full / micro)} |\n");
        }

        return text.ToString();
    }
}
