using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Heapwright.App.Sites;
using Heapwright.Storage.Rows;
using NodaTime;
using NodaTime.Text;

namespace Heapwright.Storage.Stores;

/// <summary>How each kind of thing lies in its table.</summary>
internal static class Shelves
{
    private static readonly FrozenDictionary<string, Shelf> ByKind = new Dictionary<string, Shelf>(
        StringComparer.Ordinal
    )
    {
        [ItemKinds.Of<Site>()] = new Shelf<Site, SiteRow>(ToSite, Fill),
        [ItemKinds.Of<OwnContainer>()] = new Shelf<OwnContainer, ContainerRow>(ToContainer, Fill),
        [ItemKinds.Of<Bay>()] = new Shelf<Bay, BayRow>(ToBay, Fill),
        [ItemKinds.Of<OwnMaterial>()] = new Shelf<OwnMaterial, MaterialRow>(ToMaterial, Fill),
        [ItemKinds.Of<Measurement>()] = new Shelf<Measurement, MeasurementRow>(ToMeasurement, Fill),
        [ItemKinds.Of<StockEntry>()] = new Shelf<StockEntry, StockRow>(ToStock, Fill),
        [ItemKinds.Of<SavedRecipe>()] = new Shelf<SavedRecipe, RecipeRow>(ToRecipe, Fill),
        [ItemKinds.Of<SavedSheet>()] = new Shelf<SavedSheet, SheetRow>(ToSheet, Fill),
        [ItemKinds.Of<KeptHeap>()] = new Shelf<KeptHeap, HeapRow>(ToHeap, Fill),
        [ItemKinds.Of<KeptLesson>()] = new Shelf<KeptLesson, LessonRow>(ToLesson, Fill),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static Shelf Of(string kind) => ByKind[kind];

    internal static string Text(Instant moment) => InstantPattern.ExtendedIso.Format(moment);

    internal static Instant Moment(string text) =>
        InstantPattern.ExtendedIso.Parse(text).GetValueOrThrow();

    private static Site ToSite(SiteRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Name = row.Name,
            Zone = row.TimeZone,
            Units = new DisplayUnits(
                row.ShownTemperature,
                row.ShownVolume,
                row.ShownMass,
                row.ShownLength
            ),
            Language = row.Language,
            Air = MonthlyAir.Read(row.MonthlyAir),
        };

    private static void Fill(Site item, SiteRow row)
    {
        row.Name = item.Name;
        row.TimeZone = item.Zone;
        row.ShownTemperature = item.Units.Temperature;
        row.ShownVolume = item.Units.Volume;
        row.ShownMass = item.Units.Mass;
        row.ShownLength = item.Units.Length;
        row.Language = item.Language;
        row.MonthlyAir = item.Air?.Write();
    }

    private static OwnContainer ToContainer(ContainerRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Name = row.Name,
            HoldsL = row.HoldsL,
            IsHeaped = row.IsHeaped,
            IsTrodden = row.IsTrodden,
        };

    private static void Fill(OwnContainer item, ContainerRow row)
    {
        row.Name = item.Name;
        row.HoldsL = item.HoldsL;
        row.IsHeaped = item.IsHeaped;
        row.IsTrodden = item.IsTrodden;
    }

    private static Bay ToBay(BayRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Name = row.Name,
            Shape = row.Shape,
            LengthM = row.LengthM,
            WidthM = row.WidthM,
            DiameterM = row.DiameterM,
            HeightM = row.HeightM,
        };

    private static void Fill(Bay item, BayRow row)
    {
        row.Name = item.Name;
        row.Shape = item.Shape;
        row.LengthM = item.LengthM;
        row.WidthM = item.WidthM;
        row.DiameterM = item.DiameterM;
        row.HeightM = item.HeightM;
    }

    private static OwnMaterial ToMaterial(MaterialRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Name = row.Name,
            CountsAs = row.CountsAs,
            Freshness = row.Freshness,
            Kind = row.Kind,
            Properties = JsonSerializer.Deserialize<ImmutableSortedDictionary<string, ValueRange>>(
                row.PropertiesJson,
                ItemKinds.Json
            )!,
            Note = row.Note,
        };

    private static void Fill(OwnMaterial item, MaterialRow row)
    {
        row.Name = item.Name;
        row.CountsAs = item.CountsAs;
        row.Freshness = item.Freshness;
        row.Kind = item.Kind;
        row.PropertiesJson = JsonSerializer.Serialize(item.Properties, ItemKinds.Json);
        row.Note = item.Note;
    }

    private static Measurement ToMeasurement(MeasurementRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Material = row.Material,
            Measure = row.Measure,
            At = Moment(row.AtUtc),
            Values = Json(row.ValuesJson),
            Note = row.Note,
        };

    private static void Fill(Measurement item, MeasurementRow row)
    {
        row.Material = item.Material;
        row.Measure = item.Measure;
        row.AtUtc = Text(item.At);
        row.ValuesJson = item.Values.GetRawText();
        row.Note = item.Note;
    }

    private static StockEntry ToStock(StockRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Material = row.Material,
            Name = row.Name,
            Amount = row.Amount,
            Unit = row.AmountUnit,
            Since = LocalDatePattern.Iso.Parse(row.SinceDate).GetValueOrThrow(),
            Note = row.Note,
            Giver = row.Giver,
        };

    private static void Fill(StockEntry item, StockRow row)
    {
        row.Material = item.Material;
        row.Name = item.Name;
        row.Amount = item.Amount;
        row.AmountUnit = item.Unit;
        row.SinceDate = LocalDatePattern.Iso.Format(item.Since);
        row.Note = item.Note;
        row.Giver = item.Giver;
    }

    private static SavedRecipe ToRecipe(RecipeRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Name = row.Name,
            MadeAt = Moment(row.MadeAtUtc),
            Question = Json(row.QuestionJson),
            Answer = Json(row.AnswerJson),
        };

    private static void Fill(SavedRecipe item, RecipeRow row)
    {
        row.Name = item.Name;
        row.MadeAtUtc = Text(item.MadeAt);
        row.QuestionJson = item.Question.GetRawText();
        row.AnswerJson = item.Answer.GetRawText();
    }

    private static SavedSheet ToSheet(SheetRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Name = row.Name,
            BayId = row.BayId,
            RecipeId = row.RecipeId,
            MadeAt = Moment(row.MadeAtUtc),
            Question = Json(row.QuestionJson),
            Answer = Json(row.AnswerJson),
            Ticked =
            [
                .. row
                    .TickedLayers.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                    .Select(n => int.Parse(n, CultureInfo.InvariantCulture)),
            ],
        };

    private static void Fill(SavedSheet item, SheetRow row)
    {
        row.Name = item.Name;
        row.BayId = item.BayId;
        row.RecipeId = item.RecipeId;
        row.MadeAtUtc = Text(item.MadeAt);
        row.QuestionJson = item.Question.GetRawText();
        row.AnswerJson = item.Answer.GetRawText();
        row.TickedLayers = string.Join(
            ' ',
            item.Ticked.Select(n => n.ToString(CultureInfo.InvariantCulture))
        );
    }

    private static KeptHeap ToHeap(HeapRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            Name = row.Name,
            BayId = row.BayId,
            SheetId = row.SheetId,
            BuiltAt = Moment(row.BuiltAtUtc),
            Zone = row.TimeZone,
            Aim = row.Aim,
            Question = Json(row.QuestionJson),
        };

    private static void Fill(KeptHeap item, HeapRow row)
    {
        row.Name = item.Name;
        row.BayId = item.BayId;
        row.SheetId = item.SheetId;
        row.BuiltAtUtc = Text(item.BuiltAt);
        row.TimeZone = item.Zone;
        row.Aim = item.Aim;
        row.QuestionJson = item.Question.GetRawText();
    }

    private static KeptLesson ToLesson(LessonRow row) =>
        new()
        {
            Id = row.Id,
            IsSample = row.IsSample,
            HeapId = row.HeapId,
            Name = row.Name,
            BayId = row.BayId,
            Bin = Json(row.BinJson),
            MadeAt = Moment(row.MadeAtUtc),
            Readings = row.Readings,
            IsUsed = row.IsUsed,
            Parameters = JsonSerializer.Deserialize<ImmutableSortedDictionary<string, LessonScore>>(
                row.ParametersJson,
                ItemKinds.Json
            )!,
        };

    private static void Fill(KeptLesson item, LessonRow row)
    {
        row.HeapId = item.HeapId;
        row.Name = item.Name;
        row.BayId = item.BayId;
        row.BinJson = item.Bin.GetRawText();
        row.MadeAtUtc = Text(item.MadeAt);
        row.Readings = item.Readings;
        row.IsUsed = item.IsUsed;
        row.ParametersJson = JsonSerializer.Serialize(item.Parameters, ItemKinds.Json);
    }

    private static JsonElement Json(string text)
    {
        using var document = JsonDocument.Parse(text);
        return document.RootElement.Clone();
    }
}
