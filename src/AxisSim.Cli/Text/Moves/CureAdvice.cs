using System.Text.Json.Serialization;
using AxisSim.Cli.Input;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Moves;

/// <summary>A cure for people: what to change, and the settings that try it.</summary>
/// <param name="Sentence">What to change, from what to what.</param>
/// <param name="Settings">Settings to try, each <c>key=value</c>; empty when no single key does it.</param>
internal sealed record CureAdvice(string Sentence, IReadOnlyList<string> Settings)
{
    /// <summary>Settings that the sentence promises as much of, without printing them; empty when there are none.</summary>
    [JsonIgnore]
    public IReadOnlyList<string> Also { get; init; } = [];

    /// <summary>What is told instead where those do not hold.</summary>
    [JsonIgnore]
    public CureAdvice? Without { get; init; }
}

/// <summary>Puts cures into words and into keys of the scenario, in the unit of each key.</summary>
internal static class CureAdvices
{
    /// <summary>The advice for a cure that works.</summary>
    public static CureAdvice Advice(MoveReport report, MountAxis axis, Cure cure, double to)
    {
        AxisModel model = report.Setup.Axis(axis);
        string key = axis.Key();
        return cure.Kind switch
        {
            CureKind.LongerRamp => LongerRamp(model.Motion, key, cure.From, to),
            CureKind.LowerSlewRate => Rate(key, cure.From, to),
            CureKind.MoreCurrent => new($"More slew current: {Units.Current(to)} instead of {Units.Current(cure.From)}; the motor is rated for {Say.With(model.Motor.RatedCurrentAmperes, "A")} peak.", [$"{key}.drive.slew_current={Up(to)} A"]),
            CureKind.Changeover => Changeover(key, cure.From, to),
            CureKind.MoreVoltage => Voltage(model, key, cure.From, to),
            CureKind.MoreDamping => Damping(key, cure.From, to),
            CureKind.FirmerClutch => new($"A firmer clutch: tighten it to hold at least {Up(to)} N m about the axis instead of {Units.AxisTorque(cure.From)}, but no more than its maker allows.", [$"{key}.clutch.slip_torque={Up(to)} N*m"]),
            _ => Balance(report, axis, cure.From, to),
        };
    }

    /// <summary>The advice for two changes that cure together.</summary>
    public static CureAdvice Pair(MoveReport report, MountAxis axis, CurePair pair)
    {
        CureAdvice Plain(Cure cure) => Advice(report, axis, cure, cure.To!.Value) is { Without: { } plain } ? plain : Advice(report, axis, cure, cure.To!.Value);
        CureAdvice first = Plain(pair.First), second = Plain(pair.Second);
        return new($"{first.Sentence} And: {char.ToLowerInvariant(second.Sentence[0])}{second.Sentence[1..]}", first.Settings.Count == 0 || second.Settings.Count == 0 ? [] : [.. first.Settings, .. second.Settings]);
    }

    /// <summary>A cure that does not help enough, named with how far it was tried.</summary>
    public static string NoHelp(Cure cure) => cure.Kind switch
    {
        CureKind.LongerRamp => $"a longer ramp (tried up to {Units.Time(cure.Tried)})",
        CureKind.LowerSlewRate => $"a lower slew rate (tried down to {Units.Rate(cure.Tried)})",
        CureKind.MoreCurrent => $"more slew current (tried up to {Say.With(cure.Tried, "A")} peak)",
        CureKind.Changeover => "another changeover speed",
        CureKind.MoreVoltage => $"a higher supply voltage (tried up to {Say.With(cure.Tried, "V")})",
        CureKind.MoreDamping => $"more damping of the rotor (tried up to {Units.Percent(cure.Tried)} of critical)",
        CureKind.FirmerClutch => $"a firmer clutch (tried up to {Units.AxisTorque(cure.Tried)})",
        _ => $"better balance (tried down to {Units.AxisTorque(cure.Tried)})",
    };

