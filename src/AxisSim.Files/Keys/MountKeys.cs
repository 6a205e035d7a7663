using AxisSim.Files.Units;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Keys;

/// <summary>Keys that both axes share: site, payload, counterweight, move, settling and disturbances.</summary>
internal static class MountKeys
{
    /// <summary>Top level and site.</summary>
    public static IReadOnlyList<ScenarioKey> Head { get; } =
    [
        Number("format", KeyKind.WholeNumber, null, "1", 1, 1, "Version of the scenario format."),
        Text("name", null, "heavy reflector", "Name of the scenario."),
        Text("description", "", "What this scenario shows.", "What it is about.") with { Lines = true },
        Text("site.name", "", "Harrow Fell Observatory", "Name of the site."),
        Needed("site.latitude", Dimension.Angle, "54.4 deg", -90, 90, "Latitude; negative south of the equator. The polar axis is inclined by it."),
    ];

    /// <summary>Payload and counterweight.</summary>
    public static IReadOnlyList<ScenarioKey> Payload { get; } =
    [
        Text("payload.<name>.name", null, "tube", "Name of the body, used in keys: letters, digits, - and _."),
        Choice("payload.<name>.shape", null, "Shape of the body.", "tube", "cylinder", "box", "point"),
        Needed("payload.<name>.mass", Dimension.Mass, "14 kg", 0, 5000, "Mass.", above: true),
        Needed("payload.<name>.out", Dimension.Length, "0.3 m", -10, 10, "Centre of mass along the declination axis, away from the counterweight, from where the axes meet."),
        Given("payload.<name>.forward", Dimension.Length, "0 m", "0.05 m", -20, 20, "Centre of mass along the optical axis, towards the sky."),
        Given("payload.<name>.side", Dimension.Length, "0 m", "0.02 m", -20, 20, "Centre of mass across both (out x forward)."),
        Choice("payload.<name>.direction", "forward", "Direction of the body's length.", "forward", "out", "side"),
        Free("payload.<name>.length", Dimension.Length, "needed for tube, cylinder and box", "1.1 m", 0, 20, "Length.", above: true),
        Free("payload.<name>.diameter", Dimension.Length, "needed for tube and cylinder", "0.3 m", 0, 10, "Outer diameter.", above: true),
        Free("payload.<name>.inner_diameter", Dimension.Length, "needed for tube", "0.29 m", 0, 10, "Inner diameter of a tube."),
        Free("payload.<name>.width", Dimension.Length, "needed for box", "0.1 m", 0, 10, "Width of a box: along the first of out, forward, side that is not its length.", above: true),
        Free("payload.<name>.height", Dimension.Length, "needed for box", "0.1 m", 0, 10, "Height of a box: along the second of them.", above: true),
        Needed("counterweight.mass", Dimension.Mass, "10 kg", 0, 5000, "Mass of the weights.", above: true),
        Needed("counterweight.distance", Dimension.Length, "0.42 m", 0, 10, "Distance of their centre from the polar axis, on the side away from the telescope.", above: true),
        Free("counterweight.greatest_distance", Dimension.Length, "not known", "0.55 m", 0, 10, "Greatest distance that the bar allows.", above: true),
        Given("counterweight.diameter", Dimension.Length, "0 m", "0.15 m", 0, 5, "Diameter of the weights."),
        Given("counterweight.length", Dimension.Length, "0 m", "0.12 m", 0, 5, "Length of the weights along the bar."),
        Given("counterweight.bar_mass", Dimension.Mass, "0 kg", "3 kg", 0, 1000, "Mass of the bar."),
        Given("counterweight.bar_length", Dimension.Length, "0 m", "0.6 m", 0, 10, "Length of the bar from the polar axis."),
        new() { Path = "counterweight.turns_with_declination", Kind = KeyKind.Flag, Default = "true", Example = "true", Doc = "Whether bar and weights turn with the declination axis (the usual build), or are fixed to its housing." },
    ];

