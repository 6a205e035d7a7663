using AxisSim.Core;
using AxisSim.Core.Dynamics;
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
        AxisModel? polarAxis = LikeAxis.Has(values.Document, "polar") ? AxisBinding.Bind(values, "polar", notes) : null;
        AxisModel? declinationAxis = LikeAxis.Has(values.Document, "declination") ? AxisBinding.Bind(values, "declination", notes) : null;
        return new Scenario
        {
            Name = values.Text("name"),
            Description = values.Text("description"),
            SiteName = values.Text("site.name"),
            LatitudeRadians = latitude,
            Payload = payload,
            PolarLoad = polar,
            DeclinationLoad = declination,
            Notes = AxisNotes.Merged(notes),
            Sha256 = "",
            Setup = new MountSetup
            {
                Polar = polarAxis,
                Declination = declinationAxis,
                Load = payload is not null ? MountLoadBuilder.FromBodies(payload, latitude) : MountLoadBuilder.FromLumped(polar, declination, latitude),
                Move = MoveBinding.Bind(values, latitude),
                Disturbances = Disturb(values),
            },
        };
    }

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
