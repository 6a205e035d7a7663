namespace AxisSim.Report.Sheets;

/// <summary>The content of a sheet as plain lines, one item a line: what a layout must show, all of it.</summary>
internal static class SheetLines
{
    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(SettingsSheet sheet)
    {
        if (sheet.Warning is { } warning)
        {
            yield return warning;
        }

        yield return sheet.Title;
        yield return sheet.Verdict;
        yield return "axes: " + string.Join(" | ", sheet.Axes);
        if (sheet.Typed is { } typed)
        {
            yield return $"[{typed.Title}]";
            foreach (SheetRow row in typed.Settings)
            {
                yield return Line(row);
            }

            yield return typed.Verdict;
            foreach (SheetRow row in typed.Results)
            {
                yield return Line(row);
            }

            foreach (string note in typed.Notes)
            {
                yield return "note: " + note;
            }
        }

        foreach (SheetGroup group in sheet.Settings)
        {
            yield return $"[{group.Name}]";
            string name = "";
            foreach (SheetRow row in group.Rows)
            {
                name = row.Name.Length > 0 ? row.Name : name;
                yield return Line(row with { Name = name });
            }
        }

        foreach (string note in sheet.Notes)
        {
            yield return "note: " + note;
        }

        for (int i = 0; i < sheet.Checks.Count; i++)
        {
            yield return $"check {i + 1}: {sheet.Checks[i]}";
        }

        for (int i = 0; i < sheet.Steps.Count; i++)
        {
            SheetStep step = sheet.Steps[i];
            yield return $"step {i + 1}: {step.Title}. {step.Do}";
            foreach (SheetRow row in step.Expected)
            {
                yield return Line(row);
            }

            yield return "  stop if " + step.StopIf;
        }

        yield return sheet.Caution;
        yield return sheet.Provenance;
    }

    private static string Line(SheetRow row) =>
        $"  {row.Name}{(row.Unit.Length > 0 ? $" ({row.Unit})" : "")}: {string.Join(" | ", row.Values)}";
}
