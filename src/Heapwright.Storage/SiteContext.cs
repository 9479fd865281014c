using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Storage;

/// <summary>The tables. Each database has its own context below this one, with its own migrations.</summary>
public abstract class SiteContext : DbContext
{
    /// <summary>The form of the database that this program reads and writes.</summary>
    public const int Schema = 9;

    /// <summary>A context.</summary>
    /// <param name="options">Which database.</param>
    protected SiteContext(DbContextOptions options)
        : base(options) { }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        Item<SiteRow>(modelBuilder, "site");
        Item<ContainerRow>(modelBuilder, "container");
        Item<BayRow>(modelBuilder, "bay");
        Item<MaterialRow>(modelBuilder, "own_material");
        Item<MeasurementRow>(modelBuilder, "measurement");
        Item<StockRow>(modelBuilder, "stock_entry");
        Item<RecipeRow>(modelBuilder, "recipe");
        Item<SheetRow>(modelBuilder, "build_sheet");
        Item<HeapRow>(modelBuilder, "heap");
        Item<LessonRow>(modelBuilder, "lesson");
        Diary(modelBuilder);
        modelBuilder.Entity<ActRow>(act =>
        {
            act.ToTable("act");
            act.HasKey(a => a.Number);
            act.Property(a => a.Number).ValueGeneratedOnAdd();
            act.HasIndex(a => a.UndoesNumber);
            act.HasMany(a => a.Changes).WithOne().HasForeignKey(c => c.ActNumber);
        });
        modelBuilder.Entity<ChangeRow>(change =>
        {
            change.ToTable("act_change");
            change.HasKey(c => new { c.ActNumber, c.Place });
            change.HasIndex(c => new { c.ItemKind, c.ItemId });
        });
        modelBuilder.Entity<SchemaRow>(schema =>
        {
            schema.ToTable("schema_number");
            schema.HasKey(s => s.Number);
            schema.Property(s => s.Number).ValueGeneratedNever();
        });
        foreach (var table in modelBuilder.Model.GetEntityTypes())
        {
            foreach (var column in table.GetProperties())
            {
                column.SetColumnName(SnakeCase(column.Name));
            }
        }
    }

    private static void Diary(ModelBuilder model)
    {
        model.Entity<DiaryRow>(entry =>
        {
            entry.ToTable("diary_entry");
            entry.HasKey(e => new { e.HeapId, e.Place });
            entry.Property(e => e.Place).ValueGeneratedNever();
            entry.HasIndex(e => e.EntryId).IsUnique();
            entry.HasIndex(e => new { e.HeapId, e.AtUnixMs });
            entry
                .HasIndex(e => e.HeapId)
                .HasFilter("is_correction")
                .HasDatabaseName("IX_diary_entry_corrections");
            entry
                .HasIndex(e => e.HeapId, "IX_diary_entry_moves")
                .HasFilter($"instr(record_json, '{DiaryRow.Move}') > 0");
        });
        model.Entity<PhotoRow>(photo =>
        {
            photo.ToTable("photo");
            photo.HasKey(p => p.ContentSha256);
        });
        model.Entity<DeviceRow>(device =>
        {
            device.ToTable("device");
            device.HasKey(d => d.Id);
            device.HasIndex(d => d.TokenSha256).IsUnique();
            device.Property(d => d.Role).HasDefaultValue(DeviceRow.Usual);
        });
        model.Entity<LinkRow>(link =>
        {
            link.ToTable("link");
            link.HasKey(l => l.Id);
            link.HasIndex(l => l.TokenSha256).IsUnique();
        });
        model.Entity<SettingRow>(setting =>
        {
            setting.ToTable("setting");
            setting.HasKey(s => s.Name);
        });
        model.Entity<ForecastRow>(forecast =>
        {
            forecast.ToTable("forecast");
            forecast.HasKey(f => f.Position);
            forecast.Property(f => f.Position).ValueGeneratedOnAdd();
            forecast.HasIndex(f => new { f.HeapId, f.Position });
        });
    }

    private static void Item<T>(ModelBuilder model, string table)
        where T : ItemRow =>
        model.Entity<T>(row =>
        {
            row.ToTable(table);
            row.HasKey(r => r.Position);
            row.Property(r => r.Position).ValueGeneratedOnAdd();
            row.HasIndex(r => r.Id).IsUnique();
        });

    private static string SnakeCase(string name) =>
        string.Concat(
            name.Select(
                (c, i) =>
                    char.IsUpper(c) && i > 0
                        ? "_" + char.ToLowerInvariant(c)
                        : char.ToLowerInvariant(c).ToString()
            )
        );
}
