namespace AxisSim.Core.Gearing;

/// <summary>What follows from a train's data: efficiencies, self-locking, reflected inertia.</summary>
/// <remarks>Efficiencies are of the meshes only. The stages' plain efficiencies count the same in either direction.</remarks>
public static class GearTrainLaws
{
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
