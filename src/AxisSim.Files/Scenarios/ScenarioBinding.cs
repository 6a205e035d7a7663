using AxisSim.Core.Dynamics;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;

namespace AxisSim.Files.Scenarios;

/// <summary>Makes the records of Core from values that have passed every check.</summary>
internal static class ScenarioBinding
{
    /// <summary>The scenario; its hash is left to the caller.</summary>
    public static Scenario Bind(ValueSet values)
    {
        var notes = new List<string>();
        double latitude = values.Number("site.latitude");
        PayloadModel? payload = PayloadBinding.Bodies(values);
        LumpedLoad? polar = PayloadBinding.Lumped(values, "polar"), declination = PayloadBinding.Lumped(values, "declination");
        AxisModel? polarAxis = Axis(values, "polar", notes), declinationAxis = Axis(values, "declination", notes);
        return new Scenario
        {
            Name = values.Text("name"),
            Description = values.Text("description"),
            SiteName = values.Text("site.name"),
            LatitudeRadians = latitude,
            Payload = payload,
            PolarLoad = polar,
            DeclinationLoad = declination,
            Tolerances = ToleranceBinding.Bind(values),
            Controller = ControllerBinding.Bind(values, polarAxis, declinationAxis),
            Notes = AxisNotes.Merged(notes),
            Assumed = UsualRanges.Of(values, polarAxis, declinationAxis),
            Sha256 = "",
            Setup = Setup(values, polarAxis, declinationAxis, Load(payload, polar, declination, latitude)),
        };
    }

    /// <summary>The mount and its move alone, of parts that are at hand.</summary>
    public static MountSetup Setup(ValueSet values, AxisModel? polar, AxisModel? declination, MountLoad load) => new()
    {
        Polar = polar,
        Declination = declination,
        Load = load,
        Move = MoveBinding.Bind(values, values.Number("site.latitude")),
        Disturbances = Disturb(values),
    };

    /// <summary>One axis; null when the scenario leaves it out.</summary>
    public static AxisModel? Axis(ValueSet values, string axis, List<string>? notes) =>
        LikeAxis.Has(values.Document, axis) ? AxisBinding.Bind(values, axis, notes) : null;

    /// <summary>What turns about the axes.</summary>
    public static MountLoad Load(ValueSet values) =>
        Load(PayloadBinding.Bodies(values), PayloadBinding.Lumped(values, "polar"), PayloadBinding.Lumped(values, "declination"), values.Number("site.latitude"));

    private static MountLoad Load(PayloadModel? payload, LumpedLoad? polar, LumpedLoad? declination, double latitude) =>
        payload is not null ? MountLoadBuilder.FromBodies(payload, latitude) : MountLoadBuilder.FromLumped(polar, declination, latitude);

    private static Disturbances Disturb(ValueSet values)
    {
        double Number(string name) => values.Number("disturbances." + name);
        return new Disturbances
        {
            WindMetresPerSecond = Number("wind"),
            GustMetresPerSecond = Number("gust"),
            GustStartSeconds = Number("gust_start"),
            GustSeconds = Number("gust_length"),
            TurbulenceIntensity = Number("turbulence"),
            TurbulenceLengthMetres = Number("turbulence_length"),
            TurbulenceSeed = (int)Number("turbulence_seed"),
            AirDensityKilogramsPerCubicMetre = Number("air_density"),
            DragCoefficient = Number("drag_coefficient"),
            AreaSquareMetres = values.Maybe("disturbances.area") ?? 0.0,
            LeverMetres = values.Maybe("disturbances.lever") ?? 0.0,
            ColdGreaseFactor = Number("cold_grease"),
            AmbientCelsius = Number("ambient"),
            SyncProbe = Number("sync_probe") > 0.0,
        };
    }
}
