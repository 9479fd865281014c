using System.Globalization;
using System.Net;
using System.Text;
using Heapwright.App.Coming;
using Heapwright.Web.Showing;
using MimeKit;
using NodaTime;

namespace Heapwright.Web.Mail;

/// <summary>The mail that tells of the coming days, as plain text and as simple HTML.</summary>
internal static class DigestMail
{
    /// <summary>How many days ahead it tells of.</summary>
    public const int DaysAhead = 7;

    /// <summary>Whether there is something to say today: something begins by tomorrow and is not over.</summary>
    /// <param name="days">The days to come.</param>
    /// <param name="today">The day at the site.</param>
    public static bool IsWorthSending(IEnumerable<ComingDay> days, LocalDate today) =>
        days.Any(d => d.IsDated && d.First <= today.PlusDays(1) && d.Last >= today);

    /// <summary>The mail.</summary>
    /// <param name="days">The days to come.</param>
    /// <param name="today">The day at the site.</param>
    /// <param name="site">The name of the site.</param>
    /// <param name="show">How days are shown.</param>
    /// <param name="from">The address it comes from.</param>
    /// <param name="to">The address it goes to.</param>
    /// <param name="at">When it is sent.</param>
    public static MimeMessage Of(
        IEnumerable<ComingDay> days,
        LocalDate today,
        string site,
        Shown show,
        string from,
        string to,
        DateTimeOffset at
    )
    {
        var lines = days.Where(d => d.First <= today.PlusDays(DaysAhead) && d.Last >= today)
            .Select(d => (When: When(d, today, show), Text: d.Text(show.Culture)))
            .ToList();
        var mail = new MimeMessage
        {
            Subject = Say.Of("mail.subject", OneLine(site), show.Day(today)),
            Date = at,
        };
        mail.From.Add(new MailboxAddress("Heapwright", from));
        mail.To.Add(new MailboxAddress("", to));
        // So that no program answers it by itself.
        mail.Headers.Add("Auto-Submitted", "auto-generated");
        mail.Body = new MultipartAlternative
        {
            new TextPart("plain") { Text = Plain(site, lines) },
            new TextPart("html") { Text = Html(site, lines) },
        };
        return mail;
    }

    private static string When(ComingDay day, LocalDate today, Shown show) =>
        !day.IsDated ? Say.Of("mail.begun")
        : day.First <= today
            ? (day.Last == today ? Say.Of("mail.today") : Say.Of("mail.until", show.Day(day.Last)))
        : day.First == day.Last ? Say.Of("mail.on", show.Day(day.First))
        : Say.Of("mail.between", show.Day(day.First), show.Day(day.Last));

    private static string Plain(string site, List<(string When, string Text)> lines)
    {
        var text = new StringBuilder(Say.Of("mail.greeting", OneLine(site))).Append("\n\n");
        foreach (var (when, line) in lines)
        {
            text.Append(CultureInfo.InvariantCulture, $"- {OneLine(line)} {when}\n");
        }

        return text.Append('\n').Append(Say.Of("mail.foot")).Append('\n').ToString();
    }

    private static string Html(string site, List<(string When, string Text)> lines)
    {
        var html = new StringBuilder("<!DOCTYPE html><html><body><p>")
            .Append(Escaped(Say.Of("mail.greeting", site)))
            .Append("</p><ul>");
        foreach (var (when, line) in lines)
        {
            html.Append("<li>").Append(Escaped(line)).Append(' ');
            html.Append("<em>").Append(Escaped(when)).Append("</em></li>");
        }

        return html.Append("</ul><p>")
            .Append(Escaped(Say.Of("mail.foot")))
            .Append("</p></body></html>")
            .ToString();
    }

    private static string Escaped(string text) => WebUtility.HtmlEncode(text);

    private static string OneLine(string text) =>
        string.Join(' ', text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
