namespace Heapwright.Web.Mail;

/// <summary>The server that carries mail, if one is set.</summary>
/// <param name="Settings">The server; null for none.</param>
public sealed record MailServer(MailSettings? Settings);
