namespace AxisSim.Cli.Output;

/// <summary>Passes bytes on until that fails, and drops what comes after: where problems are told, a problem with the telling cannot be told.</summary>
/// <remarks>A full disk below the standard error must not hide the exit code, nor end the program from within a line of progress.</remarks>
internal sealed class ForgivingStream(Func<Stream> open) : Stream
{
    private readonly Stream inner = open();
    private bool failed;

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override void Flush() => Try(inner.Flush);

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Try(() => inner.Write(buffer, offset, count));

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private void Try(Action write)
    {
        try
        {
            if (!failed)
            {
                write();
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            failed = true;
        }
    }
}
