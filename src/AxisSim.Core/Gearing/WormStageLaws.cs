using AxisSim.Core.Sky;

namespace AxisSim.Core.Gearing;

/// <summary>What follows from a worm's data: efficiencies, self-locking and worm period.</summary>
/// <remarks>
/// Efficiencies are of the mesh only. A friction factor k (cold grease) multiplies the friction coefficient; for plain efficiencies
/// it multiplies the losses <c>1/e - 1</c> and <c>1 - eb</c>, which are proportional to friction when friction is small.
/// </remarks>
public static class WormStageLaws
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
}
