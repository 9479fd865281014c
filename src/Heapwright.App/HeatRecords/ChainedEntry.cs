namespace Heapwright.App.HeatRecords;

/// <summary>An entry with its place in the record and the hash that covers it and all before it.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Hash">SHA-256 in 64 lower-case hexadecimal digits.</param>
public sealed record ChainedEntry(int Number, HeatEntry Entry, string Hash);
