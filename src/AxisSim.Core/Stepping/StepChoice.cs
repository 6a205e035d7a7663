using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Stepping;

/// <summary>The step in use, and why it is shorter than asked for, if it is.</summary>
/// <param name="StepSeconds">Step, s.</param>
/// <param name="Reason">Null when the asked step is used.</param>
/// <param name="Workable">False when even the shortest step is too long for the fastest motion: such a setup is not simulated.</param>
public sealed record StepChoice(double StepSeconds, string? Reason, bool Workable = true)
{
    /// <summary>The step that is used when none is asked for, s.</summary>
    public const double DefaultSeconds = 50e-6;

    /// <summary>Greatest electrical angle that the rotor may turn in a step, rad (the averaging of torque and back-EMF is good to this).</summary>
    public const double GreatestSweepRadians = 0.38;

    /// <summary>Greatest angle of the fastest mechanical mode in a step, rad (accuracy; the scheme is stable to 2), and greatest share by which the bus voltage may change.</summary>
    public const double GreatestModeRadians = 0.38;

    private static readonly double[] Steps = [50e-6, 40e-6, 25e-6, 20e-6, 12.5e-6, 10e-6, 8e-6, 5e-6, 4e-6, 2.5e-6, 2e-6, 1.25e-6, 1e-6, 0.5e-6, 0.25e-6, 0.1e-6];

    /// <summary>Chooses the step: the asked one if it is short enough for the speed and the modes, else the next shorter of a fixed list.</summary>
    public static StepChoice For(double askedSeconds, double teeth, double peakSpeedRadiansPerSecond, double fastestModeRadiansPerSecond)
    {
        double electrical = teeth * peakSpeedRadiansPerSecond;
        double bySpeed = electrical > 0.0 ? GreatestSweepRadians / electrical : double.PositiveInfinity;
        double byMode = fastestModeRadiansPerSecond > 0.0 ? GreatestModeRadians / fastestModeRadiansPerSecond : double.PositiveInfinity;
        double limit = Math.Min(bySpeed, byMode);
        if (askedSeconds <= limit)
        {
            return new StepChoice(askedSeconds, null);
        }

        double step = Array.Find(Steps, s => s <= limit && s <= askedSeconds);
        bool workable = step > 0.0;
        if (!workable)
        {
            step = Steps[^1];
        }

        string why = bySpeed <= byMode
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"the motor turns {electrical * askedSeconds:0.00} electrical rad in {askedSeconds * 1e6:0.##} us; up to {GreatestSweepRadians} is accurate")
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"the fastest swing, decay or change of the bus voltage ({fastestModeRadiansPerSecond:0} rad/s) goes through {fastestModeRadiansPerSecond * askedSeconds:0.00} rad in {askedSeconds * 1e6:0.##} us; up to {GreatestModeRadians} is accurate");
        return new StepChoice(step, why, workable);
    }

    /// <summary>Chooses the step for one axis of a mount and its move.</summary>
    public static StepChoice For(MountSetup setup, MountAxis axis, double askedSeconds)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return new LaneAxis(setup, axis, new MovePlan(setup), askedSeconds).Choice;
    }

    internal static StepChoice For(double askedSeconds, AxisModel model, AxisParameters parameters, MotorPlan plan)
    {
        double current = Math.Max(model.Drive.SlewCurrentAmperes, Math.Max(model.Drive.HoldingCurrentAmperes, model.Drive.TrackingCurrentAmperes));
        double field = model.Motor.TorqueConstantNewtonMetresPerAmpere * current * Math.Sqrt(2.0) * model.Drive.FullStepCurrentFraction;
        double magnetic = model.Motor.RotorTeeth * (field + (4.0 * model.Motor.DetentTorqueNewtonMetres));
        double stage = parameters.StageMesh.Stiffness;
        double rotorStiffness = magnetic + (parameters.ShaftInertia > 0.0
            ? stage / (parameters.StageRatio * parameters.StageRatio)
            : parameters.Mesh.Stiffness / (parameters.WormRatio * parameters.WormRatio));
        double mode = Math.Sqrt(rotorStiffness / parameters.RotorInertia);
        if (parameters.ShaftInertia > 0.0)
        {
            mode = Math.Max(mode, Math.Sqrt((stage + (parameters.Mesh.Stiffness / (parameters.WormRatio * parameters.WormRatio))) / parameters.ShaftInertia));
        }

        mode = Math.Max(mode, Math.Sqrt((parameters.Mesh.Stiffness + parameters.PayloadStiffness) / parameters.AxisInertia));
        if (parameters.PayloadInertia > 0.0)
        {
            mode = Math.Max(mode, Math.Sqrt(parameters.PayloadStiffness / parameters.PayloadInertia));
        }

        // At the voltage limit the rotor swings on its own back-EMF through the inductance; a resistance only slows that down.
        mode = Math.Max(mode, model.Motor.TorqueConstantNewtonMetresPerAmpere / Math.Sqrt(model.Motor.InductanceHenries * parameters.RotorInertia));
        double fastest = Math.Max(mode, Math.Max(Decay(parameters), SupplyLaw.GreatestRate(model.Drive)));
        return For(askedSeconds, model.Motor.RotorTeeth, plan.PeakSpeed, fastest);
    }

    /// <summary>Fastest decay by viscous damping, 1/s.</summary>
    private static double Decay(AxisParameters p)
    {
        double node = p.ShaftInertia > 0.0 ? p.ShaftInertia : p.RotorInertia;
        double decay = Math.Max((p.RotorViscous + p.PlanDamping) / p.RotorInertia, (p.AxisViscous + p.Mesh.Damping) / p.AxisInertia);
        decay = Math.Max(decay, p.Mesh.Damping / (p.WormRatio * p.WormRatio * node));
        decay = p.ShaftInertia > 0.0 ? Math.Max(decay, p.StageMesh.Damping / p.ShaftInertia) : decay;
        return p.PayloadInertia > 0.0 ? Math.Max(decay, p.PayloadDamping * ((1.0 / p.PayloadInertia) + (1.0 / p.AxisInertia))) : decay;
    }
}
