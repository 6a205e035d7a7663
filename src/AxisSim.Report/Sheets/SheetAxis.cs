using AxisSim.Core.Gearing;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Report.Sheets;

/// <summary>One axis as the sheet needs it.</summary>
/// <param name="Model">The axis.</param>
/// <param name="Result">What came of its move.</param>
/// <param name="Slews">Its move at a quarter, half and all of the slew rate.</param>
internal sealed record SheetAxis(AxisModel Model, AxisResult Result, IReadOnlyList<SlewStage> Slews)
{
    /// <summary>What follows from its settings.</summary>
    public DerivedFacts Facts => Result.Outcome.Facts;

    /// <summary>The reduction in whole numbers; null when it is known in decimals only.</summary>
    public Fraction? Reduction => ExactReduction.Of(Model.Train);

    /// <summary>Pulses of one motor turn.</summary>
    public int PulsesPerMotorTurn => Model.Motor.StepsPerRevolution * Model.Drive.MicrostepsPerFullStep;

    /// <summary>Backlash at the axis, the stages' included, rad.</summary>
    public double BacklashRadians
    {
        get
        {
            double after = Model.Train.TotalRatio;
            double sum = Model.Train.BacklashRadians;
            foreach (GearStage stage in Model.Train.Stages)
            {
                after /= stage.Ratio;
                sum += stage.BacklashRadians / after;
            }

            return sum;
        }
    }
}
