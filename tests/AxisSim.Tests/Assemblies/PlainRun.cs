using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;

namespace AxisSim.Tests.Assemblies;

/// <summary>A move put together from the laws one by one, in SI units and without any arrangement for speed: what the lanes are held against.</summary>
internal sealed class PlainRun
{
    private readonly MotorPlan _plan;
    private readonly double _step;
    private AxisDynamics<ChopperStepper, PlainLoad> _dynamics;
    private long _index;

    public PlainRun(MountSetup setup, MountAxis axis, double stepSeconds)
    {
        AxisModel model = setup.Axis(axis);
        var plan = new MovePlan(setup);
        _plan = plan.For(axis, setup.Move, model.Train.TotalRatio);
        AxisParameters parameters = AxisAssembly.Parameters(setup, axis);
        _step = StepChoice.For(stepSeconds, model, parameters, _plan).StepSeconds;
        double amplitude = setup.Disturbances.SyncProbe ? SyncProbe.HoldingTorqueShare * model.Motor.HoldingTorqueNewtonMetres : 0.0;
        var load = new PlainLoad(setup, axis, plan, new SyncProbe(amplitude, _plan.SlewSeconds), parameters.ShaftInertia > 0.0, parameters.WormRatio);
        double start = axis == MountAxis.Polar ? setup.Move.Start.PolarRadians : setup.Move.Start.DeclinationRadians;
        AxisState state = AxisAssembly.Start(parameters, -load.Outside(start, 0.0), _plan, model.Train.Worm.PeriodicError, model.Train.Worm.Ratio);
        _dynamics = new AxisDynamics<ChopperStepper, PlainLoad>(parameters, Motor(model, setup, axis), load, state);
    }

    public double TimeSeconds => _index * _step;

    public AxisState State => _dynamics.State;

    public ChopperStepper Stepper => _dynamics.Motor;

    public double MeshTorque => _dynamics.MeshTorque;

    public void RunTo(double seconds)
    {
        while (TimeSeconds < seconds)
        {
            _dynamics.Load.BeginBlock(_dynamics.State, TimeSeconds, MoveRun.BlockSteps * _step);
            for (int k = 0; k < MoveRun.BlockSteps; k++)
            {
                double from = _index * _step;
                _index++;
                _dynamics.Step(new StepContext(from, _step, _plan.Position(from), _plan.Position(_index * _step)));
            }

            _dynamics.Motor.EndBlock(MoveRun.BlockSteps * _step);
        }
    }

    private ChopperStepper Motor(AxisModel model, MountSetup setup, MountAxis axis)
    {
        ChopperDrive drive = model.Drive;
        double afterwards = setup.Tracks(axis) ? drive.TrackingCurrentAmperes : drive.HoldingCurrentAmperes;
        IReadOnlyList<(double TimeSeconds, bool Above)> modes = _plan.Crossings(drive.ChangeoverRadiansPerSecond);
        double fall = _plan.SlewSeconds + drive.CurrentFallDelaySeconds;
        List<DriveEvent> events = [.. modes.Select(m => new DriveEvent(m.TimeSeconds, m.TimeSeconds < fall ? drive.SlewCurrentAmperes : afterwards, m.Above))];
        if (afterwards != drive.SlewCurrentAmperes)
        {
            events.Add(new DriveEvent(fall, afterwards, modes[^1].Above));
        }

        var command = new PhaseCommand(new MicrostepTable(drive.MicrostepsPerFullStep), model.Motor.RotorTeeth, drive.FullStepCurrentFraction, [.. events.OrderBy(e => e.TimeSeconds)]);
        var heat = new WindingHeat(setup.Disturbances.AmbientCelsius, model.Motor.ThermalResistanceKelvinPerWatt, model.Motor.ThermalTimeConstantSeconds);
        var motor = new ChopperStepper(model.Motor, drive, command, heat, _step);
        double electrical = model.Motor.RotorTeeth * _plan.Position(0.0);
        motor.SetCurrents(drive.SlewCurrentAmperes * Math.Cos(electrical), drive.SlewCurrentAmperes * Math.Sin(electrical));
        return motor;
    }
}
