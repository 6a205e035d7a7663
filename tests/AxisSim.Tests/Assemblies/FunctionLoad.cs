using AxisSim.Core.Dynamics;

namespace AxisSim.Tests.Assemblies;

/// <summary>Torques given as functions, for assemblies other than the mount's.</summary>
internal readonly struct FunctionLoad(Func<double, double, double>? rotor = null, Func<double, double, double>? axis = null, Func<double, double, double>? payload = null) : ILoadLaw
{
    private readonly Func<double, double, double>? _rotor = rotor;
    private readonly Func<double, double, double>? _axis = axis;
    private readonly Func<double, double, double>? _payload = payload;

    public double InertiaFactorRate => 0.0;

    public void BeginBlock(in AxisState state, double startSeconds, double blockSeconds)
    {
    }

    public double RotorTorque(double startSeconds, double stepSeconds, double rotorRadians) =>
        _rotor is null ? 0.0 : _rotor(startSeconds + (0.5 * stepSeconds), rotorRadians);

    public double AxisTorque(double midSeconds, double axisRadians) => _axis is null ? 0.0 : _axis(midSeconds, axisRadians);

    public double PayloadTorque(double midSeconds, double payloadRadians) => _payload is null ? 0.0 : _payload(midSeconds, payloadRadians);

    public double InertiaFactor(double midSeconds) => 1.0;

    public (double Error, double Slope) PeriodicError(double midSeconds, double wormAxisRadians) => (0.0, 0.0);
}
