using AxisSim.Core.Gearing;

namespace AxisSim.Tests.Published;

/// <summary>Tooth forces of a worm mesh with the worm driving, in any consistent unit of force.</summary>
/// <remarks>
/// With W the tangential force on the wheel (its torque over its pitch radius): along the wheel's axis (around the worm)
/// <c>W (cos pn sin L + f cos L)/(cos pn cos L - f sin L)</c>, apart <c>W sin pn/(cos pn cos L - f sin L)</c>.
/// Source: Mott, Machine Elements in Mechanical Design, worm gearing; symbols as in <see cref="WormLaw"/>.
/// </remarks>
/// <param name="WheelTangential">Around the wheel; equal to the force along the worm.</param>
/// <param name="WheelAxial">Along the wheel's axis; equal to the force around the worm.</param>
/// <param name="Radial">Pushing worm and wheel apart.</param>
internal readonly record struct WormForces(double WheelTangential, double WheelAxial, double Radial)
{
    /// <summary>Forces for a torque on the wheel.</summary>
    /// <param name="wheelTorque">Torque on the wheel.</param>
    /// <param name="wheelPitchDiameter">Pitch diameter of the wheel, in the length unit of the torque.</param>
    /// <param name="leadAngleRadians">Lead angle, rad.</param>
    /// <param name="frictionCoefficient">Friction coefficient.</param>
    /// <param name="pressureAngleRadians">Normal pressure angle, rad.</param>
    public static WormForces At(double wheelTorque, double wheelPitchDiameter, double leadAngleRadians, double frictionCoefficient, double pressureAngleRadians)
    {
        double tangential = 2.0 * wheelTorque / wheelPitchDiameter;
        (double sin, double cos) = Math.SinCos(leadAngleRadians);
        (double sinPressure, double cosPressure) = Math.SinCos(pressureAngleRadians);
        return new(
            tangential,
            tangential * WormLaw.DrivingForceRatio(leadAngleRadians, frictionCoefficient, pressureAngleRadians),
            tangential * sinPressure / ((cosPressure * cos) - (frictionCoefficient * sin)));
    }
}
