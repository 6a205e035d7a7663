using AxisSim.Plots.Drawing;

namespace AxisSim.Report.Sheets;

/// <summary>Where everything of a side of a sheet stands on its page.</summary>
internal sealed class SheetLayout(SettingsSheet sheet, SheetSide side, double left, double top, double width)
{
    private const double TitleScale = 1.5;
    private const double HeadScale = 1.15;
    private const double SmallScale = 0.84;

    /// <summary>The numbers take this share of the width, the notes beside them the rest.</summary>
    private const double SettingsShare = 0.72;

    private const double Gutter = 16.0;

    /// <summary>Sets everything and gives the height that it takes, px.</summary>
    public double Set(SheetPen pen)
    {
        double y = Head(pen, top);
        if (side == SheetSide.Numbers)
        {
            y = sheet.Typed is { } typed ? Typed(pen, y, typed) : y;
            double settings = Math.Round(SettingsShare * width), rest = width - settings - Gutter;
            y = Math.Max(Settings(pen, y, settings), Notes(pen, y, left + settings + Gutter, rest)) + 5.0;
        }
        else
        {
            y = Checks(pen, y) + 4.0;
            y = Steps(pen, y) + 4.0;
        }

        y += pen.Text(sheet.Caution, left, y, width, bold: true, SmallScale) + 1.0;
        y += pen.Text(sheet.Provenance, left, y, width, scale: SmallScale, colour: Palette.QuietInk);
        return y - top;
    }

    // A warning stands on both sides: either may lie on top.
    private double Head(SheetPen pen, double y)
    {
        if (sheet.Warning is { } warning)
        {
            double height = pen.Height(warning, width - 12.0, bold: true, TitleScale);
            pen.Box(left, y, width, height + 6.0, Palette.Ink, Palette.Ink);
            pen.Text(warning, left + 6.0, y + 3.0, width - 12.0, bold: true, TitleScale, Palette.Paper);
            y += height + 10.0;
        }

        y += pen.Text(sheet.Title, left, y, width, bold: true, TitleScale);
        y += pen.Text(sheet.Verdict, left, y, width);
        y += pen.Text(side == SheetSide.Numbers ? "Side 1 of 2: numbers to enter. What to check before there is power is on side 2: begin there." : "Side 2 of 2: check first, then the first power-on. The numbers to enter are on side 1.", left, y, width, scale: SmallScale, colour: Palette.QuietInk);
        return y + 4.0;
    }

    private double Typed(SheetPen pen, double y, SheetTyped typed)
    {
        int axes = sheet.Axes.Count;
        double value = width * (axes > 1 ? 0.24 : 0.3), unit = width * 0.19, name = width - unit - (axes * value);
        double X(int axis) => left + name + unit + (axis * value);
        double below = y + pen.Text(typed.Title, left, y, name + unit - 4.0, bold: true, HeadScale);
        for (int i = 0; i < axes; i++)
        {
            pen.Row(below - pen.LineHeight, (sheet.Axes[i], X(i), value - 4.0, true));
        }

        double Row(SheetRow row, double at)
        {
            double height = pen.Row(at, (row.Name, left, name - 4.0, false), (row.Unit, left + name, unit - 4.0, false));
            for (int i = 0; i < axes; i++)
            {
                height = Math.Max(height, pen.Row(at, (row.Values[i], X(i), value - 4.0, true)));
            }

            return at + height;
        }

        pen.Rule(left, below + 0.5, width, Palette.Frame);
        below += 1.0;
        foreach (SheetRow row in typed.Settings)
        {
            below = Row(row, below);
        }

        pen.Rule(left, below + 0.5, width, Palette.Frame);
        below += 1.0 + pen.Text(typed.Verdict, left, below + 1.0, width, bold: true);
        foreach (SheetRow row in typed.Results)
        {
            below = Row(row, below);
        }

        foreach (string note in typed.Notes)
        {
            below += pen.Text(note, left, below, width, scale: SmallScale, colour: Palette.QuietInk);
        }

        return below + 6.0;
    }

    private double Settings(SheetPen pen, double y, double room)
    {
        int axes = sheet.Axes.Count;
        double value = room * (axes > 1 ? 0.2 : 0.3), unit = room * 0.225, name = room - unit - (axes * value);
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

    private double Notes(SheetPen pen, double y, double x, double room)
    {
        y += pen.Text("Notes", x, y, room, bold: true, HeadScale) + 2.0;
        foreach (string note in sheet.Notes)
        {
            y += pen.Text(note, x, y, room) + 4.0;
        }

        return y;
    }

    private double Checks(SheetPen pen, double y)
    {
        double box = pen.Size, hang = box + 5.0;
        y += pen.Text("Check first, in this order", left, y, width, bold: true, HeadScale) + 1.0;
        foreach (string check in sheet.Checks)
        {
            pen.Box(left, y + 2.0, box - 2.0, box - 2.0, Palette.Paper, Palette.Ink);
            y += pen.Text(check, left + hang, y, width - hang) + 2.0;
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
