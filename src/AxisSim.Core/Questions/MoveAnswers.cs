using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Questions;

/// <summary>What is asked about one move besides how it ends: how far from the edge it is, or why it fails and what would cure it.</summary>
/// <param name="LoadFactor">How near the edge is in load; null when the move fails.</param>
/// <param name="Rates">How near it is in slew rate, at the load as it is.</param>
/// <param name="Diagnosis">Cause and cures; null when the move arrives.</param>
/// <param name="Lifts">What would lift a thin load factor to the usual one; null when it is not thin.</param>
public sealed record MoveAnswers(LoadFactor? LoadFactor, GreatestRate Rates, Diagnosis? Diagnosis, Cures? Lifts)
{
    /// <summary>Runs that the answers take as a rule; for the share done.</summary>
    private const double UsualWhenItArrives = 75.0, UsualWhenItFails = 160.0;

    /// <summary>The answers for one axis.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="arrives">Whether the move keeps sync and clutch.</param>
    /// <param name="options">How runs are made.</param>
    /// <param name="progress">Called with the share done; from several threads at once.</param>
    public static MoveAnswers Of(MountSetup setup, MountAxis axis, bool arrives, QuestionOptions options, Action<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(options);
        double usual = arrives ? UsualWhenItArrives : UsualWhenItFails;
        var ask = new Asker(options with
        {
            Counted = runs =>
            {
                options.Counted?.Invoke(runs);
                progress?.Invoke(Math.Min(0.99, runs / usual));
            },
        });
        RateSearch rates = RateSearch.Of(setup, axis);
        ValueSearch load = LoadFactors.Search(fromBelow: false);
        var rate = new EdgeQuestion(rates.Line, place => [new BatchCase(rates.At(setup, axis, place), axis)]);
        EdgeFinder.Find(ask, arrives ? [rate, load.Question(factor => [new BatchCase(setup.Loaded(axis, factor), axis)])] : [rate]);
        LoadFactor? factor = arrives ? LoadFactors.Result(load) : null;
        Cures? lifts = factor is { IsThin: true } ? CureStudy.Find(ask, setup, axis, clutch: false, LoadFactor.Usual, pairs: false) : null;
        return new MoveAnswers(factor, rates.Result(), arrives ? null : Diagnose(ask, setup, axis), lifts);
    }

    private static Diagnosis Diagnose(Asker ask, MountSetup setup, MountAxis axis)
    {
        var own = new BatchCase(setup, axis);
        LimitFinding why = LimitStudy.Find(ask, [(own, ask.Ask([own])[0])])[0];
        return new Diagnosis(why, CureStudy.Find(ask, setup, axis, why.Limit == Limit.Clutch, Cure.AskedLoadFactor, pairs: true));
    }
}