    private static CureAdvice LongerRamp(AxisMotion motion, string key, double from, double to)
    {
        string sentence = $"A longer ramp: {Units.Time(to)} instead of {Units.Time(from)}";
        if (motion.Ramp.Seconds is not null)
        {
            return new(sentence + ".", [$"{key}.motion.ramp_time={Up(to)} s"]);
        }

        double acceleration = Units.Degrees((motion with { Ramp = Ramp.OfSeconds(to) }).PeakAcceleration);
        return new(
            $"{sentence}, that is an acceleration of {Down(acceleration)} deg/s^2 instead of {Say.With(Units.Degrees(motion.PeakAcceleration), "deg/s^2")}.",
            [$"{key}.motion.acceleration={Down(acceleration)} deg/s^2"]);
    }

    private static CureAdvice Rate(string key, double from, double to) =>
        new($"A lower slew rate: {Down(Units.Degrees(to))} deg/s instead of {Units.Rate(from)}.", [$"{key}.motion.slew_rate={Down(Units.Degrees(to))} deg/s"]);

    private static CureAdvice Changeover(string key, double from, double to)
    {
        string now = double.IsInfinity(from) ? "it never does now" : $"{Units.Speed(from)} now";
        return double.IsInfinity(to)
            ? new($"No full-stepping: let the drive microstep at every speed (changeover: {now}).", [$"{key}.drive.changeover=never"])
            : new($"Full-stepping above {Say.Number(Units.Rpm(to), 4)} rpm of the motor ({now}); it gives more torque, with more noise.", [$"{key}.drive.changeover={Say.Number(Units.Rpm(to), 4)} rpm"]);
    }

    private static CureAdvice Damping(string key, double from, double to) => new(
        $"More damping of the rotor: {Say.Number(100.0 * to)} % of critical instead of {Say.Number(100.0 * from)} %, by a damper on the motor's free shaft end or a drive that damps.", [$"{key}.drive.damping_share={Up(to)}"]);

    private static CureAdvice Voltage(AxisModel model, string key, double from, double to)
    {
        string sentence = $"A higher supply voltage: {Up(to)} V instead of {Say.With(from, "V")}, if motor and drive are made for it.";
        string set = $"{key}.drive.supply_voltage={Up(to)} V";
        double limit = model.Drive.BrakeLimitVolts * to / from;
        return double.IsFinite(limit)
            ? new(sentence + " The brake limit must rise with it.", [set, $"{key}.drive.brake_limit={Up(limit)} V"])
            : new(sentence, [set]);
    }

    private static CureAdvice Balance(MoveReport report, MountAxis axis, double from, double to)
    {
        string sentence = $"Better balance: an imbalance of at most {Down(to)} N m about the {axis.Words()} on this path instead of {Units.AxisTorque(from)}.";
        if (report.Lumped.TryGetValue(axis, out var load) && from > 0.0)
        {
            return new(sentence, [$"{axis.Key()}.load.imbalance={Toward(load.ImbalanceNewtonMetres * to / from)} N*m"]);
        }

        string command = CommandText.Of("balance", report.File, report.Laid, []);
        return CounterweightMove.Try(report, axis, to) is { } move
            ? new($"{sentence} The counterweight {move.Words}; axissim balance shows the rest.", move.Settings)
            {
                Also = move.Nearby,
                Without = new($"{sentence} The counterweight {move.ShortWords}; axissim balance shows the rest.", move.Settings),
            }
            : new($"{sentence} To see where weights and payload should go: {command}", []);
    }

    // Four digits on the safe side: a suggestion that was found to arrive must not be rounded back over the edge.
    private static string Up(double value) => Rounded(value, Math.Ceiling);

    private static string Down(double value) => Rounded(value, Math.Floor);

    private static string Toward(double value) => value < 0.0 ? "-" + Down(-value) : Down(value);

    private static string Rounded(double value, Func<double, double> toWhole)
    {
        const double Slack = 1e-6;
        if (value == 0.0)
        {
            return "0";
        }

        double grain = Math.Pow(10.0, Math.Floor(Math.Log10(value)) - 3.0);
        double steps = value / grain;
        double near = Math.Round(steps);
        return Say.Number((Math.Abs(steps - near) < Slack * near ? near : toWhole(steps)) * grain, 4);
    }
}
