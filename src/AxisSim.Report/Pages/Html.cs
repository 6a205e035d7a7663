using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace AxisSim.Report.Pages;

/// <summary>Elements of an HTML page, and how they are written: HTML and well-formed XML at once.</summary>
internal static class Html
{
    private static readonly XNamespace s_html = "http://www.w3.org/1999/xhtml";

    // Elements without an end in HTML; all others must have one, even when empty.
    private static readonly string[] s_void = ["br", "meta"];

    /// <summary>An element with its content and attributes.</summary>
    public static XElement Element(string name, params object?[] content) =>
        new(s_html + name, content.Length == 0 && !s_void.Contains(name) ? [""] : content);

    /// <summary>An attribute.</summary>
    public static XAttribute Attribute(string name, string value) => new(name, value);

    /// <summary>The class of an element.</summary>
    public static XAttribute Class(string name) => new("class", name);

    /// <summary>Writes a document in UTF-8.</summary>
    public static void Write(XElement root, Stream stream)
    {
        using XmlWriter writer = XmlWriter.Create(stream, new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            OmitXmlDeclaration = true,
            Indent = true,
            IndentChars = "",
            NewLineChars = "\n",
            CloseOutput = false,
        });
        writer.WriteDocType("html", null, null, null);
        root.WriteTo(writer);
    }
}
