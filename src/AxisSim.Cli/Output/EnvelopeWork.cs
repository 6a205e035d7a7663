using AxisSim.Cli.Input;
using AxisSim.Cli.Text.Envelopes;
using AxisSim.Cli.Text;
using AxisSim.Core.Envelopes;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Files.Scenarios;

namespace AxisSim.Cli.Output;

/// <summary>Puts the questions of an envelope together, has them answered with a line of progress, and sorts the answers.</summary>
internal sealed class EnvelopeWork(MountSetup setup, IReadOnlyList<ForValue> values, IReadOnlyList<MountSetup> variants)
{
    /// <summary>Without a range of ramps: from the file's own divided by this to that times this.</summary>
    private const double Around = 4.0;

    private const double LongestRamp = 600.0;

    private const int Digits = 3;

    /// <summary>The resolution is the round number (1, 2 or 5 times a power of ten, in deg/s) at or below this share of the rate in the file.</summary>
    private const double ResolutionShare = 0.005;

    public required string File { get; init; }

    public required LaidOver Laid { get; init; }

    public required (double From, double To)? Ramp { get; init; }

    public required int Points { get; init; }

    /// <summary>Factor on inertia, imbalance and friction of the axis with which the rates have to arrive.</summary>
    public required double LoadFactor { get; init; }

    public required int Threads { get; init; }

    /// <summary>The reports of the axes.</summary>
    public IReadOnlyList<EnvelopeReport> Run(Host host, IReadOnlyList<MountAxis> axes)
    {
        using var progress = new ProgressLine(host.Error, host.ErrorIsTerminal);
        Task<List<EnvelopeReport>> work = Task.Run(() => axes.Select(axis => Of(host, axis, share => progress.Report(axis.Key(), "searching the greatest safe rate", share))).ToList(), host.Stop);
        work.Wait(host.Stop);
        return work.Result;
    }

    private EnvelopeReport Of(Host host, MountAxis axis, Action<double> progress)
    {
        AxisModel model = setup.Axis(axis);
        double ownRamp = model.Motion.RampInUseSeconds, ownRate = model.Motion.SlewRateRadiansPerSecond, resolution = Resolution(ownRate);
        double[] ramps = Ramps(ownRamp);
        (string Label, string? Setting, MountSetup Setup)[] curves = values.Count == 0
            ? [("this scenario", null, setup)]
            : [.. values.Zip(variants, (value, variant) => (value.Label, (string?)value.Setting, variant))];

        // Curve by curve; then the file as it is, unless its ramp is on the one curve already.
        int own = values.Count == 0 ? Array.IndexOf(ramps, ownRamp) : -1;
        EnvelopeCase[] cases =
        [
            .. curves.SelectMany(curve => ramps.Select(ramp => new EnvelopeCase(curve.Setup.Loaded(axis, LoadFactor), ramp, ramp == ownRamp ? ownRate : null))),
            .. own < 0 ? [new EnvelopeCase(setup.Loaded(axis, LoadFactor), ownRamp, ownRate)] : Array.Empty<EnvelopeCase>(),
        ];
        IReadOnlyList<GreatestRate> rates = EnvelopeStudy.Run(cases, axis, new EnvelopeOptions { ResolutionRadiansPerSecond = resolution, Threads = Threads, Stop = host.Stop, Progress = progress });
        return new EnvelopeReport
        {
            Axis = axis,
            LoadFactor = LoadFactor,
            File = File,
            Laid = Laid,
            Key = values.Count == 0 ? null : values[0].Setting.Split('=')[0],
            AskedRadiansPerSecond = ownRate,
            Own = own < 0 ? rates[^1] : rates[own],
            Lines = [.. curves.Select((curve, i) => new EnvelopeLine(curve.Label, curve.Setting, [.. rates.Skip(i * ramps.Length).Take(ramps.Length)]))],
            ResolutionRadiansPerSecond = resolution,
            DistanceRadians = RateCap.Distance(setup, axis),
            PulseLimitRadiansPerSecond = RateCap.Pulses(model),
            OnePulseLimit = curves.All(curve => RateCap.Pulses(curve.Setup.Axis(axis)) == RateCap.Pulses(model)),
        };
    }

    /// <summary>Ramps to three digits, evenly spaced in the logarithm, with the file's own among them when it lies between.</summary>
    private double[] Ramps(double own)
    {
        (double from, double to) = Ramp ?? (own / Around, Math.Min(LongestRamp, own * Around));
        int count = to > from ? Points : 1;
        IEnumerable<double> even = Enumerable.Range(0, count).Select(i => RoundDigits.Nearest(from * Math.Pow(to / from, count == 1 ? 0.0 : i / (count - 1.0)), Digits));
        bool between = own >= from && own <= to;

        // A neighbour that would print alike gives way to the file's own.
        return [.. even.Where(ramp => !between || Math.Abs(ramp / own - 1.0) > 0.004).Concat(between ? [own] : []).Distinct().Order()];
    }

    private static double Resolution(double rateRadiansPerSecond) => RoundRate(rateRadiansPerSecond, ResolutionShare);

    /// <summary>The round number in deg/s at or below a share of a rate, in rad/s.</summary>
    public static double RoundRate(double rateRadiansPerSecond, double share)
    {
        return RoundDigits.OneTwoFive(share * Units.Degrees(rateRadiansPerSecond)) * Math.PI / 180.0;
    }
}
