using AxisSim.Core.Motors;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Curves;

/// <summary>The speeds at which small swings of the rotor grow, in sentences.</summary>
internal static class SwingText
{
    // So near half the rate of full steps, or one and a half of it, the steps themselves drive the swing.
    private const double Near = 0.01;

    /// <summary>Writes a paragraph for each mode that the drive uses, of the speeds at which it does.</summary>
    public static void Write(Page page, CurveReport report)
    {
        if (report.MicrostepSwings is { } micro)
        {
            page.Text(Of(report, "Microstepping", micro));
        }

        if (report.FullStepSwings is { } full)
        {
            page.Text(Of(report, "Full-stepping", full));
        }

        if (report.TrainStiffnessShare > SwingStudy.SoftShare)
        {
            page.Text($"At this low reduction the load swings with the rotor (the train has {Units.Percent(report.TrainStiffnessShare)} of the stiffness of the motor's field), and these speeds of growing swings are not to be relied on.");
        }
    }

    private static string Of(CurveReport report, string mode, IReadOnlyList<SwingBand> bands)
    {
        if (bands.Count == 0)
        {
            return $"{mode}, small swings of the rotor die out at every speed at which the drive does so.";
        }

        return $"{mode}, small swings of the rotor grow {Say.List([.. bands.Select(band => $"{Where(report, band)} ({How(report, band)})")])}. The simulated torque tells whether it keeps step there; it runs rough in any case.";
    }

    private static string Where(CurveReport report, SwingBand band)
    {
        string Motor(double speed) => Say.Number(Units.Rpm(speed));
        string Axis(double speed) => Say.Number(Units.Degrees(speed / report.TotalReduction));
        string from = Motor(band.FromRadiansPerSecond), to = Motor(band.ToRadiansPerSecond);
        string on = band.ToRadiansPerSecond >= report.Curves.SpeedsRadiansPerSecond[^1] ? " and on" : "";
        return from == to
            ? $"about {from} rpm, {Axis(band.FromRadiansPerSecond)} deg/s at the axis"
            : $"from {from} to {to} rpm{on}, {Axis(band.FromRadiansPerSecond)} to {Axis(band.ToRadiansPerSecond)} deg/s at the axis";
    }

    private static string How(CurveReport report, SwingBand band)
    {
        if (band.Worst is not { } swing)
        {
            return "with no running that repeats from step to step";
        }

        double steps = band.WorstRadiansPerSecond / report.FullStepRadians, share = swing.FrequencyHertz / steps;
        bool driven = Math.Abs(share - 0.5) < Near || Math.Abs(share - 1.5) < Near;
        return $"{Say.With(swing.FrequencyHertz, "Hz")}{(driven ? ", driven by the steps" : "")}";
    }
}
