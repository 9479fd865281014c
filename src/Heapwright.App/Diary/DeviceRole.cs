namespace Heapwright.App.Diary;

/// <summary>What somebody may do from another machine. Whoever has no token is a visitor: may look round, and change nothing.</summary>
public enum DeviceRole
{
    /// <summary>Takes readings and says what was done: writes into diaries.</summary>
    Volunteer,

    /// <summary>Runs the yard: may do all that the machine itself may, but for who may do what, backups and the address for mail.</summary>
    Coordinator,
}
