-- A file as schema 1 was released, made by its migration, with something in it.
CREATE TABLE IF NOT EXISTS "__EFMigrationsHistory" (
    "MigrationId" TEXT NOT NULL CONSTRAINT "PK___EFMigrationsHistory" PRIMARY KEY,
    "ProductVersion" TEXT NOT NULL
);

BEGIN TRANSACTION;
CREATE TABLE "act" (
    "number" INTEGER NOT NULL CONSTRAINT "PK_act" PRIMARY KEY AUTOINCREMENT,
    "at_utc" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "values_json" TEXT NOT NULL,
    "undoes_number" INTEGER NULL
);

CREATE TABLE "bay" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_bay" PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "shape" TEXT NOT NULL,
    "length_m" REAL NULL,
    "width_m" REAL NULL,
    "diameter_m" REAL NULL,
    "height_m" REAL NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "container" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_container" PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "holds_l" REAL NOT NULL,
    "is_heaped" INTEGER NOT NULL,
    "is_trodden" INTEGER NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "measurement" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_measurement" PRIMARY KEY AUTOINCREMENT,
    "material" TEXT NOT NULL,
    "measure" TEXT NOT NULL,
    "at_utc" TEXT NOT NULL,
    "values_json" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "own_material" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_own_material" PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "counts_as" TEXT NOT NULL,
    "freshness" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "properties_json" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "schema_number" (
    "number" INTEGER NOT NULL CONSTRAINT "PK_schema_number" PRIMARY KEY,
    "brought" TEXT NOT NULL
);

CREATE TABLE "site" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_site" PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "shown_temperature" TEXT NOT NULL,
    "shown_volume" TEXT NOT NULL,
    "shown_mass" TEXT NOT NULL,
    "shown_length" TEXT NOT NULL,
    "language" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "stock_entry" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_stock_entry" PRIMARY KEY AUTOINCREMENT,
    "material" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "amount" REAL NOT NULL,
    "amount_unit" TEXT NOT NULL,
    "since_date" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "giver" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "act_change" (
    "act_number" INTEGER NOT NULL,
    "place" INTEGER NOT NULL,
    "item_kind" TEXT NOT NULL,
    "item_id" TEXT NOT NULL,
    "before_json" TEXT NULL,
    "after_json" TEXT NULL,
    CONSTRAINT "PK_act_change" PRIMARY KEY ("act_number", "place"),
    CONSTRAINT "FK_act_change_act_act_number" FOREIGN KEY ("act_number") REFERENCES "act" ("number") ON DELETE CASCADE
);

CREATE INDEX "IX_act_undoes_number" ON "act" ("undoes_number");

CREATE INDEX "IX_act_change_item_kind_item_id" ON "act_change" ("item_kind", "item_id");

CREATE UNIQUE INDEX "IX_bay_id" ON "bay" ("id");

CREATE UNIQUE INDEX "IX_container_id" ON "container" ("id");

CREATE UNIQUE INDEX "IX_measurement_id" ON "measurement" ("id");

CREATE UNIQUE INDEX "IX_own_material_id" ON "own_material" ("id");

CREATE UNIQUE INDEX "IX_site_id" ON "site" ("id");

CREATE UNIQUE INDEX "IX_stock_entry_id" ON "stock_entry" ("id");

INSERT INTO "schema_number" ("number", "brought")
VALUES (1, 'the site, its containers, bays, own materials, measurements, stock and the record of changes');
SELECT changes();


create trigger act_no_update before update on act begin select raise(abort, 'the record is added to, never changed'); end;

create trigger act_no_delete before delete on act begin select raise(abort, 'the record is added to, never changed'); end;

create trigger act_change_no_update before update on act_change begin select raise(abort, 'the record is added to, never changed'); end;

create trigger act_change_no_delete before delete on act_change begin select raise(abort, 'the record is added to, never changed'); end;

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125075937_FirstYard', '10.0.15');

COMMIT;

insert into site (name, time_zone, shown_temperature, shown_volume, shown_mass, shown_length, language, id, is_sample, is_removed)
values ('Fixture Garden', 'Europe/London', 'c', 'l', 'kg', 'm', 'en', '5175E000-0000-4000-8000-000000000001', 0, 0);
insert into stock_entry (material, name, amount, amount_unit, since_date, note, giver, id, is_sample, is_removed)
values ('grass_clippings_fresh', 'Grass', 2.5, 'wheelbarrow', '2026-03-28', '', '', '00000000-0000-4000-8000-000000000042', 0, 0);
insert into act (at_utc, what, values_json, undoes_number)
values ('2026-03-29T10:00:00.5Z', 'acts.stock_added', '["2.5","wheelbarrow","Grass"]', null);
insert into act_change (act_number, place, item_kind, item_id, before_json, after_json)
values (1, 0, 'stock', '00000000-0000-4000-8000-000000000042', null,
'{"material":"grass_clippings_fresh","name":"Grass","amount":2.5,"unit":"wheelbarrow","since":"2026-03-28","note":"","giver":"","id":"00000000-0000-4000-8000-000000000042","is_sample":false}');
