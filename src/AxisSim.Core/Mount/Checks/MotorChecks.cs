using AxisSim.Core.Bounds;
using AxisSim.Core.Motors;

namespace AxisSim.Core.Mount.Checks;

/// <summary>Checks of a motor as it is wired.</summary>
internal static class MotorChecks
{
    public static void Check(ProblemCollector found, string owner, StepperMotor motor, string part = nameof(AxisModel.Motor))
    {
        found.At(owner, part);
        found.Check(motor.StepsPerRevolution, MotorBounds.StepsPerRevolution);
        found.Check(motor.HoldingTorqueNewtonMetres, MotorBounds.HoldingTorque);
        found.Check(motor.RatedCurrentAmperes, MotorBounds.RatedCurrent);
        found.Check(motor.ResistanceOhms, MotorBounds.Resistance);
        found.Check(motor.InductanceHenries, MotorBounds.Inductance);
        found.Check(motor.RotorInertiaKilogramSquareMetres, MotorBounds.RotorInertia);
        found.Check(motor.DetentTorqueNewtonMetres, MotorBounds.DetentTorque);
        found.Check(motor.ViscousNewtonMetreSecondsPerRadian, MotorBounds.Viscous);
        found.Check(motor.CoulombTorqueNewtonMetres, MotorBounds.CoulombTorque);
        if (motor.GivenThermalResistanceKelvinPerWatt != 0.0)
        {
            found.CheckGiven(motor.GivenThermalResistanceKelvinPerWatt, MotorBounds.ThermalResistance);
        }

        found.Check(motor.ThermalTimeConstantSeconds, MotorBounds.ThermalTimeConstant);
        found.CheckWord(motor.Insulation);
    }
}
