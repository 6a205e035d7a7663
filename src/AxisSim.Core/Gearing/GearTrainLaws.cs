using AxisSim.Core.Sky;

namespace AxisSim.Core.Gearing;

/// <summary>What follows from a worm's and a train's data: efficiencies, self-locking, worm period, reflected inertia.</summary>
/// <remarks>
/// Efficiencies are of the meshes only. A friction factor k (cold grease) multiplies the worm's friction coefficient; for plain efficiencies
/// it multiplies the losses <c>1/e - 1</c> and <c>1 - eb</c>, which are proportional to friction when friction is small.
/// The stages' plain efficiencies count the same in either direction and are not scaled.
/// </remarks>
public static class GearTrainLaws
{
    extension(WormStage worm)
    {
        /// <summary>Driving efficiency of the worm at room temperature.</summary>
        public double DrivingEfficiency => worm.DrivingEfficiencyWith(1.0);

        /// <summary>Back-driving efficiency of the worm at room temperature; zero or negative when it locks itself.</summary>
        public double BackDrivingEfficiency => worm.BackDrivingEfficiencyWith(1.0);

        /// <summary>Whether the wheel cannot turn the worm.</summary>
        public bool SelfLocking => worm.BackDrivingEfficiency <= 0.0;

        /// <summary>Time of one worm turn at the mean sidereal rate, s: sidereal day times starts over wheel teeth.</summary>
        public double WormPeriodSeconds => SkyRates.MeanSiderealDaySeconds / worm.Ratio;

        /// <summary>Driving efficiency with friction times a factor.</summary>
        public double DrivingEfficiencyWith(double frictionFactor) => worm.GivenDrivingEfficiency is { } given
            ? 1.0 / (1.0 + (frictionFactor * ((1.0 / given) - 1.0)))
            : WormLaw.DrivingEfficiency(worm.LeadAngleRadians, frictionFactor * worm.FrictionCoefficient, worm.PressureAngleRadians);

        /// <summary>Back-driving efficiency with friction times a factor; a plain driving efficiency e alone implies <c>2 - 1/e</c>.</summary>
        public double BackDrivingEfficiencyWith(double frictionFactor)
        {
            double? given = worm.GivenBackDrivingEfficiency ?? (2.0 - (1.0 / worm.GivenDrivingEfficiency));
            return given is { } plain
                ? 1.0 - (frictionFactor * (1.0 - plain))
                : WormLaw.BackDrivingEfficiency(worm.LeadAngleRadians, frictionFactor * worm.FrictionCoefficient, worm.PressureAngleRadians);
        }
    }

    extension(GearTrain train)
    {
        /// <summary>Product of the efficiencies of the stages before the worm, equal in both directions.</summary>
        public double StageEfficiency => train.Stages.Aggregate(1.0, (product, stage) => product * stage.Efficiency);

        /// <summary>Driving efficiency from motor shaft to axis.</summary>
        public double DrivingEfficiency => train.StageEfficiency * train.Worm.DrivingEfficiency;

        /// <summary>Efficiency from axis to motor shaft; when the worm locks itself, its own negative figure times that of the stages.</summary>
        public double BackDrivingEfficiency => train.StageEfficiency * train.Worm.BackDrivingEfficiency;

        /// <summary>Whether the axis cannot turn the motor.</summary>
        public bool SelfLocking => train.Worm.SelfLocking;

        /// <summary>Inertia of the stages' driven wheels and the worm seen at the motor shaft, kg m2: each over the square of the ratio before it.</summary>
        public double ReflectedTrainInertia
        {
            get
            {
                double ratio = 1.0;
                double sum = 0.0;
                foreach (GearStage stage in train.Stages)
                {
                    ratio *= stage.Ratio;
                    sum += stage.InertiaKilogramSquareMetres / (ratio * ratio);
                }

                return sum + (train.Worm.InertiaKilogramSquareMetres / (ratio * ratio));
            }
        }

        /// <summary>An inertia at the axis seen at the motor shaft, kg m2: <c>J/n2</c>.</summary>
        public double ReflectedToMotor(double axisInertiaKilogramSquareMetres) =>
            axisInertiaKilogramSquareMetres / (train.TotalRatio * train.TotalRatio);
    }
}
