using System.Numerics;

namespace AxisSim.Core.Gearing;

/// <summary>The reduction of a train as a fraction of whole numbers, from its teeth.</summary>
/// <remarks>
/// <c>n = (z2/z1) (z4/z3) ... (zw/s)</c> with z teeth of driven over driving wheels, zw those of the worm wheel, s starts of the worm. A ratio that was
/// given as a number with a decimal part has no teeth to take it from, so the product is then known in decimals only.
/// </remarks>
public static class ExactReduction
{
    /// <summary>Whole numbers up to here are exact in a double.</summary>
    private const double LargestExact = 9007199254740992.0;

    /// <summary>The fraction; null when the ratio of a stage is not made of whole numbers.</summary>
    public static Fraction? Of(GearTrain train)
    {
        Fraction total = new(train.Worm.WheelTeeth, train.Worm.Starts);
        foreach (GearStage stage in train.Stages)
        {
            if (!IsCount(stage.DrivenTeeth) || !IsCount(stage.DrivingTeeth))
            {
                return null;
            }

            total = total.Times(new Fraction(new BigInteger(stage.DrivenTeeth), new BigInteger(stage.DrivingTeeth)));
        }

        return total;
    }

    /// <summary>Stages whose ratio was given as a number, not by teeth: a catalogue may have rounded it.</summary>
    public static IReadOnlyList<GearStage> GivenAsNumber(GearTrain train) => [.. train.Stages.Where(stage => stage.DrivingTeeth == 1.0)];

    private static bool IsCount(double value) => value >= 1.0 && value <= LargestExact && value == Math.Floor(value);
}
