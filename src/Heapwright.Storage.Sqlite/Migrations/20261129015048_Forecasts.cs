using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Forecasts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "forecast",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    heap_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    made_at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    entries = table.Column<long>(type: "INTEGER", nullable: false),
                    question_sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    engine = table.Column<string>(type: "TEXT", nullable: false),
                    data = table.Column<string>(type: "TEXT", nullable: false),
                    from_day = table.Column<double>(type: "REAL", nullable: false),
                    readings_used = table.Column<int>(type: "INTEGER", nullable: false),
                    step_json = table.Column<string>(type: "TEXT", nullable: false),
                    chance_better = table.Column<double>(type: "REAL", nullable: true),
                    latest_json = table.Column<string>(type: "TEXT", nullable: true),
                    stale = table.Column<string>(type: "TEXT", nullable: false),
                    course_json = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_forecast", x => x.position);
                }
            );

            migrationBuilder.CreateIndex(
                name: "IX_forecast_heap_id_position",
                table: "forecast",
                columns: new[] { "heap_id", "position" }
            );

            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[] { 5, "forecasts as they were made" }
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DeleteData(table: "schema_number", keyColumn: "number", keyValue: 5);

            migrationBuilder.DropTable(name: "forecast");
        }
    }
}
