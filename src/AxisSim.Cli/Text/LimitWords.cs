using AxisSim.Core.Questions;

namespace AxisSim.Cli.Text;

/// <summary>What limits a move, in the same words in every command.</summary>
internal static class LimitWords
{
    /// <summary>In a table: a word or two.</summary>
    public static string Short(Limit limit) => limit switch
    {
        Limit.SupplyVoltage => "voltage",
        Limit.Inertia => "inertia",
        Limit.Imbalance => "imbalance",
        Limit.Friction => "friction",
        Limit.TrainLoss => "gear loss",
        Limit.Wind => "wind",
        Limit.Combined => "all loads",
        Limit.Swings => "swings",
        Limit.Clutch => "clutch",
        Limit.PulseRate => "pulses",
        Limit.MoveLength => "move",
        Limit.MotorSpeed => "speed",
        Limit.Temperature => "heat",
        _ => "not run",
    };

    /// <summary>In a sentence, as what binds.</summary>
    public static string Noun(Limit limit) => limit switch
    {
        Limit.SupplyVoltage => "the supply voltage",
        Limit.Inertia => "inertia",
        Limit.Imbalance => "the imbalance",
        Limit.Friction => "friction",
        Limit.TrainLoss => "the loss in worm and stages",
        Limit.Wind => "the wind",
        Limit.Combined => "all loads together",
        Limit.Swings => "swings of the rotor",
        Limit.Clutch => "the clutch",
        Limit.PulseRate => "the controller's pulse rate",
        Limit.MoveLength => "the length of the move",
        Limit.MotorSpeed => "the speed of the motor",
        Limit.Temperature => "the temperature of the winding",
        _ => "the simulation itself (such speeds need too short a step)",
    };

    /// <summary>Why a faster slew fails, as a clause without a capital.</summary>
    public static string Why(Limit limit) => limit switch
    {
        Limit.SupplyVoltage => "the supply voltage cannot drive enough current at that speed: with ample voltage it would arrive",
        Limit.Inertia => "the ramp asks for more acceleration than the motor can give to this mass",
        Limit.Imbalance => "lifting the heavy side, with the loss in the worm that it brings, takes more torque than the motor has to spare",
        Limit.Friction => "friction of bearings and seals, with the loss in the worm that it brings, takes more torque than the motor has to spare",
        Limit.TrainLoss => "worm and stages take more torque than the motor has to spare",
        Limit.Wind => "standing against the wind takes more torque than the motor has to spare",
        Limit.Combined => "several loads together are too much for the motor, and none of them alone is to blame",
        Limit.Swings => "stepping at that speed makes the rotor swing until it falls out of step: torque alone would be enough",
        Limit.Clutch => "the clutch slips",
        Limit.PulseRate => "the controller cannot pulse faster",
        Limit.MoveLength => "both ramps together take the whole move, which gets no faster with this ramp",
        Limit.MotorSpeed => $"faster, the motor has less than {Units.Percent(RateCap.LeastTorqueShare)} of its holding torque",
        Limit.Temperature => "slewing without end, the winding would pass the limit of its insulation",
        _ => "it is too fast to simulate",
    };

    /// <summary>A change of one thing, after "it would arrive".</summary>
    public static string With(OneChange change) => change switch
    {
        OneChange.AmpleVoltage => "with ten times the supply voltage",
        OneChange.WithoutImbalance => "without imbalance",
        OneChange.WithoutWind => "without wind",
        OneChange.WithoutFriction => "without friction of bearings and seals",
        OneChange.WithoutTrainLoss => "without loss in worm and stages",
        OneChange.TenthOfInertia => "with a tenth of the inertia",
        OneChange.WithoutFullStepping => "if the drive microstepped throughout",
        OneChange.DampedRotor => "if the rotor's swings were damped to half of critical",
        _ => "with a clutch that cannot slip",
    };
}
