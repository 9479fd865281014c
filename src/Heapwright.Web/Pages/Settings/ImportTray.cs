namespace Heapwright.Web.Pages.Settings;

/// <summary>
/// Holds the file that was chosen while its preview is looked at: one at a time, gone when the program ends. Whoever
/// lost it chooses it again.
/// </summary>
internal sealed class ImportTray
{
    private readonly Lock gate = new();
    private (Guid Id, byte[] Bytes)? held;

    public Guid Hold(byte[] bytes)
    {
        var id = Guid.CreateVersion7();
        lock (gate)
        {
            held = (id, bytes);
        }

        return id;
    }

    public byte[]? Take(Guid id)
    {
        lock (gate)
        {
            return held is { } file && file.Id == id ? file.Bytes : null;
        }
    }
}
