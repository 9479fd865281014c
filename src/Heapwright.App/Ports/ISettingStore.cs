namespace Heapwright.App.Ports;

/// <summary>Settings of this installation, by name; they are no part of the site and do not go out with it.</summary>
public interface ISettingStore
{
    /// <summary>A setting; null where it is not set.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="cancel">Gives up.</param>
    Task<string?> Find(string name, CancellationToken cancel);

    /// <summary>Sets it, or takes it away.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="value">Its value; null to take it away.</param>
    /// <param name="cancel">Gives up.</param>
    Task Put(string name, string? value, CancellationToken cancel);
}
