using AxisSim.Core.Bounds;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Files.Units;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Keys;

/// <summary>Keys that both axes share: site, payload, counterweight, move, settling and disturbances.</summary>
internal static class MountKeys
{
    // Of the sky alone: no record of Core holds these.
    private static readonly Bound s_quarterTurn = Bound.From(-0.5 * Math.PI, 0.5 * Math.PI, "rad");
    private static readonly Bound s_halfTurn = Bound.From(-Math.PI, Math.PI, "rad");

    /// <summary>Top level and site.</summary>
    public static IReadOnlyList<ScenarioKey> Head { get; } =
    [
        Number("format", KeyKind.WholeNumber, null, "1", Bound.Whole(1, 1), "Version of the scenario format."),
        Text("name", null, "heavy reflector", "Name of the scenario."),
        Text("description", "", "What this scenario shows.", "What it is about.") with { Lines = true },
        Text("site.name", "", "Harrow Fell Observatory", "Name of the site."),
        Needed("site.latitude", Dimension.Angle, "54.4 deg", s_quarterTurn, "Latitude; negative south of the equator. The polar axis is inclined by it."),
    ];

    /// <summary>Payload and counterweight.</summary>
    public static IReadOnlyList<ScenarioKey> Payload { get; } =
    [
        Text("payload.<name>.name", null, "tube", "Name of the body, used in keys: letters, digits, - and _."),
        Choice("payload.<name>.shape", null, "Shape of the body.", "tube", "cylinder", "box", "point"),
        Needed("payload.<name>.mass", Dimension.Mass, "14 kg", PayloadBounds.Mass, "Mass."),
        Needed("payload.<name>.out", Dimension.Length, "0.3 m", PayloadBounds.Out, "Centre of mass along the declination axis, away from the counterweight, from where the axes meet."),
        Given("payload.<name>.forward", Dimension.Length, "0 m", "0.05 m", PayloadBounds.Offset, "Centre of mass along the optical axis, towards the sky."),
        Given("payload.<name>.side", Dimension.Length, "0 m", "0.02 m", PayloadBounds.Offset, "Centre of mass across both (out x forward)."),
        Choice("payload.<name>.direction", "forward", "Direction of the body's length.", "forward", "out", "side"),
        Free("payload.<name>.length", Dimension.Length, "needed for tube, cylinder and box", "1.1 m", PayloadBounds.Length, "Length."),
        Free("payload.<name>.diameter", Dimension.Length, "needed for tube and cylinder", "0.3 m", PayloadBounds.Across, "Outer diameter."),
        Free("payload.<name>.inner_diameter", Dimension.Length, "needed for tube", "0.29 m", PayloadBounds.InnerDiameter, "Inner diameter of a tube."),
        Free("payload.<name>.width", Dimension.Length, "needed for box", "0.1 m", PayloadBounds.Across, "Width of a box: along the first of out, forward, side that is not its length."),
        Free("payload.<name>.height", Dimension.Length, "needed for box", "0.1 m", PayloadBounds.Across, "Height of a box: along the second of them."),
        Needed("counterweight.mass", Dimension.Mass, "10 kg", PayloadBounds.Mass, "Mass of the weights."),
        Needed("counterweight.distance", Dimension.Length, "0.42 m", PayloadBounds.Distance, "Distance of their centre from the polar axis, on the side away from the telescope."),
        Free("counterweight.greatest_distance", Dimension.Length, "not known", "0.55 m", PayloadBounds.Distance, "Greatest distance that the bar allows."),
        Given("counterweight.diameter", Dimension.Length, "0 m", "0.15 m", PayloadBounds.WeightSize, "Diameter of the weights."),
        Given("counterweight.length", Dimension.Length, "0 m", "0.12 m", PayloadBounds.WeightSize, "Length of the weights along the bar."),
        Given("counterweight.bar_mass", Dimension.Mass, "0 kg", "3 kg", PayloadBounds.BarMass, "Mass of the bar."),
        Given("counterweight.bar_length", Dimension.Length, "0 m", "0.6 m", PayloadBounds.BarLength, "Length of the bar from the polar axis."),
        new() { Path = "counterweight.turns_with_declination", Kind = KeyKind.Flag, Default = "true", Example = "true", Doc = "Whether bar and weights turn with the declination axis (the usual build), or are fixed to its housing." },
    ];

