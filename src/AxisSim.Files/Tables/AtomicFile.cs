using System.Text;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Tables;

/// <summary>Writes files whole or not at all: to a temporary name in the same folder, flushed to the disk, then renamed.</summary>
public static class AtomicFile
{
    // ENOSPC of POSIX, ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of Windows; EDQUOT is a full quota.
    private static readonly int[] FullDisk = [28, 122, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    /// <summary>Writes a file by the caller's writer. Missing folders are made. Null when it worked; otherwise what went wrong, with nothing left behind.</summary>
    public static Problem? Write(string path, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        return Write(path, write, keep: true);
    }

    /// <summary>The same for a file that must not be there yet: one that is there stays as it is.</summary>
    public static Problem? WriteUnlessThere(string path, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        return Write(path, write, keep: true, replace: false);
    }

    /// <summary>What stands against writing a file; null when nothing does. Nothing is left behind, no file and no folder.</summary>
    public static Problem? Try(string path) => Write(path, _ => { }, keep: false);

    private static Problem? Write(string path, Action<Stream> write, bool keep, bool replace = true)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (Directory.Exists(path))
        {
            return About(path, "a directory where a file was to be written", "the name of a file");
        }

        if (path.Length == 0)
        {
            return About("the file to write", "an empty name", "the name of a file");
        }

        if (Path.EndsInDirectorySeparator(path))
        {
            return About(path, "the name of a folder", "the name of a file");
        }

        string? temporary = null;
        MadeFolders? made = null;
        try
        {
            string whole = Path.GetFullPath(path);
            string folder = Path.GetDirectoryName(whole) ?? throw new IOException("the path has no folder");
            if (FileOnTheWay(folder) is { } file)
            {
                return About(path, $"{file}, which is a file and not a folder", "a name in a folder");
            }

            using FileStream stream = Begin(folder, out made);
            temporary = stream.Name;
            write(stream);
            if (keep)
            {
                stream.Flush(flushToDisk: true);

                // Renamed while it is open, and so locked: nobody can take it for a leftover.
                File.Move(temporary, whole, overwrite: replace);
                (temporary, made) = (null, null);
            }

            return null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or System.Security.SecurityException || (error is ArgumentException && temporary is null))
        {
            return About(path, Why(error), "a file that can be written");
        }
        finally
        {
            Remove(temporary);
            made?.TakeBack();
        }
    }

    private static FileStream Begin(string folder, out MadeFolders made)
    {
        const int Attempts = 3;
        for (int attempt = 1; ; attempt++)
        {
            made = MadeFolders.Make(folder);
            Leftovers.Remove(folder);
            try
            {
                return Leftovers.Create(folder);
            }
            catch (DirectoryNotFoundException) when (attempt < Attempts)
            {
                // Another run found the folder empty and took it back.
            }
        }
    }

    /// <summary>Writes a text in UTF-8 without a mark.</summary>
    public static Problem? WriteText(string path, string text) =>
        Write(path, stream => stream.Write(new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text)));

    /// <summary>Why writing failed, in words.</summary>
    internal static string Why(Exception error) => error switch
    {
        _ when Array.IndexOf(FullDisk, error.HResult) >= 0 => "no space left on the disk",
        UnauthorizedAccessException or System.Security.SecurityException => "no permission to write there",
        DirectoryNotFoundException => "a folder that does not exist and cannot be made",
        FileNotFoundException => "a place where the system lets nobody make files",
        PathTooLongException => "a name that is too long",
        _ => "a place where writing failed: " + error.Message.TrimEnd('.'),
    };

    // The nearest thing on the way to a folder that is there, if it is no folder.
    private static string? FileOnTheWay(string folder)
    {
        string? place = folder;
        while (place is not null && !Path.Exists(place))
        {
            place = Path.GetDirectoryName(place);
        }

        return place is not null && File.Exists(place) ? place : null;
    }

    private static void Remove(string? temporary)
    {
        try
        {
            if (temporary is not null)
            {
                File.Delete(temporary);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // The first failure is what the user needs to hear of; a hidden leftover does no harm.
        }
    }

    private static Problem About(string path, string found, string allowed) => new(path, 0, 0, "", found, allowed, "another place or name");
}
