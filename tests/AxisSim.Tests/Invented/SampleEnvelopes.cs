using AxisSim.Plots.Pictures;

namespace AxisSim.Tests.Invented;

/// <summary>Envelopes and growth made by hand for the figures.</summary>
internal static class SampleEnvelopes
{
    private const double Degree = Math.PI / 180.0;

    /// <summary>Three masses; the heaviest has no safe rate at the shortest ramp.</summary>
    public static EnvelopePicture Three() => new()
    {
        Title = "Harrow Fell Observatory: greatest safe slew rate",
        Sentence = "At a ramp of 2 s and 10 kg the greatest safe slew rate is 3.1 deg/s; the file asks for 2.5 deg/s.",
        Curves = [Curve("8 kg", 0.9), Curve("10 kg", 1.1), Curve("12 kg", 1.5)],
        Own = (new EnvelopePoint(2.0, 2.5 * Degree), "this scenario: 2.5 deg/s, 2 s"),
        Bound = (4.2 * Degree, "greatest pulse rate"),
    };

    /// <summary>Run time in proportion but for a start-up, and memory that hardly grows.</summary>
    public static GrowthCurve[] Growth() =>
    [
        new("Run time of a map", "Cells, 1", "Run time, s", [.. Sizes.Select(n => new GrowthPoint(n, 0.2 + (n * 1e-3)))]),
        new("Memory of a map", "Cells, 1", "Greatest memory, MB", [.. Sizes.Select(n => new GrowthPoint(n, 60 + (n * 1e-4)))]),
    ];

    private static readonly double[] Sizes = [100, 400, 1600, 6400, 25600, 102400];

    private static EnvelopeCurve Curve(string label, double inertia) => new(
        label,
        [
            .. Enumerable.Range(1, 9).Select(i => 0.25 * i * i / 2.0).Select(ramp => new EnvelopePoint(ramp, inertia > 1.3 && ramp < 0.2 ? double.NaN : Math.Min(4.2, 4.6 / (1.0 + (inertia / ramp))) * Degree)),
        ]);
}
