using AxisSim.Core.Batches;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;

namespace AxisSim.Core.Recommendations;

/// <summary>A question: how fast with everything else set so?</summary>
/// <param name="Setup">The mount, which may differ from the scenario's.</param>
/// <param name="Settings">All settings; the slew rate is what is looked for.</param>
internal sealed record RateQuestion(MountSetup Setup, AxisSettings Settings);

/// <summary>The greatest slew rate at which every one of some load cases arrives with the margin, for many settings at once.</summary>
internal sealed class RateFinder(BatchAsker ask, double margin, double resolution)
{
    /// <summary>Time at full speed in the moves that are searched with, s; the answer is then verified with the whole moves.</summary>
    public const double CruiseSeconds = 1.0;

    /// <summary>Length of a move that has a given time at full speed, rad.</summary>
    public static double ProbeRadians(AxisSettings settings) => settings.SlewRateRadiansPerSecond * (settings.RampSeconds + CruiseSeconds);

    /// <summary>The answers in the order of the questions.</summary>
    public SafeRate[] Run(IReadOnlyList<RateQuestion> questions, IReadOnlyList<LoadCase> loads)
    {
        Item[] items = [.. questions.Select(question => new Item(question, loads, resolution))];
        while (true)
        {
            (Item Item, int Rate)[] asked = [.. items.SelectMany(item => item.Search.Next().Select(rate => (item, rate)))];
            if (asked.Length == 0)
            {
                return [.. items.Select(item => item.Search.Result(item.RampSeconds))];
            }

            // The same plan next to each other: all loads of one rate of one setting.
            BatchCase[] batch = [.. asked.SelectMany(one => loads.Select(load => one.Item.Case(load, one.Rate, margin)))];
            BatchResult[] results = ask.Ask(batch);
            for (int i = 0; i < asked.Length; i++)
            {
                BatchEnd end = results.Skip(i * loads.Count).Take(loads.Count).Select(result => result.End).FirstOrDefault(end => end != BatchEnd.Arrives, BatchEnd.Arrives);
                asked[i].Item.Search.Take(asked[i].Rate, end);
            }
        }
    }

    private sealed class Item(RateQuestion question, IReadOnlyList<LoadCase> loads, double resolution)
    {
        public double RampSeconds => question.Settings.RampSeconds;

        public SafeRateSearch Search { get; } = new(
            resolution,
            question.Settings.Apply(question.Setup, loads[0].Move.Axis).Axis(loads[0].Move.Axis).Motion.StartRateRadiansPerSecond,
            loads.Select(load => EnvelopeStudy.Top(question.Settings.Apply(load.Move.Apply(question.Setup), load.Move.Axis), load.Move.Axis, question.Settings.RampSeconds)).MaxBy(one => one.RateRadiansPerSecond));

        public BatchCase Case(LoadCase load, int rate, double margin)
        {
            AxisSettings settings = question.Settings with { SlewRateRadiansPerSecond = rate * resolution };
            return load.With(question.Setup, settings, margin, ProbeRadians(settings));
        }
    }
}
