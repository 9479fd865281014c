namespace Heapwright.Web.Api;

/// <summary>Why a question was not answered.</summary>
/// <param name="Error">One sentence: what was found, where, and what is allowed.</param>
public sealed record ApiError(string Error);
