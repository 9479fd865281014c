using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class PlansAndSheets : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "build_sheet",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    bay_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    recipe_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    made_at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    question_json = table.Column<string>(type: "TEXT", nullable: false),
                    answer_json = table.Column<string>(type: "TEXT", nullable: false),
                    ticked_layers = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_build_sheet", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "recipe",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    made_at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    question_json = table.Column<string>(type: "TEXT", nullable: false),
                    answer_json = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recipe", x => x.position);
                }
            );

            migrationBuilder.CreateIndex(
                name: "IX_build_sheet_id",
                table: "build_sheet",
                column: "id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_recipe_id",
                table: "recipe",
                column: "id",
                unique: true
            );

            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[] { 2, "kept recipes and build sheets" }
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DeleteData(table: "schema_number", keyColumn: "number", keyValue: 2);

            migrationBuilder.DropTable(name: "build_sheet");

            migrationBuilder.DropTable(name: "recipe");
        }
    }
}
