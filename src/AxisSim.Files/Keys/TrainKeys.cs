using AxisSim.Core.Gearing;
using AxisSim.Files.Units;
using static AxisSim.Files.Keys.KeyMaker;

namespace AxisSim.Files.Keys;

/// <summary>Keys of the transmission of one axis.</summary>
internal static class TrainKeys
{
    /// <summary>Stages and worm below an axis.</summary>
    public static IEnumerable<ScenarioKey> Of(string axis) => Stages($"{axis}.stages.<name>").Concat(Worm($"{axis}.worm"));

    private static IEnumerable<ScenarioKey> Stages(string s) =>
    [
        Text($"{s}.name", null, "belt", "Name of the stage, used in keys: letters, digits, - and _."),
        Number($"{s}.ratio", KeyKind.Ratio, null, "\"60/12\"", TrainBounds.StageRatio, "Speed of its input over speed of its output; teeth of the driven over the driving wheel."),
        Share($"{s}.efficiency", null, "0.97", TrainBounds.Efficiency, "Mesh efficiency in either direction: belts 0.95 to 0.98, spur pairs 0.97 to 0.99 (common practice)."),
        Given($"{s}.inertia", Dimension.Inertia, "0 kg*m^2", "120 g*cm^2", TrainBounds.WheelInertia, "Inertia of the driven wheel about its own shaft."),
        Given($"{s}.backlash", Dimension.Angle, "0 arcmin", "4 arcmin", TrainBounds.StageBacklash, "Total backlash at its output shaft."),
        Free($"{s}.stiffness", Dimension.Stiffness, "rigid", "150 N*m/rad", TrainBounds.StageStiffness, "Torsional stiffness at its output shaft."),
    ];

    private static IEnumerable<ScenarioKey> Worm(string s) =>
    [
        Number($"{s}.starts", KeyKind.WholeNumber, "1", "1", TrainBounds.Starts, "Starts (threads) of the worm."),
        Number($"{s}.teeth", KeyKind.WholeNumber, null, "144", TrainBounds.WheelTeeth, "Teeth of the worm wheel."),
        Free($"{s}.lead_angle", Dimension.Angle, "give this and friction, or efficiency", "3.5 deg", TrainBounds.LeadAngle, "Lead angle at the pitch cylinder of the worm."),
        Number($"{s}.friction", KeyKind.Number, null, "0.08", TrainBounds.Friction, "Friction coefficient of the flanks: 0.05 to 0.10 greased at speed (common practice).") with { Required = false, DefaultInWords = "give this and lead_angle, or efficiency" },
        Given($"{s}.pressure_angle", Dimension.Angle, "20 deg", "20 deg", TrainBounds.PressureAngle, "Normal pressure angle."),
        Given($"{s}.inertia", Dimension.Inertia, "0 kg*m^2", "50 g*cm^2", TrainBounds.WheelInertia, "Inertia of the worm with its shaft."),
        Share($"{s}.efficiency", null, "0.45", TrainBounds.Efficiency, "Plain driving efficiency instead of lead angle and friction.") with { Required = false, DefaultInWords = "from lead_angle and friction" },
        Share($"{s}.back_efficiency", null, "0", TrainBounds.BackEfficiency, "Plain back-driving efficiency; zero or less locks.") with { Required = false, DefaultInWords = "2 - 1/efficiency" },
        Given($"{s}.periodic_error", Dimension.Angle, "0 arcsec", "8 arcsec", TrainBounds.PeriodicAmplitude, "Periodic error once per worm turn: amplitude, half of peak to peak."),
        Given($"{s}.periodic_phase", Dimension.Angle, "0 deg", "0 deg", TrainBounds.Phase, "Its phase."),
        Given($"{s}.second_harmonic", Dimension.Angle, "0 arcsec", "2 arcsec", TrainBounds.PeriodicAmplitude, "Periodic error twice per worm turn: amplitude."),
        Given($"{s}.second_phase", Dimension.Angle, "0 deg", "0 deg", TrainBounds.Phase, "Its phase."),
        Given($"{s}.runout", Dimension.Angle, "0 arcsec", "20 arcsec", TrainBounds.RunoutAmplitude, "Runout of the worm wheel, once per axis turn: amplitude."),
        Given($"{s}.runout_phase", Dimension.Angle, "0 deg", "0 deg", TrainBounds.Phase, "Its phase."),
    ];
}
