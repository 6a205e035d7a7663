using AxisSim.Plots.Pictures;

namespace AxisSim.Tests.Invented;

/// <summary>Trade-offs made by hand for the figure.</summary>
internal static class SampleFronts
{
    /// <summary>Points that microstep, that full-step, and that have less margin than asked for.</summary>
    public static FrontPicture Three() => new()
    {
        Title = "Harrow Fell Observatory: trade-off of the polar axis",
        Sentence = "Polar axis: balanced settings are 4 deg/s with a ramp of 2 s and 0.8 A peak.",
        Points = [new(6.0, 0.4, 1.1, 60.0, false), new(9.0, 0.5, 1.5, 65.0, true), new(10.0, 0.5, 1.35, 60.0, false), Chosen, new(20.0, 0.6, 1.4, 25.0, false)],
        Chosen = Chosen,
        AskedLoadFactor = 1.3,
    };

    private static readonly FrontMark Chosen = new(12.0, 0.5, 2.0, 40.0, false);
}
