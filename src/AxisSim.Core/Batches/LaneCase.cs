using AxisSim.Core.Dynamics;
using AxisSim.Core.Lanes;
using AxisSim.Core.Motion;
using AxisSim.Core.Studies;

namespace AxisSim.Core.Batches;

/// <summary>A case made ready for a lane.</summary>
internal sealed class LaneCase
{
    private readonly BatchCase _item;
    private readonly MovePlan _plan;
    private readonly MotorPlan _shaftPlan;

    public LaneCase(int index, BatchCase item, double stepSeconds)
    {
        Index = index;
        _item = item;
        AxisModel model = item.Setup.Axis(item.Axis);
        _plan = new MovePlan(item.Setup);
        _shaftPlan = _plan.For(item.Axis, item.Setup.Move, model.Train.TotalRatio);
        AxisParameters parameters = AxisAssembly.Parameters(item.Setup, item.Axis);
        Choice = StepChoice.For(stepSeconds, model, parameters, _shaftPlan);
        if (!Choice.Workable)
        {
            return;
        }

        Features = LaneRows.Features(item.Setup, item.Axis, parameters);
        Terms = LaneRows.Terms(item.Setup, item.Axis);
        Parameters = LaneRows.Parameters(item.Setup, item.Axis, parameters, Choice.StepSeconds);
        Start = LaneRows.Start(item.Setup, item.Axis, _plan, _shaftPlan, parameters, Parameters);
        Key = new TeamKey(Numbers(model));
    }

    public int Index { get; }

    public StepChoice Choice { get; }

    public LaneFeatures Features { get; }

    public LaneTerms Terms { get; }

    public LaneParameters Parameters { get; }

    public LaneState Start { get; }

    /// <summary>Equal for cases that get the same commands, sky and plan.</summary>
    public TeamKey? Key { get; }

    public double SlewSeconds => _plan.SlewSeconds;

    /// <summary>Time to which it is run, s.</summary>
    public double UntilSeconds => _plan.SlewSeconds + Arrival.BeyondSeconds;

    public LaneCommands Commands() => new(_item.Setup.Axis(_item.Axis), _shaftPlan, _item.Setup.Disturbances.SyncProbe, Choice.StepSeconds);

    public LaneSkies Skies() => new(_item.Setup, _item.Axis, _plan);

    private IEnumerable<double> Numbers(AxisModel model)
    {
        Disturbances wind = _item.Setup.Disturbances;
        return
        [
            model.Motor.RotorTeeth, model.Drive.ChangeoverRadiansPerSecond, model.Drive.CurrentFallDelaySeconds, model.Drive.MicrostepsPerFullStep, UntilSeconds, wind.SyncProbe ? 1.0 : 0.0,
            wind.WindMetresPerSecond, wind.AirDensityKilogramsPerCubicMetre, wind.DragCoefficient, wind.AreaSquareMetres, wind.LeverMetres, wind.GustMetresPerSecond,
            wind.GustStartSeconds, wind.GustSeconds, wind.TurbulenceIntensity, wind.TurbulenceLengthMetres, wind.TurbulenceSeed,
            .. _shaftPlan.Numbers,
            .. _plan.At(_item.Axis == Sky.MountAxis.Polar ? Sky.MountAxis.Declination : Sky.MountAxis.Polar).Numbers,
        ];
    }
}

/// <summary>Numbers that are compared bit by bit.</summary>
internal sealed class TeamKey : IEquatable<TeamKey>
{
    private readonly double[] _numbers;
    private readonly int _hash;

    public TeamKey(IEnumerable<double> numbers)
    {
        _numbers = [.. numbers];
        var hash = default(HashCode);
        foreach (double number in _numbers)
        {
            hash.Add(number);
        }

        _hash = hash.ToHashCode();
    }

    public bool Equals(TeamKey? other) => other is not null && _numbers.AsSpan().SequenceEqual(other._numbers);

    public override bool Equals(object? obj) => Equals(obj as TeamKey);

    public override int GetHashCode() => _hash;
}
