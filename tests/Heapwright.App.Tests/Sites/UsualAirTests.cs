using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.App.Tests.Diary;
using NodaTime;

namespace Heapwright.App.Tests.Sites;

/// <summary>The air of a site from its monthly means, and what it does to the questions of its heaps.</summary>
public sealed class UsualAirTests
{
    // Invented: a mild place, −3 °C in January and 19 °C in July.
    private static readonly MonthlyAir Air = new()
    {
        MeansC = [-3, -1, 3, 8, 13, 17, 19, 18, 14, 9, 4, -1],
        SwingK = 4,
    };

    private static readonly DateTimeZone Utc = DateTimeZone.Utc;

    [Theory]
    [InlineData(2027, 1, -3)]
    [InlineData(2028, 2, -1)]
    [InlineData(2027, 7, 19)]
    [InlineData(2027, 12, -1)]
    public void Weather_OverAMonth_HasTheMeanThatWasTyped(int year, int month, double mean)
    {
        var days = CalendarSystem.Iso.GetDaysInMonth(year, month);
        var weather = new UsualAir(Air).Weather(
            Instant.FromUtc(year, month, 1, 0, 0),
            days,
            Utc,
            []
        );
        double[] rows = [.. weather["hourly"]!.AsArray().Select(r => r![1]!.GetValue<double>())];

        Assert.Equal((12 * days) + 1, rows.Length);
        // Rows are written to a hundredth; trapezoids.
        var sum = rows.Sum() - ((rows[0] + rows[^1]) / 2);
        Assert.Equal(mean, sum / (rows.Length - 1), 0.02);
        // 2.5 K: spell_error of data/weather/usual-air.csv, an estimate from memory.
        Assert.Equal(2.5, weather["air_error_c"]!.GetValue<double>(), 1e-9);
    }

    [Fact]
    public void Day_AtThreeInTheAfternoon_IsWarmestByTheSwing()
    {
        var air = new UsualAir(Air);
        var warm = new LocalDateTime(2027, 7, 16, 15, 0);

        Assert.Equal(4, air.At(warm) - air.MeanAt(warm), 1e-9);
        Assert.Equal(-4, air.At(warm.PlusHours(12)) - air.MeanAt(warm.PlusHours(12)), 1e-9);
    }

    [Fact]
    public void Weather_WithNotes_IsMovedTowardsThemAndNarrower()
    {
        var start = Instant.FromUtc(2027, 7, 10, 12, 0);
        var usual = new UsualAir(Air);
        var plain = usual.Weather(start, 5, Utc, []);
        (Instant, double)[] notes =
        [
            .. Enumerable
                .Range(1, 4)
                .Select(d => start + Duration.FromDays(d))
                .Select(at => (at, usual.At(at.InUtc().LocalDateTime) + 6)),
        ];

        var moved = usual.Weather(start, 5, Utc, notes);

        // Variances 2.5² and 4² / 4: the notes weigh 6.25 / (6.25 + 4) = 0.6098, of 6 K that is 3.66 K.
        var difference =
            moved["hourly"]![7]![1]!.GetValue<double>()
            - plain["hourly"]![7]![1]!.GetValue<double>();
        Assert.Equal(3.66, difference, 0.02);
        // √(1 / (1/6.25 + 4/16)) = 1.562.
        Assert.Equal(1.56, moved["air_error_c"]!.GetValue<double>(), 0.005);
    }

    [Fact]
    public void Question_WithoutMonthlyMeans_IsAsItWas()
    {
        var question = Question(1, null);

        Assert.Null(question["weather"]);
        Assert.Equal(AirSource.Assumed, HeapAir.SourceOf(Record(1, null)));
    }

    [Fact]
    public void Question_WithAnExplicitWeather_KeepsIt()
    {
        var json = JsonNode.Parse("""{"air_c":21}""");
        var told = Record(1, Air, json);

        Assert.Equal(AirSource.Told, HeapAir.SourceOf(told));
        Assert.Equal("""{"air_c":21}""", Question(told)["weather"]!.ToJsonString());
    }

    [Fact]
    public void Forecast_OfAHeapBuiltInJanuary_IsColderAndWiderThanInJulyAndItself()
    {
        var january = Made(Question(1, Air));
        var july = Made(Question(7, Air));
        var known = Question(1, Air);
        known["weather"]!["air_error_c"] = 0;
        var sure = Made(known);

        Assert.InRange(january.Forecast.Question.Heap.Weather.StartAir, -6, 0);
        Assert.InRange(july.Forecast.Question.Heap.Weather.StartAir, 17, 22);
        var last = january.Forecast.Core.Length - 1;
        Assert.True(Median(january, last) < Median(july, last) - 2);
        Assert.True(Width(january, 0) > Width(sure, 0));
        Assert.Contains(
            january.Assumptions,
            a => a.Contains("usual at the time of year", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            sure.Assumptions,
            a => a.Contains("usual at the time", StringComparison.Ordinal)
        );
    }

    private static double Median(MadeForecast made, int at) => Sorted(made, at)[100];

    private static double Width(MadeForecast made, int at) =>
        Sorted(made, at)[190] - Sorted(made, at)[10];

    private static double[] Sorted(MadeForecast made, int at) =>
        [.. made.Forecast.Core[at].Order()];

    private static MadeForecast Made(JsonObject question) =>
        ForecastAnswers.Make(
            Input.Read(Encoding.UTF8.GetBytes(question.ToJsonString()), "heap"),
            SimulateLimits.Web
        );

    private static JsonObject Question(int month, MonthlyAir? air) => Question(Record(month, air));

    private static JsonObject Question(HeapRecord record) =>
        OutlookQuestion.Of(
            record,
            SiteContents.Of([]),
            record.Kept.BuiltAt + Duration.FromDays(4),
            Utc
        )!;

    private static HeapRecord Record(int month, MonthlyAir? air, JsonNode? weather = null)
    {
        var question = JsonNode.Parse(ToldDiary.Heap.Question.GetRawText())!.AsObject();
        question["bin"] = JsonNode.Parse(
            """{"shape":"box","length_m":0.7,"width_m":0.7,"height_m":0.7}"""
        );
        question["ingredients"] = JsonNode.Parse(
            """
            [{"material":"grass_clippings_fresh","amount":{"value":100,"unit":"l"}},
             {"material":"wheat_straw","amount":{"value":200,"unit":"l"}}]
            """
        );
        if (weather is not null)
        {
            question["weather"] = weather;
        }

        return new HeapRecord(
            ToldDiary.Heap with
            {
                BuiltAt = Instant.FromUtc(2027, month, 10, 12, 0),
                Question = StartHeap.ToElement(question),
            },
            [],
            air
        );
    }
}
