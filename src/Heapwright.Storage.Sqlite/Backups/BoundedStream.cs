namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>Reads so many bytes and not one more, whatever a zip says of its parts.</summary>
/// <param name="inner">What is read.</param>
/// <param name="most">The most bytes.</param>
internal sealed class BoundedStream(Stream inner, long most) : Stream
{
    private long left = most;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var read = inner.Read(buffer, offset, count);
        left -= read;
        return left < 0 ? throw new InvalidDataException("longer than it says") : read;
    }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        inner.Dispose();
        base.Dispose(disposing);
    }
}
