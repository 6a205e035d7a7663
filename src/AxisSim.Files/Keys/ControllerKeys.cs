using AxisSim.Core.Bounds;
using AxisSim.Core.Controllers;
using AxisSim.Files.Units;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Keys;

/// <summary>Keys of a user's own controller: which numbers it takes, and what one counts. Used by the settings sheet alone.</summary>
internal static class ControllerKeys
{
    /// <summary>The list of its settings.</summary>
    public const string List = "controller.settings";

    /// <summary>What a setting may set, by its word, with the dimension of its unit.</summary>
    public static IReadOnlyList<(string Word, ControllerQuantity Quantity, Dimension Dimension)> Quantities { get; } =
    [
        ("slew_rate", ControllerQuantity.SlewRate, Dimension.RateOfPulses),
        ("start_rate", ControllerQuantity.StartRate, Dimension.RateOfPulses),
        ("ramp_time", ControllerQuantity.RampTime, Dimension.Time),
        ("acceleration", ControllerQuantity.Acceleration, Dimension.AccelerationOfPulses),
        ("ramp_distance", ControllerQuantity.RampDistance, Dimension.Angle),
        ("changeover", ControllerQuantity.Changeover, Dimension.RateOfPulses),
        ("slew_current", ControllerQuantity.SlewCurrent, Dimension.Current),
        ("tracking_current", ControllerQuantity.TrackingCurrent, Dimension.Current),
        ("holding_current", ControllerQuantity.HoldingCurrent, Dimension.Current),
        ("tracking_share", ControllerQuantity.TrackingShare, Dimension.Share),
        ("holding_share", ControllerQuantity.HoldingShare, Dimension.Share),
        ("current_fall_delay", ControllerQuantity.CurrentFallDelay, Dimension.Time),
    ];

    /// <summary>Keys of the section.</summary>
    public static IReadOnlyList<ScenarioKey> All { get; } =
    [
        Text("controller.name", "my controller", "box on the pier", "What you call your controller. With settings in its own units the sheet of axissim report has the numbers to type, and what the move does with them."),
        Text($"{List}.<name>.name", null, "ramp", "What the controller calls the setting: letters, digits, - and _."),
        Choice($"{List}.<name>.sets", null, "What it sets. tracking_share and holding_share are shares of the slew current; give the ramp in one of its three ways.", [.. Quantities.Select(one => one.Word)]) with { Example = "\"ramp_time\"" },
        Choice($"{List}.<name>.axis", "both", "Which axis it is for.", "both", "polar", "declination"),
        Unit($"{List}.<name>.unit", "\"0.25 s\"", "What one counts, with a unit that fits sets: \"0.25 s\" when 4 stands for 1 s. Rates also in steps/s and pulses/s, accelerations in steps/s^2 and pulses/s^2. Below zero where greater numbers mean less.") with { Required = true },
        Unit($"{List}.<name>.zero", "\"0.5 s\"", "What the number 0 stands for.") with { DefaultInWords = "nothing" },
        Number($"{List}.<name>.least", KeyKind.Number, "0", "1", Bound.From(-1e9, 1e9), "Least number that it takes."),
        Number($"{List}.<name>.greatest", KeyKind.Number, null, "9", Bound.From(-1e9, 1e9), "Greatest number that it takes.") with { Required = false, DefaultInWords = "no limit" },
        Number($"{List}.<name>.step", KeyKind.Number, "1", "0.1", Bound.From(1e-6, 1e9), "Distance of the numbers that it takes, from the least on: 1 for whole numbers."),
    ];

    private static ScenarioKey Unit(string path, string example, string doc) => new() { Path = path, Kind = KeyKind.AnyQuantity, Example = example, Doc = doc };
}
