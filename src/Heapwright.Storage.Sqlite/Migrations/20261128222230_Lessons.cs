using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Lessons : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "lesson",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    heap_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    bay_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    bin_json = table.Column<string>(type: "TEXT", nullable: false),
                    made_at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    readings = table.Column<int>(type: "INTEGER", nullable: false),
                    is_used = table.Column<bool>(type: "INTEGER", nullable: false),
                    parameters_json = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_lesson", x => x.position);
                }
            );

            migrationBuilder.CreateIndex(
                name: "IX_lesson_id",
                table: "lesson",
                column: "id",
                unique: true
            );

            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[] { 4, "what heaps taught" }
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DeleteData(table: "schema_number", keyColumn: "number", keyValue: 4);

            migrationBuilder.DropTable(name: "lesson");
        }
    }
}
