using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Questions;

/// <summary>A stretch of slew rates, as tried.</summary>
/// <param name="FromRadiansPerSecond">The least, rad/s.</param>
/// <param name="ToRadiansPerSecond">The greatest, rad/s.</param>
public sealed record RateStretch(double FromRadiansPerSecond, double ToRadiansPerSecond);

/// <summary>The greatest slew rate that arrives with one ramp.</summary>
public sealed record GreatestRate
{
    /// <summary>Ramp time, s.</summary>
    public required double RampSeconds { get; init; }

    /// <summary>The greatest rate up to which every rate that was tried arrives, rad/s; NaN when the least one that was tried fails.</summary>
    public required double RateRadiansPerSecond { get; init; }

    /// <summary>What the search ended at when no rate fails (pulse rate, length of the move, speed of the motor); null when one fails.</summary>
    public required Limit? Cap { get; init; }

    /// <summary>Greatest rate that the search allows, rad/s.</summary>
    public required double TopRadiansPerSecond { get; init; }

    /// <summary>What sets that rate.</summary>
    public required Limit TopLimit { get; init; }

    /// <summary>The least rate that was tried and fails, rad/s; NaN when all arrive.</summary>
    public double FirstFailingRadiansPerSecond { get; init; } = double.NaN;

    /// <summary>How that one ends; null when all arrive.</summary>
    public MoveEnd? Failure { get; init; }

    /// <summary>The least rate that was tried, rad/s; NaN when none could be.</summary>
    public double LeastTriedRadiansPerSecond { get; init; } = double.NaN;

    /// <summary>Stretches of rates that fail one after the other as tried, with rates that arrive on both sides; ascending. The last failures, above which nothing arrives, are no band.</summary>
    public IReadOnlyList<RateStretch> FailingBands { get; init; } = [];

    /// <summary>Least and greatest rate above the first failure that arrive again; null when none does. They do not count.</summary>
    public RateStretch? Island { get; init; }

    /// <summary>How many rates were tried.</summary>
    public int Tried { get; init; }

    /// <summary>All rates that were tried, rad/s, ascending, with how each ends.</summary>
    public IReadOnlyList<(double RateRadiansPerSecond, MoveEnd End)> Answers { get; init; } = [];

    /// <summary>The stretch of rates around one of them that arrive one after the other as tried; null when that rate, or the nearest tried one below it, fails.</summary>
    public RateStretch? Around(double radiansPerSecond)
    {
        const double Slack = 1e-9;
        int at = -1;
        for (int i = 0; i < Answers.Count && Answers[i].RateRadiansPerSecond <= radiansPerSecond * (1.0 + Slack); i++)
        {
            at = i;
        }

        if (at < 0 || Answers[at].End != MoveEnd.Arrives)
        {
            return null;
        }

        (int from, int to) = (at, at);
        while (from > 0 && Answers[from - 1].End == MoveEnd.Arrives)
        {
            from--;
        }

        while (to + 1 < Answers.Count && Answers[to + 1].End == MoveEnd.Arrives)
        {
            to++;
        }

        return new RateStretch(Answers[from].RateRadiansPerSecond, Answers[to].RateRadiansPerSecond);
    }
}
