using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class HeapsAndDiary : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "device",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    token_sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    made_at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    revoked_at_utc = table.Column<string>(type: "TEXT", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_device", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "diary_entry",
                columns: table => new
                {
                    heap_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    place = table.Column<long>(type: "INTEGER", nullable: false),
                    entry_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    at_unix_ms = table.Column<long>(type: "INTEGER", nullable: false),
                    is_correction = table.Column<bool>(type: "INTEGER", nullable: false),
                    record_json = table.Column<string>(type: "TEXT", nullable: false),
                    chain_sha256 = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_diary_entry", x => new { x.heap_id, x.place });
                }
            );

            migrationBuilder.CreateTable(
                name: "heap",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    bay_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    sheet_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    built_at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    time_zone = table.Column<string>(type: "TEXT", nullable: false),
                    aim = table.Column<string>(type: "TEXT", nullable: false),
                    question_json = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_heap", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "photo",
                columns: table => new
                {
                    content_sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    media_type = table.Column<string>(type: "TEXT", nullable: false),
                    content = table.Column<byte[]>(type: "BLOB", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photo", x => x.content_sha256);
                }
            );

            migrationBuilder.CreateIndex(
                name: "IX_device_token_sha256",
                table: "device",
                column: "token_sha256",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_diary_entry_corrections",
                table: "diary_entry",
                column: "heap_id",
                filter: "is_correction"
            );

            migrationBuilder.CreateIndex(
                name: "IX_diary_entry_entry_id",
                table: "diary_entry",
                column: "entry_id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_diary_entry_heap_id_at_unix_ms",
                table: "diary_entry",
                columns: new[] { "heap_id", "at_unix_ms" }
            );

            migrationBuilder.CreateIndex(
                name: "IX_heap_id",
                table: "heap",
                column: "id",
                unique: true
            );

            // Entries are added and nothing else, whoever writes: neither changed, nor taken out, nor put in the place of another.
            migrationBuilder.Sql(
                """
                create trigger diary_entry_is_not_changed before update on diary_entry
                begin select raise(abort, 'entries of a diary are never changed'); end;
                """
            );
            migrationBuilder.Sql(
                """
                create trigger diary_entry_is_not_taken_out before delete on diary_entry
                begin select raise(abort, 'entries of a diary are never taken out'); end;
                """
            );
            migrationBuilder.Sql(
                """
                create trigger diary_entry_is_not_replaced before insert on diary_entry
                when exists (select 1 from diary_entry where entry_id = new.entry_id)
                    or exists (select 1 from diary_entry where heap_id = new.heap_id and place = new.place)
                begin select raise(abort, 'there is such an entry in the diary'); end;
                """
            );
            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[] { 3, "heaps, their diaries, photos and devices" }
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DeleteData(table: "schema_number", keyColumn: "number", keyValue: 3);

            migrationBuilder.DropTable(name: "device");

            migrationBuilder.DropTable(name: "diary_entry");

            migrationBuilder.DropTable(name: "heap");

            migrationBuilder.DropTable(name: "photo");
        }
    }
}
