using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Questions;
using AxisSim.Core.Stepping.Jobs;

namespace AxisSim.Core.Recommendations;

/// <summary>Raises the current that follows a slew, tracking or holding, until the simulated axis settles with it.</summary>
internal static class RestCurrents
{
    /// <summary>Shares of the slew current that are tried above the one that statics ask for.</summary>
    private static readonly double[] Shares = [0.4, 0.5, 0.65, 0.8, 1.0];

    /// <summary>A lower current is taken if it settles at most that much later than the best, s (a choice of ours).</summary>
    private const double LaterSeconds = 0.5;

    // A gentle move, so that it is the current that decides.
    private const double RateShare = 0.5;
    private const double GentleRampSeconds = 2.0;

    /// <summary>The currents for each slew current.</summary>
    public static Dictionary<double, HoldingCurrents> Of(Asker ask, MountSetup setup, CheckMove move, IReadOnlyList<double> slewCurrents, Func<double, HoldingCurrents> statics)
    {
        bool tracks = setup.Tracks(move.Axis);
        AxisSettings own = AxisSettings.Of(setup, move.Axis);
        double rate = RateShare * own.SlewRateRadiansPerSecond, most = rate * (Math.Max(own.RampSeconds, GentleRampSeconds) + 1.0);
        (HoldingCurrents Statics, double[] Levels)[] asked =
        [
            .. from slew in slewCurrents
               let currents = statics(slew)
               let least = tracks ? currents.TrackingAmperes : currents.HoldingAmperes
               select (currents, (double[])[least, .. Shares.Select(share => RoundDigits.Down(share * slew, AxisSettings.Digits)).Where(level => level > 1.02 * least)]),
        ];
        BatchResult[] results = ask.Ask(
        [
            .. asked.SelectMany((one, i) => one.Levels.Select(level =>
            {
                HoldingCurrents currents = one.Statics.With(tracks, level);
                var settings = new AxisSettings(rate, Math.Max(own.RampSeconds, GentleRampSeconds), slewCurrents[i], currents.TrackingAmperes, currents.HoldingAmperes, double.PositiveInfinity);
                return new LoadCase(move, ToleranceFactors.Nominal).With(setup, settings, 1.0, most);
            })),
        ],
        BatchDepth.Settling);
        var found = new Dictionary<double, HoldingCurrents>();
        int at = 0;
        for (int i = 0; i < asked.Length; i++)
        {
            BatchResult[] levels = results[at..(at + asked[i].Levels.Length)];
            at += levels.Length;
            double best = levels.Where(result => result.End == MoveEnd.Arrives).Select(result => result.SettleSeconds).DefaultIfEmpty(double.NaN).Min();
            int chosen = Array.FindIndex(levels, result => result.End == MoveEnd.Arrives && result.SettleSeconds <= best + LaterSeconds);
            found[slewCurrents[i]] = chosen <= 0 ? asked[i].Statics : asked[i].Statics.With(tracks, asked[i].Levels[chosen]);
        }

        return found;
    }
}
