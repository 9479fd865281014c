using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Heapwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class FirstYard : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "act",
                columns: table => new
                {
                    number = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    what = table.Column<string>(type: "TEXT", nullable: false),
                    values_json = table.Column<string>(type: "TEXT", nullable: false),
                    undoes_number = table.Column<long>(type: "INTEGER", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_act", x => x.number);
                }
            );

            migrationBuilder.CreateTable(
                name: "bay",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    shape = table.Column<string>(type: "TEXT", nullable: false),
                    length_m = table.Column<double>(type: "REAL", nullable: true),
                    width_m = table.Column<double>(type: "REAL", nullable: true),
                    diameter_m = table.Column<double>(type: "REAL", nullable: true),
                    height_m = table.Column<double>(type: "REAL", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_bay", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "container",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    holds_l = table.Column<double>(type: "REAL", nullable: false),
                    is_heaped = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_trodden = table.Column<bool>(type: "INTEGER", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_container", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "measurement",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    material = table.Column<string>(type: "TEXT", nullable: false),
                    measure = table.Column<string>(type: "TEXT", nullable: false),
                    at_utc = table.Column<string>(type: "TEXT", nullable: false),
                    values_json = table.Column<string>(type: "TEXT", nullable: false),
                    note = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_measurement", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "own_material",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    counts_as = table.Column<string>(type: "TEXT", nullable: false),
                    freshness = table.Column<string>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    properties_json = table.Column<string>(type: "TEXT", nullable: false),
                    note = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_own_material", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "schema_number",
                columns: table => new
                {
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    brought = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_schema_number", x => x.number);
                }
            );

            migrationBuilder.CreateTable(
                name: "site",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    time_zone = table.Column<string>(type: "TEXT", nullable: false),
                    shown_temperature = table.Column<string>(type: "TEXT", nullable: false),
                    shown_volume = table.Column<string>(type: "TEXT", nullable: false),
                    shown_mass = table.Column<string>(type: "TEXT", nullable: false),
                    shown_length = table.Column<string>(type: "TEXT", nullable: false),
                    language = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_site", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "stock_entry",
                columns: table => new
                {
                    position = table
                        .Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    material = table.Column<string>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    amount = table.Column<double>(type: "REAL", nullable: false),
                    amount_unit = table.Column<string>(type: "TEXT", nullable: false),
                    since_date = table.Column<string>(type: "TEXT", nullable: false),
                    note = table.Column<string>(type: "TEXT", nullable: false),
                    giver = table.Column<string>(type: "TEXT", nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    is_sample = table.Column<bool>(type: "INTEGER", nullable: false),
                    is_removed = table.Column<bool>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_stock_entry", x => x.position);
                }
            );

            migrationBuilder.CreateTable(
                name: "act_change",
                columns: table => new
                {
                    act_number = table.Column<long>(type: "INTEGER", nullable: false),
                    place = table.Column<int>(type: "INTEGER", nullable: false),
                    item_kind = table.Column<string>(type: "TEXT", nullable: false),
                    item_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    before_json = table.Column<string>(type: "TEXT", nullable: true),
                    after_json = table.Column<string>(type: "TEXT", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_act_change", x => new { x.act_number, x.place });
                    table.ForeignKey(
                        name: "FK_act_change_act_act_number",
                        column: x => x.act_number,
                        principalTable: "act",
                        principalColumn: "number",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateIndex(
                name: "IX_act_undoes_number",
                table: "act",
                column: "undoes_number"
            );

            migrationBuilder.CreateIndex(
                name: "IX_act_change_item_kind_item_id",
                table: "act_change",
                columns: new[] { "item_kind", "item_id" }
            );

            migrationBuilder.CreateIndex(
                name: "IX_bay_id",
                table: "bay",
                column: "id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_container_id",
                table: "container",
                column: "id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_measurement_id",
                table: "measurement",
                column: "id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_own_material_id",
                table: "own_material",
                column: "id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_site_id",
                table: "site",
                column: "id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "IX_stock_entry_id",
                table: "stock_entry",
                column: "id",
                unique: true
            );

            migrationBuilder.InsertData(
                table: "schema_number",
                columns: new[] { "number", "brought" },
                values: new object[]
                {
                    1,
                    "the site, its containers, bays, own materials, measurements, stock and the record of changes",
                }
            );

            // The record is added to, never changed and never shortened, whoever writes to the file.
            foreach (var table in new[] { "act", "act_change" })
            {
                foreach (var verb in new[] { "update", "delete" })
                {
                    migrationBuilder.Sql(
                        $"create trigger {table}_no_{verb} before {verb} on {table} begin select raise(abort, 'the record is added to, never changed'); end;"
                    );
                }
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "act_change");

            migrationBuilder.DropTable(name: "bay");

            migrationBuilder.DropTable(name: "container");

            migrationBuilder.DropTable(name: "measurement");

            migrationBuilder.DropTable(name: "own_material");

            migrationBuilder.DropTable(name: "schema_number");

            migrationBuilder.DropTable(name: "site");

            migrationBuilder.DropTable(name: "stock_entry");

            migrationBuilder.DropTable(name: "act");
        }
    }
}
