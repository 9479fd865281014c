using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Moves : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "IX_diary_entry_moves",
                table: "diary_entry",
                column: "heap_id",
                filter: "instr(record_json, '\"do\":\"move\"') > 0"
            );

            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[] { 8, "an index of the moves to another bay" }
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DeleteData(table: "schema_number", keyColumn: "number", keyValue: 8);

            migrationBuilder.DropIndex(name: "IX_diary_entry_moves", table: "diary_entry");
        }
    }
}
