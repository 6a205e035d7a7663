using System.Globalization;
using AxisSim.Core.Motors;

namespace AxisSim.Files.Scenarios;

/// <summary>The motor of one axis from values, converted to its wiring.</summary>
internal static class MotorBinding
{
    /// <summary>The motor as wired; a note says what the wiring made of the figures.</summary>
    public static StepperMotor Bind(ValueSet values, string axis, List<string>? notes)
    {
        double Number(string name) => values.Number($"{axis}.motor.{name}");
        StepperMotor figures = new()
        {
            StepsPerRevolution = (int)Number("steps_per_revolution"),
            HoldingTorqueNewtonMetres = Number("holding_torque"),
            RatedCurrentAmperes = Number("rated_current"),
            ResistanceOhms = Number("resistance"),
            InductanceHenries = Number("inductance"),
            RotorInertiaKilogramSquareMetres = Number("rotor_inertia"),
            DetentTorqueNewtonMetres = Number("detent_torque"),
            ViscousNewtonMetreSecondsPerRadian = Number("viscous"),
            CoulombTorqueNewtonMetres = Number("friction"),
            GivenThermalResistanceKelvinPerWatt = values.Maybe($"{axis}.motor.thermal_resistance"),
            ThermalTimeConstantSeconds = Number("thermal_time"),
            Insulation = Enum.Parse<InsulationClass>(values.Text($"{axis}.motor.insulation_class")),
        };
        if (values.Text($"{axis}.motor.figures_for") != "half-coil")
        {
            return figures;
        }

        string word = values.Text($"{axis}.motor.wiring");
        MotorWiring wiring = word switch { "bipolar-series" => MotorWiring.BipolarSeries, "bipolar-parallel" => MotorWiring.BipolarParallel, _ => MotorWiring.HalfCoil };
        StepperMotor wired = MotorDatasheet.Wire(figures, wiring);
        notes?.Add(string.Create(CultureInfo.InvariantCulture, $"{axis} motor, {word} from half-coil figures: rated current {figures.RatedCurrentAmperes:G4} -> {wired.RatedCurrentAmperes:G4} A, resistance {figures.ResistanceOhms:G4} -> {wired.ResistanceOhms:G4} ohm, inductance {figures.InductanceHenries * 1e3:G4} -> {wired.InductanceHenries * 1e3:G4} mH, holding torque {figures.HoldingTorqueNewtonMetres:G4} -> {wired.HoldingTorqueNewtonMetres:G4} N*m"));
        return wired;
    }
}
