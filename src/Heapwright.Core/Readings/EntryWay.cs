namespace Heapwright.Core.Readings;

/// <summary>By what way an entry came into the diary.</summary>
public enum EntryWay
{
    /// <summary>Typed into a page.</summary>
    Page,

    /// <summary>Typed on the command line.</summary>
    Cli,

    /// <summary>Read from a table.</summary>
    Csv,

    /// <summary>Sent over HTTP by a device.</summary>
    Http,

    /// <summary>Sent as a message to a broker.</summary>
    Mqtt,
}
