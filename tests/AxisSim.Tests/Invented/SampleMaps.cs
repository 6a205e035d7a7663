using AxisSim.Plots.Pictures;

namespace AxisSim.Tests.Invented;

/// <summary>Maps made by hand for the figures.</summary>
internal static class SampleMaps
{
    /// <summary>Slew rate against ramp, with a stall edge, an island, clutch slip at short ramps, and a margin that falls with rate.</summary>
    public static MapPicture Margin(int columns, int rows)
    {
        double[] rates = [.. Enumerable.Range(0, columns).Select(i => 0.5 + (4.5 * i / Math.Max(1, columns - 1)))];
        double[] ramps = [.. Enumerable.Range(0, rows).Select(i => 0.1 * Math.Pow(60.0, (double)i / Math.Max(1, rows - 1)))];
        var cells = new MapCell[columns * rows];
        double[] margin = new double[columns * rows];
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                double rate = rates[column], ramp = ramps[row], need = (rate / 5.0) + (0.12 * rate / ramp);
                double away = double.Hypot(rate - 1.6, Math.Log(ramp / 1.5));
                int cell = (row * columns) + column;
                cells[cell] = rate / ramp > 9.0 ? MapCell.ClutchSlips : need > 0.85 || away < 0.25 ? MapCell.Stalls : MapCell.Arrives;
                margin[cell] = 100.0 * (1.0 - need);
            }
        }

        return new MapPicture
        {
            Title = "Harrow Fell Observatory: torque margin over slew rate and ramp",
            Sentence = "Arrives at 2.5 deg/s with a ramp of 2 s, with 44 % of torque to spare.",
            X = new MapAxis("Slew rate, deg/s", rates),
            Y = new MapAxis("Ramp time, s", ramps, Logarithmic: true),
            Cells = cells,
            Metric = new MapTones("Torque margin, %", margin),
            Point = new MapPoint(2.5, 2.0, "this scenario: 2.5 deg/s, 2 s"),
        };
    }

    /// <summary>Each kind of cell in blocks.</summary>
    public static MapPicture EveryKind()
    {
        const int columns = 16, rows = 8;
        MapCell[] kinds = Enum.GetValues<MapCell>();
        return new MapPicture
        {
            Title = "Every kind",
            Sentence = "Outcomes over current and mass.",
            X = new MapAxis("Slew current, A", [.. Enumerable.Range(1, columns).Select(i => 0.1 * i)]),
            Y = new MapAxis("Mass of the tube, kg", [.. Enumerable.Range(1, rows).Select(i => 2.0 * i)]),
            Cells = [.. Enumerable.Range(0, columns * rows).Select(i => kinds[((i % columns / 4) + (4 * (i / columns / 4))) % kinds.Length])],
            Point = new MapPoint(0.9, 9.0, "as the file has it"),
        };
    }

    /// <summary>A map of one kind only, with values.</summary>
    public static MapPicture All(MapCell cell, int columns, int rows, double value) => Margin(columns, rows) with
    {
        Cells = [.. Enumerable.Repeat(cell, columns * rows)],
        Metric = new MapTones("Settling, s", [.. Enumerable.Repeat(value, columns * rows)]),
    };
}
