using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;

namespace AxisSim.Cli.Text.Envelopes;

/// <summary>How the greatest rate compares with what the file asks for, in a sentence.</summary>
internal static class EnvelopeVerdict
{
    /// <summary>Above this share of the greatest rate there is little room (a choice of ours: datasheet friction is good to about 30 %).</summary>
    private const double LittleRoom = 0.8;

    /// <summary>Whether the file asks for a rate that arrives with some room.</summary>
    public static bool Good(EnvelopeReport report) => Reaches(report) && (report.Own.Cap is not null || report.AskedRadiansPerSecond <= LittleRoom * report.Own.RateRadiansPerSecond);

    /// <summary>The verdict.</summary>
    public static string Of(EnvelopeReport report)
    {
        GreatestRate own = report.Own;
        string start = $"{Say.Sentence(report.Axis.Words())}: ", ramp = Units.Time(own.RampSeconds), asked = Rate(report.AskedRadiansPerSecond);
        if (own.Tried == 0)
        {
            return start + $"no rate can be tried with the ramp of {ramp} in the file: {Why(report, own.TopLimit)}.";
        }

        if (double.IsNaN(own.RateRadiansPerSecond))
        {
            return start + $"{(HasMargin(report) ? "NO SAFE RATE" : "NO RATE ARRIVES")}: with the ramp of {ramp} in the file even {Rate(own.FirstFailingRadiansPerSecond)} {Ends(own.Failure)}; the file asks for {asked}.";
        }

        string greatest = Rate(own.RateRadiansPerSecond);
        if (Reaches(report))
        {
            string share = Units.Percent(Math.Min(1.0, report.AskedRadiansPerSecond / own.RateRadiansPerSecond));
            return own.Cap is not { } cap
                ? start + $"{(Good(report) ? "ROOM" : "LITTLE ROOM")}: with the ramp of {ramp} in the file the {Greatest(report)} is {greatest}; the file asks for {asked}, {share} of it."
                : start + $"ROOM: with the ramp of {ramp} in the file every rate tried up to {greatest} arrives, where the search ends: {Why(report, cap)}. The file asks for {asked}.";
        }

        return own.Cap is not { } end
            ? start + $"TOO FAST: with the ramp of {ramp} in the file the {Greatest(report)} is {greatest}; the file asks for {asked}, and {Rate(own.FirstFailingRadiansPerSecond)} {Ends(own.Failure)} already."
            : start + $"NEVER THAT FAST: with the ramp of {ramp} in the file the move does not reach the {asked} asked for: {Why(report, end)}. Every rate tried up to {greatest} arrives.";
    }

    /// <summary>Whether the rates were asked to have load in hand: only then are they called safe.</summary>
    public static bool HasMargin(EnvelopeReport report) => report.LoadFactor > 1.0;

    /// <summary>What the rates are.</summary>
    public static string Greatest(EnvelopeReport report) =>
        HasMargin(report) ? $"greatest safe slew rate (with {Say.Number(report.LoadFactor)} times the load)" : "greatest slew rate that arrives";

    /// <summary>Why the search goes no further, in words that follow a colon.</summary>
    public static string Why(EnvelopeReport report, Limit limit) => limit switch
    {
        Limit.PulseRate => $"the controller cannot pulse faster than {Rate(report.PulseLimitRadiansPerSecond)}",
        Limit.MoveLength => $"the axis turns {Units.Angle(report.DistanceRadians)}, and both ramps together take all of it",
        _ => LimitWords.Why(limit),
    };

    /// <summary>How a failure ends.</summary>
    public static string Ends(MoveEnd? end) => end switch
    {
        MoveEnd.ClutchSlips => "makes the clutch slip",
        MoveEnd.NotWorkable => "is too fast to simulate",
        MoveEnd.Broken => "breaks the simulation down",
        _ => "stalls",
    };

    /// <summary>A rate to the digits of the search.</summary>
    public static string Rate(double radiansPerSecond) => Say.With(Units.Degrees(radiansPerSecond), "deg/s", 4);

    // A rate within one resolution of the end of the search counts as reached.
    private static bool Reaches(EnvelopeReport report)
    {
        double slack = report.Own.Cap is null ? 1e-9 * report.AskedRadiansPerSecond : report.ResolutionRadiansPerSecond;
        return report.Own.RateRadiansPerSecond >= report.AskedRadiansPerSecond - slack;
    }
}
