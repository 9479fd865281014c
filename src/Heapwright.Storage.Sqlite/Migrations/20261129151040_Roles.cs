using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Roles : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "role",
                table: "device",
                type: "TEXT",
                nullable: false,
                defaultValue: "volunteer"
            );

            migrationBuilder.AddColumn<string>(
                name: "until_utc",
                table: "device",
                type: "TEXT",
                nullable: true
            );

            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[] { 9, "what a device may do, and until when" }
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DeleteData(table: "schema_number", keyColumn: "number", keyValue: 9);

            migrationBuilder.DropColumn(name: "role", table: "device");

            migrationBuilder.DropColumn(name: "until_utc", table: "device");
        }
    }
}
