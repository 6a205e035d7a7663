using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Questions;

/// <summary>The search for one greatest rate, on a grid of whole multiples of a resolution.</summary>
internal sealed class RateSearch
{
    /// <summary>Even intervals of the scan.</summary>
    private const int ScanIntervals = 12;

    /// <summary>The lowest places of the scan are left out: such moves take longest and are the last to fail.</summary>
    private const int FirstOfScan = 2;
    private const int LookBackParts = 8;

    /// <summary>A bound that is a whole number of resolutions but for rounding counts as one.</summary>
    private const double Slack = 1e-9;

    private readonly double resolution;
    private readonly double ramp;
    private readonly double top;
    private readonly Limit topLimit;

    /// <param name="resolution">Resolution, rad/s.</param>
    /// <param name="rampSeconds">Ramp time that goes with every rate, s.</param>
    /// <param name="least">Least rate, rad/s.</param>
    /// <param name="cap">Greatest rate, rad/s, and why.</param>
    /// <param name="alsoTry">A rate that is tried besides, rad/s, rounded down to the grid.</param>
    public RateSearch(double resolution, double rampSeconds, double least, (double RateRadiansPerSecond, Limit Limit) cap, double? alsoTry = null)
    {
        (this.resolution, ramp) = (resolution, rampSeconds);
        (top, topLimit) = cap;
        int from = Math.Max(1, (int)Math.Ceiling((least / resolution) - Slack)), to = (int)Math.Floor(Math.Clamp((top / resolution) + Slack, 0.0, 1e9));
        IEnumerable<int> scan = Enumerable.Range(FirstOfScan, ScanIntervals - FirstOfScan + 1).Select(i => from + (int)((long)(to - from) * i / ScanIntervals));
        Line = new EdgeLine(EdgeKind.LastArriving, from, to, alsoTry is { } own && from <= to ? scan.Append(Math.Clamp((int)Math.Floor((own / resolution) + Slack), from, to)) : scan, LookBackParts);
    }

    /// <summary>Questions that a search takes as a rule; for the share done.</summary>
    public static int Usual => ScanIntervals - FirstOfScan + 1 + 17;

    public EdgeLine Line { get; }

    /// <summary>A round number of deg/s at or below half a per cent of a rate, as rad/s: the grid that rates are looked for on where none is asked for.</summary>
    public static double Resolution(double radiansPerSecond)
    {
        const double Degree = Math.PI / 180.0;
        return RoundDigits.OneTwoFive(0.005 * radiansPerSecond / Degree) * Degree;
    }

    /// <summary>The search over the scenario's own ramp, from its start rate to where rates end, the present rate among those tried.</summary>
    public static RateSearch Of(MountSetup setup, MountAxis axis, double? resolution = null)
    {
        AxisMotion motion = setup.Axis(axis).Motion;
        double seconds = motion.RampInUseSeconds;
        return new RateSearch(
            resolution ?? Resolution(motion.SlewRateRadiansPerSecond), seconds, motion.StartRateRadiansPerSecond, RateCap.Of(setup, axis, seconds), motion.SlewRateRadiansPerSecond);
    }

    /// <summary>Rate of a place, rad/s.</summary>
    public double Rate(int place) => place * resolution;

    /// <summary>A setup at the rate of a place, with the ramp time of the search: that is kept at every rate, in a file that gives an acceleration too.</summary>
    public MountSetup At(MountSetup setup, MountAxis axis, int place) => setup.WithRampTime(axis, ramp).WithSlewRate(axis, Rate(place));

    /// <summary>What was found.</summary>
    public GreatestRate Result()
    {
        (int Place, MoveEnd End)[] answers = [.. Line.Answers.Select(pair => (pair.Key, pair.Value))];
        int? bad = Line.Bad;
        int[] above = [.. answers.Where(answer => answer.End == MoveEnd.Arrives && answer.Place > bad).Select(answer => answer.Place)];
        return new GreatestRate
        {
            RampSeconds = ramp,
            RateRadiansPerSecond = Line.Good is { } good ? Rate(good) : double.NaN,
            Cap = bad is null ? topLimit : null,
            TopRadiansPerSecond = top,
            TopLimit = topLimit,
            FirstFailingRadiansPerSecond = bad is { } first ? Rate(first) : double.NaN,
            Failure = bad is { } failing ? Line.Answers[failing] : null,
            LeastTriedRadiansPerSecond = answers.Length > 0 ? Rate(answers[0].Place) : double.NaN,
            FailingBands = [.. Bands(answers)],
            Island = above.Length > 0 ? new RateStretch(Rate(above[0]), Rate(above[^1])) : null,
            Tried = answers.Length,
            Answers = [.. answers.Select(answer => (Rate(answer.Place), answer.End))],
        };
    }

    private IEnumerable<RateStretch> Bands((int Place, MoveEnd End)[] answers)
    {
        int last = Array.FindLastIndex(answers, answer => answer.End == MoveEnd.Arrives);
        for (int i = 0; i < last; i++)
        {
            if (answers[i].End == MoveEnd.Arrives)
            {
                continue;
            }

            int from = i;
            while (answers[i + 1].End != MoveEnd.Arrives)
            {
                i++;
            }

            yield return new RateStretch(Rate(answers[from].Place), Rate(answers[i].Place));
        }
    }
}
