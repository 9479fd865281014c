using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class LinksAndSettings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "link",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    purpose = table.Column<string>(type: "TEXT", nullable: false),
                    heap_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    token_sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    made_at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    expires_at_utc = table.Column<string>(type: "TEXT", nullable: true),
                    revoked_at_utc = table.Column<string>(type: "TEXT", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_link", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "setting",
                columns: table => new
                {
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    value = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_setting", x => x.name);
                }
            );

            migrationBuilder.CreateIndex(
                name: "IX_link_token_sha256",
                table: "link",
                column: "token_sha256",
                unique: true
            );

            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[] { 6, "secret addresses, settings of the installation" }
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DeleteData(table: "schema_number", keyColumn: "number", keyValue: 6);

            migrationBuilder.DropTable(name: "link");

            migrationBuilder.DropTable(name: "setting");
        }
    }
}
