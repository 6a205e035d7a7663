using AxisSim.Plots.Drawing;

namespace AxisSim.Report.Sheets;

/// <summary>Where everything of a sheet stands on its page.</summary>
internal sealed class SheetLayout(SettingsSheet sheet, double left, double top, double width)
{
    private const double TitleScale = 1.5;
    private const double HeadScale = 1.15;
    private const double SmallScale = 0.84;

    /// <summary>The numbers take this share of the width, the checks beside them the rest.</summary>
    private const double SettingsShare = 0.63;

    private const double Gutter = 16.0;

    /// <summary>Sets everything and gives the height that it takes, px.</summary>
    public double Set(SheetPen pen)
    {
        double y = top;
        if (sheet.Warning is { } warning)
        {
            double height = pen.Height(warning, width - 12.0, bold: true, TitleScale);
            pen.Box(left, y, width, height + 6.0, Palette.Ink, Palette.Ink);
            pen.Text(warning, left + 6.0, y + 3.0, width - 12.0, bold: true, TitleScale, Palette.Paper);
            y += height + 10.0;
        }

        y += pen.Text(sheet.Title, left, y, width, bold: true, TitleScale);
        y += pen.Text(sheet.Verdict, left, y, width) + 4.0;
        double settings = Math.Round(SettingsShare * width), rest = width - settings - Gutter;
        y = Math.Max(Settings(pen, y, settings), Checks(pen, y, left + settings + Gutter, rest)) + 5.0;
        y = Steps(pen, y) + 4.0;
        y += pen.Text(sheet.Caution, left, y, width, bold: true, SmallScale) + 1.0;
        y += pen.Text(sheet.Provenance, left, y, width, scale: SmallScale, colour: Palette.QuietInk);
        return y - top;
    }

    private double Settings(SheetPen pen, double y, double room)
    {
        int axes = sheet.Axes.Count;
        double value = room * (axes > 1 ? 0.22 : 0.3), unit = room * 0.155, name = room - unit - (axes * value);
        double X(int axis) => left + name + unit + (axis * value);
        y += pen.Text("Numbers to enter", left, y, name + unit - 4.0, bold: true, HeadScale);
        double head = 0.0;
        for (int i = 0; i < axes; i++)
        {
            head = Math.Max(head, pen.Text(sheet.Axes[i], X(i), y - (pen.LineHeight * HeadScale), value - 4.0, bold: true));
        }

        y += Math.Max(0.0, head - (pen.LineHeight * HeadScale));
        foreach (SheetGroup group in sheet.Settings)
        {
            pen.Rule(left, y + 0.5, room, Palette.Frame);
            string title = group.Name;
            foreach (SheetRow row in group.Rows)
            {
                // The group's name stands before its first row, so that it costs no line.
                string label = title.Length > 0 ? (row.Name.Length > 0 ? $"{title}: {char.ToLowerInvariant(row.Name[0])}{row.Name[1..]}" : title) : row.Name;
                title = "";
                double height = pen.Row(y + 1.0, (label, left, name - 4.0, false), (row.Unit, left + name, unit - 4.0, false));
                for (int i = 0; i < axes; i++)
                {
                    height = Math.Max(height, pen.Row(y + 1.0, (row.Values[i], X(i), value - 4.0, true)));
                }

                y += height;
            }

            y += 2.0;
        }

        pen.Rule(left, y + 0.5, room, Palette.Frame);
        return y + 2.0;
    }

    private double Checks(SheetPen pen, double y, double x, double room)
    {
        double box = pen.Size, hang = box + 5.0;
        y += pen.Text("Check first, in this order", x, y, room, bold: true, HeadScale) + 1.0;
        foreach (string check in sheet.Checks)
        {
            pen.Box(x, y + 2.0, box - 2.0, box - 2.0, Palette.Paper, Palette.Ink);
            y += pen.Text(check, x + hang, y, room - hang) + 2.0;
        }

        foreach (string note in sheet.Notes)
        {
            y += pen.Text(note, x, y, room, scale: SmallScale, colour: Palette.QuietInk) + 1.0;
        }

        return y;
    }

    private double Steps(SheetPen pen, double y)
    {
        // For each axis what is expected, and a line to write beside it.
        int axes = sheet.Axes.Count;
        double room = width * (axes > 1 ? 0.31 : 0.45), value = room * 0.46, blank = room - value - 8.0, name = width - (axes * room);
        double X(int axis) => left + name + (axis * room);
        y += pen.Text("First power-on: slow and light first", left, y, name, bold: true, HeadScale);
        for (int i = 0; i < axes; i++)
        {
            pen.Row(y - pen.LineHeight, (sheet.Axes[i], X(i), value + 20.0, true), ("measured", X(i) + value + 24.0, blank, false));
        }

        for (int i = 0; i < sheet.Steps.Count; i++)
        {
            SheetStep step = sheet.Steps[i];
            pen.Rule(left, y + 0.5, width, Palette.Frame);
            y += pen.Text($"{i + 1}. {step.Title}. {step.Do}", left, y + 1.0, width, bold: true) + 1.0;
            foreach (SheetRow row in step.Expected)
            {
                double height = pen.Text(row.Unit.Length > 0 ? $"{row.Name}, {row.Unit}" : row.Name, left + 12.0, y, name - 16.0);
                for (int axis = 0; axis < axes; axis++)
                {
                    height = Math.Max(height, pen.Text(row.Values[axis], X(axis), y, value - 4.0, bold: true));
                    pen.Rule(X(axis) + value, y + pen.LineHeight - 1.5, blank, Palette.Frame, 0.5);
                }

                y += height;
            }

            y += pen.Text("Stop if " + step.StopIf, left + 12.0, y, width - 12.0) + 1.0;
        }

        pen.Rule(left, y + 0.5, width, Palette.Frame);
        return y + 2.0;
    }
}
