using AxisSim.Core.Dynamics;
using AxisSim.Core.Mount;

namespace AxisSim.Core.Studies;

/// <summary>How an axis swings on the spring of its worm mesh and the motor's field in series, while the motor turns steadily.</summary>
/// <remarks>
/// <para><c>1/K = 1/Km + 1/(Nr T n^2)</c>: mesh stiffness Km (N m/rad at the axis), rotor teeth Nr, amplitude of the field's torque T (N m), total reduction n. The axis without a flexible payload swings
/// at <c>sqrt(K/J)</c>; with one, on its spring k, the squares of the two frequencies are the eigenvalues of <c>[[(K + k)/J, -k/J], [-k/Jp, k/Jp]]</c>.</para>
/// <para>For small swings at no load: the field softens with the load angle. Backlash closed, rotor and shafts without inertia. SI units, rad/s.</para>
/// </remarks>
internal sealed class AxisSwings
{
    /// <summary>Detent steps in an electrical turn: its torque goes through as many periods.</summary>
    public const double DetentPerElectricalTurn = 4.0;

    private readonly double _teeth;

    public AxisSwings(AxisModel model, AxisParameters parameters)
    {
        double n = model.Train.TotalRatio;
        _teeth = model.Motor.RotorTeeth;
        double magnetic = _teeth * model.Motor.TorqueConstantNewtonMetresPerAmpere * model.Drive.SlewCurrentAmperes * n * n;
        double stiffness = 1.0 / ((1.0 / parameters.Mesh.Stiffness) + (1.0 / magnetic)), inertia = parameters.AxisInertia, payload = parameters.PayloadInertia;
        Axis = Math.Sqrt(stiffness / inertia);
        if (payload > 0.0)
        {
            double own = parameters.PayloadStiffness / payload, both = (stiffness + parameters.PayloadStiffness) / inertia, cross = parameters.PayloadStiffness / inertia * own;
            double half = Math.Sqrt((0.25 * (both - own) * (both - own)) + cross), mean = 0.5 * (both + own);

            // The product of the two is that of the determinant: no difference of like numbers.
            Modes = [Math.Sqrt(stiffness / inertia * own / (mean + half)), Math.Sqrt(mean + half)];
        }
        else
        {
            Modes = [Axis];
        }
    }

    /// <summary>The axis without its flexible payload, rad/s.</summary>
    public double Axis { get; }

    /// <summary>All modes, slowest first, rad/s.</summary>
    public IReadOnlyList<double> Modes { get; }

    /// <summary>Period of the slowest, s.</summary>
    public double LongestSeconds => 2.0 * Math.PI / Modes[0];

    /// <summary>Motor speeds at which the detent, or the sequence of full steps, drives a mode at its own frequency, rad/s.</summary>
    public IEnumerable<double> DetentSpeeds => Modes.Select(mode => mode / (DetentPerElectricalTurn * _teeth));
}
