using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace AxisSim.Plots.Drawing;

/// <summary>An SVG drawing from OxyPlot's writer, finished for people: it scales, says what it shows and keeps its layout under another font.</summary>
internal static partial class SvgDocument
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    /// <summary>Draws the figure and writes the finished document.</summary>
    public static void Write(IFigure figure, Stream stream)
    {
        using InterRenderContext measurer = new();
        using MemoryStream raw = new();
        using (InterSvgContext context = new(raw, figure.Width, figure.Height, measurer))
        {
            figure.Draw(context);
            context.Complete();
            context.Flush();
            raw.Position = 0;
            XElement root = XElement.Load(raw);
            Finish(root, figure, measurer);
            using XmlWriter writer = XmlWriter.Create(stream, new XmlWriterSettings
            {
                Encoding = new UTF8Encoding(false),
                Indent = true,
                IndentChars = " ",
                NewLineChars = "\n",
                CloseOutput = false,
            });
            root.WriteTo(writer);
        }
    }

    private static void Finish(XElement root, IFigure figure, InterRenderContext measurer)
    {
        root.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {figure.Width:0.##} {figure.Height:0.##}"));
        root.SetAttributeValue("font-family", InterFont.SvgFamilies);
        root.SetAttributeValue("role", "img");
        root.AddFirst(new XElement(s_svg + "title", figure.Title), new XElement(s_svg + "desc", figure.Description));
        foreach (XElement text in root.Descendants(s_svg + "text"))
        {
            // The viewer may not have the font: its substitute is fitted to the width that the layout was made for.
            double size = Number(text, "font-size", 12);
            double width = measurer.MeasureText(text.Value, null, size, Number(text, "font-weight", 400)).Width;
            if (width > 0)
            {
                text.SetAttributeValue("textLength", width.ToString("0.##", CultureInfo.InvariantCulture));
                text.SetAttributeValue("lengthAdjust", "spacingAndGlyphs");
            }

            text.SetAttributeValue("font-family", null);
        }

        foreach (XAttribute style in root.Descendants().Attributes("style"))
        {
            style.Value = Dashes().Replace(style.Value, InPixels);
        }

        foreach (XAttribute points in root.Descendants().Attributes("points"))
        {
            points.Value = Shorten(points.Value);
        }
    }

    /// <summary>Dashes come in widths of the line, which Skia's context turns into pixels and OxyPlot's SVG writer does not.</summary>
    private static string InPixels(Match match)
    {
        double width = double.Parse(match.Groups["width"].Value, CultureInfo.InvariantCulture);
        IEnumerable<string> dashes = match.Groups["dashes"].Value.Split(',')
            .Select(dash => (double.Parse(dash, CultureInfo.InvariantCulture) * width).ToString("0.##", CultureInfo.InvariantCulture));
        return $"stroke-width:{match.Groups["width"].Value}{match.Groups["between"].Value}stroke-dasharray:{string.Join(',', dashes)}";
    }

    [GeneratedRegex(@"stroke-width:(?<width>[0-9.]+)(?<between>;.*?)stroke-dasharray:(?<dashes>[0-9.,]+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Dashes();

    private static double Number(XElement element, string name, double otherwise) =>
        double.TryParse(element.Attribute(name)?.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : otherwise;

    /// <summary>Cuts coordinates to a hundredth of a pixel.</summary>
    private static string Shorten(string points)
    {
        StringBuilder kept = new(points.Length);
        int decimals = -1;
        foreach (char c in points)
        {
            if (c == '.')
            {
                decimals = 0;
            }
            else if (!char.IsAsciiDigit(c))
            {
                decimals = -1;
            }
            else if (decimals >= 0 && ++decimals > 2)
            {
                continue;
            }

            kept.Append(c);
        }

        return kept.ToString();
    }
}
