using AxisSim.Core.Bounds;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Checks of wind, cold and the like.</summary>
internal static class DisturbanceChecks
{
    public static void Check(ProblemCollector found, Disturbances outside)
    {
        found.At(nameof(MountSetup.Disturbances));
        found.Check(outside.WindMetresPerSecond, DisturbanceBounds.Wind);
        found.Check(outside.GustMetresPerSecond, DisturbanceBounds.Wind);
        found.Check(outside.GustStartSeconds, DisturbanceBounds.GustStart);
        found.Check(outside.GustSeconds, DisturbanceBounds.GustDuration);
        found.Check(outside.TurbulenceIntensity, DisturbanceBounds.Turbulence);
        found.Check(outside.TurbulenceLengthMetres, DisturbanceBounds.TurbulenceLength);
        found.Check(outside.TurbulenceSeed, DisturbanceBounds.TurbulenceSeed);
        found.Check(outside.AirDensityKilogramsPerCubicMetre, DisturbanceBounds.AirDensity);
        found.Check(outside.DragCoefficient, DisturbanceBounds.DragCoefficient);
        found.Check(outside.AreaSquareMetres, DisturbanceBounds.Area);
        found.Check(outside.LeverMetres, DisturbanceBounds.Lever);
        found.Check(outside.ColdGreaseFactor, DisturbanceBounds.ColdGrease);
        found.Check(outside.AmbientCelsius, DisturbanceBounds.Ambient);
    }
}
