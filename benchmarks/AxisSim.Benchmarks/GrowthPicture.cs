using System.Diagnostics;
using System.Globalization;
using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Plots;
using AxisSim.Plots.Drawing;
using AxisSim.Plots.Pictures;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Benchmarks;

/// <summary>How a map's time and memory grow with its cells and with the time simulated.</summary>
/// <remarks>Cells are made, run and forgotten by tiles, as the map does it; memory is the greatest working set of the process, so sizes ascend.</remarks>
internal static class GrowthPicture
{
    private const int Tile = 4096;

    public static void Draw(string path, TextWriter output)
    {
        // A first batch, so that compiling is not measured.
        Seconds(Tile, 0.5);
        List<GrowthPoint> bySeconds = [];
        foreach (double simulated in new[] { 2.0, 5.0, 10.0, 20.0, 40.0 })
        {
            bySeconds.Add(Say(output, "simulated_s", simulated, Seconds(1024, simulated), "s"));
        }

        List<GrowthPoint> byCells = [];
        List<GrowthPoint> memory = [];
        foreach (int cells in new[] { 1_000, 4_000, 16_000, 64_000, 256_000, 1_000_000 })
        {
            byCells.Add(Say(output, "cells", cells, Seconds(cells, 0.5), "s"));
            using var process = Process.GetCurrentProcess();
            memory.Add(Say(output, "cells", cells, process.PeakWorkingSet64 / 1e6, "MB"));
        }

        IFigure figure = GrowthFigure.Create(
            "Cost of many moves",
            "Run time grows in proportion to cells and to the time simulated; memory does not grow.",
            [
                new GrowthCurve("Run time of 1024 moves", "Time simulated in each, s", "Run time, s", bySeconds),
                new GrowthCurve("Run time of moves of 0.5 s", "Cells, 1", "Run time, s", byCells),
                new GrowthCurve("Greatest working set", "Cells, 1", "Memory, MB", memory),
            ]);
        using FileStream stream = File.Create(path);
        FigureWriter.WritePng(figure, stream, 1.5);
    }

    private static GrowthPoint Say(TextWriter output, string what, double size, double cost, string unit)
    {
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what} {size:0.###}: {cost:0.000} {unit}"));
        return new GrowthPoint(size, cost);
    }

    private static double Seconds(int cells, double simulated)
    {
        // 0.3 s are watched after the slew; a ramp of a tenth of the slew.
        double slew = simulated - 0.3;
        long start = Stopwatch.GetTimestamp();
        for (int done = 0; done < cells; done += Tile)
        {
            BatchCase[] tile = [.. Enumerable.Range(done, Math.Min(Tile, cells - done)).Select(i => Case(i % 100, slew))];
            BatchStudy.Run(tile, new BatchOptions());
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static BatchCase Case(int row, double slew)
    {
        double rate = 3.0 * BenchmarkCase.Degree;
        AxisModel axis = BenchmarkCase.Axis with { Motion = new AxisMotion { SlewRateRadiansPerSecond = rate, Ramp = Ramp.OfSeconds(0.1 * slew) } };
        return new BatchCase(BenchmarkCase.Setup(axis, -0.02 * row, rate * 0.9 * slew, 1.0), MountAxis.Polar);
    }
}