    /// <summary>Move and settling.</summary>
    public static IReadOnlyList<ScenarioKey> Move { get; } =
    [
        .. Ends("start"), .. Ends("end"),
        Choice("move.follow", "rest", "What follows the slew: the axes rest, or the polar axis tracks the sky.", "rest", "sidereal"),
        Given("move.observe", Dimension.Time, "8 s", "8 s", 0, 3600, "Time simulated after the end of the slew.", above: true),
        Needed("settling.tolerance", Dimension.Angle, "2 arcsec", 0, 3600, "The axis is settled once it stays within plus and minus this angle.", above: true),
    ];

    /// <summary>Wind, cold and the sync probe.</summary>
    public static IReadOnlyList<ScenarioKey> Disturbances { get; } =
    [
        Given("disturbances.wind", Dimension.Speed, "0 m/s", "6 m/s", -100, 100, "Steady wind; its sign is that of the torque about both axes."),
        Given("disturbances.gust", Dimension.Speed, "0 m/s", "4 m/s", -100, 100, "What a single 1-cosine gust adds."),
        Given("disturbances.gust_start", Dimension.Time, "0 s", "12 s", 0, 1e5, "Start of the gust from the start of the move."),
        Given("disturbances.gust_length", Dimension.Time, "1 s", "1 s", 0, 1e4, "Duration of the gust.", above: true),
        Share("disturbances.turbulence", "0", "15 %", 0, 1, "Turbulence: standard deviation over mean speed.") with { Example = "\"15 %\"" },
        Given("disturbances.turbulence_length", Dimension.Length, "30 m", "30 m", 0, 10000, "Length scale of the turbulence.", above: true),
        Number("disturbances.turbulence_seed", KeyKind.WholeNumber, "1", "1", 0, 1e9, "Seed of the turbulence: the same seed gives the same wind."),
        Given("disturbances.air_density", Dimension.Density, "1.225 kg/m^3", "1.225 kg/m^3", 0, 2, "Density of the air."),
        Number("disturbances.drag_coefficient", KeyKind.Number, "1.2", "1.2", 0, 5, "Drag coefficient of the payload: flat plate or cylinder 1.1 to 1.2."),
        Free("disturbances.area", Dimension.Area, "needed with wind", "0.3 m^2", 0, 100, "Area that the wind meets."),
        Free("disturbances.lever", Dimension.Length, "needed with wind", "0.2 m", -20, 20, "Lever of the wind's force about the axis."),
        Number("disturbances.cold_grease", KeyKind.Number, "1", "1.5", 0.1, 20, "Factor on the friction of bearings and worm for cold grease; 1 at room temperature."),
        Given("disturbances.ambient", Dimension.Temperature, "20 degC", "-5 degC", -80, 80, "Ambient temperature."),
        new() { Path = "disturbances.sync_probe", Kind = KeyKind.Flag, Default = "true", Example = "true", Doc = "Small torque pulses at the rotor that make a move on the edge of losing sync fall over." },
    ];

    private static IEnumerable<ScenarioKey> Ends(string end) =>
    [
        Free($"move.{end}_polar", Dimension.Angle, $"needed with a polar axis, unless {end} gives a place on the sky", "-60 deg", -360, 360, "Mechanical angle of the polar axis: 0 with the bar level, the counterweight east and the telescope west; it grows as the axis tracks the sky; -90 deg has the counterweight lowest."),
        Free($"move.{end}_declination", Dimension.Angle, $"needed with a declination axis, unless {end} gives a place on the sky", "20 deg", -360, 360, "Mechanical angle of the declination axis: 0 with the tube at the equator, growing towards the elevated pole, through it beyond 90 deg."),
        Free($"move.{end}.hour_angle", Dimension.HourAngle, $"instead of {end}_polar and {end}_declination", "-2.5 h", -12, 12, "Place on the sky: hour angle, west of the meridian positive."),
        Free($"move.{end}.declination", Dimension.Angle, "with hour_angle", "30 deg", -90, 90, "Place on the sky: declination."),
        Choice($"move.{end}.pier_side", null, "Side of the pier on which the telescope is.", "east", "west") with { Required = false, DefaultInWords = "with hour_angle" },
    ];
}