    /// <summary>Move and settling.</summary>
    public static IReadOnlyList<ScenarioKey> Move { get; } =
    [
        .. Ends("start"), .. Ends("end"),
        Choice("move.follow", "rest", "What follows the slew: the axes rest, or the polar axis tracks the sky.", "rest", "sidereal"),
        Given("move.observe", Dimension.Time, "8 s", "8 s", MoveBounds.Observe, "Time simulated after the end of the slew."),
        Needed("settling.tolerance", Dimension.Angle, "2 arcsec", MoveBounds.SettleTolerance, "The axis is settled once it stays within plus and minus this angle."),
    ];

    /// <summary>Wind, cold and the sync probe.</summary>
    public static IReadOnlyList<ScenarioKey> Disturbances { get; } =
    [
        Given("disturbances.wind", Dimension.Speed, "0 m/s", "6 m/s", DisturbanceBounds.Wind, "Steady wind; its sign is that of the torque about both axes."),
        Given("disturbances.gust", Dimension.Speed, "0 m/s", "4 m/s", DisturbanceBounds.Wind, "What a single 1-cosine gust adds."),
        Given("disturbances.gust_start", Dimension.Time, "0 s", "12 s", DisturbanceBounds.GustStart, "Start of the gust from the start of the move."),
        Given("disturbances.gust_length", Dimension.Time, "1 s", "1 s", DisturbanceBounds.GustDuration, "Duration of the gust."),
        Share("disturbances.turbulence", "0", "15 %", DisturbanceBounds.Turbulence, "Turbulence: standard deviation over mean speed.") with { Example = "\"15 %\"" },
        Given("disturbances.turbulence_length", Dimension.Length, "30 m", "30 m", DisturbanceBounds.TurbulenceLength, "Length scale of the turbulence."),
        Number("disturbances.turbulence_seed", KeyKind.WholeNumber, "1", "1", DisturbanceBounds.TurbulenceSeed, "Seed of the turbulence: the same seed gives the same wind."),
        Given("disturbances.air_density", Dimension.Density, "1.225 kg/m^3", "1.225 kg/m^3", DisturbanceBounds.AirDensity, "Density of the air."),
        Number("disturbances.drag_coefficient", KeyKind.Number, "1.2", "1.2", DisturbanceBounds.DragCoefficient, "Drag coefficient of the payload: flat plate or cylinder 1.1 to 1.2."),
        Free("disturbances.area", Dimension.Area, "needed with wind", "0.3 m^2", DisturbanceBounds.Area, "Area that the wind meets."),
        Free("disturbances.lever", Dimension.Length, "needed with wind", "0.2 m", DisturbanceBounds.Lever, "Lever of the wind's force about the axis."),
        Number("disturbances.cold_grease", KeyKind.Number, "1", "1.5", DisturbanceBounds.ColdGrease, "Factor on the friction of bearings and worm for cold grease; 1 at room temperature."),
        Given("disturbances.ambient", Dimension.Temperature, "20 degC", "-5 degC", DisturbanceBounds.Ambient, "Ambient temperature."),
        new() { Path = "disturbances.sync_probe", Kind = KeyKind.Flag, Default = "true", Example = "true", Doc = "Small torque pulses at the rotor that make a move on the edge of losing sync fall over." },
    ];

    private static IEnumerable<ScenarioKey> Ends(string end) =>
    [
        Free($"move.{end}_polar", Dimension.Angle, $"needed with a polar axis, unless {end} gives a place on the sky", "-60 deg", MoveBounds.Angle, "Mechanical angle of the polar axis: 0 with the bar level, the counterweight east and the telescope west; it grows as the axis tracks the sky; -90 deg has the counterweight lowest."),
        Free($"move.{end}_declination", Dimension.Angle, $"needed with a declination axis, unless {end} gives a place on the sky", "20 deg", MoveBounds.Angle, "Mechanical angle of the declination axis: 0 with the tube at the equator, growing towards the elevated pole, through it beyond 90 deg."),
        Free($"move.{end}.hour_angle", Dimension.HourAngle, $"instead of {end}_polar and {end}_declination", "-2.5 h", s_halfTurn, "Place on the sky: hour angle, west of the meridian positive."),
        Free($"move.{end}.declination", Dimension.Angle, "with hour_angle", "30 deg", s_quarterTurn, "Place on the sky: declination."),
        Choice($"move.{end}.pier_side", null, "Side of the pier on which the telescope is.", "east", "west") with { Required = false, DefaultInWords = "with hour_angle" },
    ];
}
