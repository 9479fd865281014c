using System.Globalization;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Tests;

public sealed class NumberTextTests
{
    [Theory]
    [InlineData("2.5", "en-GB", 2.5)]
    [InlineData("2,5", "en-GB", 2.5)]
    [InlineData("2,5", "de-DE", 2.5)]
    [InlineData("2.5", "de-DE", 2.5)]
    [InlineData(" 12 ", "en-GB", 12)]
    [InlineData("1,234.5", "en-GB", 1234.5)]
    [InlineData("1.234,5", "de-DE", 1234.5)]
    [InlineData("1.234,5", "en-GB", 1234.5)]
    [InlineData("1 234,5", "fr-FR", 1234.5)]
    [InlineData("1,234,567", "en-GB", 1234567)]
    [InlineData("1.500", "en-GB", 1.5)]
    [InlineData("0,125", "en-GB", 0.125)]
    [InlineData("−3", "en-GB", -3)]
    [InlineData("½", "en-GB", 0.5)]
    [InlineData("1½", "de-DE", 1.5)]
    [InlineData("2 ¼", "en-GB", 2.25)]
    [InlineData("1\u00a0¾", "en-GB", 1.75)]
    [InlineData("⅓", "en-GB", 1.0 / 3)]
    [InlineData("1⅔", "en-GB", 1 + (2.0 / 3))]
    [InlineData("3⅞", "en-GB", 3.875)]
    [InlineData("1/2", "en-GB", 0.5)]
    [InlineData("1 1/2", "de-DE", 1.5)]
    [InlineData("12 3⁄4", "en-GB", 12.75)]
    [InlineData("−1½", "en-GB", -1.5)]
    public void Read_NumberAsPeopleTypeIt_IsRead(string text, string culture, double value)
    {
        Assert.Null(NumberText.Read(text, "x", CultureInfo.GetCultureInfo(culture), out var read));
        Assert.Equal(value, read);
    }

    [Theory]
    [InlineData("1,500", "en-GB")]
    [InlineData("1.500", "de-DE")]
    public void Read_NumberWithTwoReadings_IsAskedAgain(string text, string culture)
    {
        var refusal = NumberText.Read(text, "x", CultureInfo.GetCultureInfo(culture), out _);

        Assert.Equal("sites.number_two_ways", refusal!.Why.Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("a few")]
    [InlineData("3 barrows")]
    [InlineData("1e5")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("--3")]
    [InlineData("1/0")]
    [InlineData("1/2/3")]
    [InlineData("½½")]
    [InlineData("½ 1")]
    [InlineData("1.5½")]
    [InlineData("123456789012345678901234567890")]
    public void Read_NoNumber_IsRefused(string? text) =>
        Assert.NotNull(NumberText.Read(text, "x", CultureInfo.InvariantCulture, out _));
}
