-- A file as schema 7 was released, made by its migrations, with something in it.
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

BEGIN TRANSACTION;
CREATE TABLE "lesson" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_lesson" PRIMARY KEY AUTOINCREMENT,
    "heap_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "bay_id" TEXT NULL,
    "bin_json" TEXT NOT NULL,
    "made_at_utc" TEXT NOT NULL,
    "readings" INTEGER NOT NULL,
    "is_used" INTEGER NOT NULL,
    "parameters_json" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE UNIQUE INDEX "IX_lesson_id" ON "lesson" ("id");

INSERT INTO "schema_number" ("number", "brought")
VALUES (4, 'what heaps taught');
SELECT changes();


INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128222230_Lessons', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "build_sheet" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_build_sheet" PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "bay_id" TEXT NULL,
    "recipe_id" TEXT NULL,
    "made_at_utc" TEXT NOT NULL,
    "question_json" TEXT NOT NULL,
    "answer_json" TEXT NOT NULL,
    "ticked_layers" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "recipe" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_recipe" PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "made_at_utc" TEXT NOT NULL,
    "question_json" TEXT NOT NULL,
    "answer_json" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE UNIQUE INDEX "IX_build_sheet_id" ON "build_sheet" ("id");

CREATE UNIQUE INDEX "IX_recipe_id" ON "recipe" ("id");

INSERT INTO "schema_number" ("number", "brought")
VALUES (2, 'kept recipes and build sheets');
SELECT changes();


INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125080912_PlansAndSheets', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "device" (
    "id" TEXT NOT NULL CONSTRAINT "PK_device" PRIMARY KEY,
    "name" TEXT NOT NULL,
    "token_sha256" TEXT NOT NULL,
    "made_at_utc" TEXT NOT NULL,
    "revoked_at_utc" TEXT NULL
);

CREATE TABLE "diary_entry" (
    "heap_id" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "entry_id" TEXT NOT NULL,
    "at_unix_ms" INTEGER NOT NULL,
    "is_correction" INTEGER NOT NULL,
    "record_json" TEXT NOT NULL,
    "chain_sha256" TEXT NOT NULL,
    CONSTRAINT "PK_diary_entry" PRIMARY KEY ("heap_id", "place")
);

CREATE TABLE "heap" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_heap" PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "bay_id" TEXT NULL,
    "sheet_id" TEXT NULL,
    "built_at_utc" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "aim" TEXT NOT NULL,
    "question_json" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "is_sample" INTEGER NOT NULL,
    "is_removed" INTEGER NOT NULL
);

CREATE TABLE "photo" (
    "content_sha256" TEXT NOT NULL CONSTRAINT "PK_photo" PRIMARY KEY,
    "media_type" TEXT NOT NULL,
    "content" BLOB NOT NULL
);

CREATE UNIQUE INDEX "IX_device_token_sha256" ON "device" ("token_sha256");

CREATE INDEX "IX_diary_entry_corrections" ON "diary_entry" ("heap_id") WHERE is_correction;

CREATE UNIQUE INDEX "IX_diary_entry_entry_id" ON "diary_entry" ("entry_id");

CREATE INDEX "IX_diary_entry_heap_id_at_unix_ms" ON "diary_entry" ("heap_id", "at_unix_ms");

CREATE UNIQUE INDEX "IX_heap_id" ON "heap" ("id");

create trigger diary_entry_is_not_changed before update on diary_entry
begin select raise(abort, 'entries of a diary are never changed'); end;

create trigger diary_entry_is_not_taken_out before delete on diary_entry
begin select raise(abort, 'entries of a diary are never taken out'); end;

create trigger diary_entry_is_not_replaced before insert on diary_entry
when exists (select 1 from diary_entry where entry_id = new.entry_id)
    or exists (select 1 from diary_entry where heap_id = new.heap_id and place = new.place)
begin select raise(abort, 'there is such an entry in the diary'); end;

INSERT INTO "schema_number" ("number", "brought")
VALUES (3, 'heaps, their diaries, photos and devices');
SELECT changes();


INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128154847_HeapsAndDiary', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "forecast" (
    "position" INTEGER NOT NULL CONSTRAINT "PK_forecast" PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "heap_id" TEXT NOT NULL,
    "made_at_utc" TEXT NOT NULL,
    "entries" INTEGER NOT NULL,
    "question_sha256" TEXT NOT NULL,
    "engine" TEXT NOT NULL,
    "data" TEXT NOT NULL,
    "from_day" REAL NOT NULL,
    "readings_used" INTEGER NOT NULL,
    "step_json" TEXT NOT NULL,
    "chance_better" REAL NULL,
    "latest_json" TEXT NULL,
    "stale" TEXT NOT NULL,
    "course_json" TEXT NOT NULL
);

CREATE INDEX "IX_forecast_heap_id_position" ON "forecast" ("heap_id", "position");

INSERT INTO "schema_number" ("number", "brought")
VALUES (5, 'forecasts as they were made');
SELECT changes();


INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261129015048_Forecasts', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "link" (
    "id" TEXT NOT NULL CONSTRAINT "PK_link" PRIMARY KEY,
    "purpose" TEXT NOT NULL,
    "heap_id" TEXT NULL,
    "token_sha256" TEXT NOT NULL,
    "made_at_utc" TEXT NOT NULL,
    "expires_at_utc" TEXT NULL,
    "revoked_at_utc" TEXT NULL
);

CREATE TABLE "setting" (
    "name" TEXT NOT NULL CONSTRAINT "PK_setting" PRIMARY KEY,
    "value" TEXT NOT NULL
);

CREATE UNIQUE INDEX "IX_link_token_sha256" ON "link" ("token_sha256");

INSERT INTO "schema_number" ("number", "brought")
VALUES (6, 'secret addresses, settings of the installation');
SELECT changes();


INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261129023717_LinksAndSettings', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
ALTER TABLE "site" ADD "monthly_air" TEXT NULL;

INSERT INTO "schema_number" ("number", "brought")
VALUES (7, 'the air of the site through the year');

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261129083917_MonthlyAir', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE INDEX "IX_diary_entry_moves" ON "diary_entry" ("heap_id") WHERE instr(record_json, '"do":"move"') > 0;

INSERT INTO "schema_number" ("number", "brought")
VALUES (8, 'an index of the moves to another bay');

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261129113416_Moves', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
ALTER TABLE "device" ADD "role" TEXT NOT NULL DEFAULT 'volunteer';

ALTER TABLE "device" ADD "until_utc" TEXT NULL;

INSERT INTO "schema_number" ("number", "brought")
VALUES (9, 'what a device may do, and until when');

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261129151040_Roles', '10.0.15');

COMMIT;

insert into site (name, time_zone, shown_temperature, shown_volume, shown_mass, shown_length, language, monthly_air, id, is_sample, is_removed)
values ('Fixture Garden', 'Europe/London', 'c', 'l', 'kg', 'm', 'en', '{"means_c":[4,4.5,6.5,9,12,15,17,17,14.5,11,7,4.5],"swing_k":4}', '5175E000-0000-4000-8000-000000000001', 0, 0);
insert into stock_entry (material, name, amount, amount_unit, since_date, note, giver, id, is_sample, is_removed)
values ('grass_clippings_fresh', 'Grass', 2.5, 'wheelbarrow', '2026-03-28', '', '', '00000000-0000-4000-8000-000000000042', 0, 0);
insert into act (at_utc, what, values_json, undoes_number)
values ('2026-03-29T10:00:00.5Z', 'acts.stock_added', '["2.5","wheelbarrow","Grass"]', null);
insert into act_change (act_number, place, item_kind, item_id, before_json, after_json)
values (1, 0, 'stock', '00000000-0000-4000-8000-000000000042', null,
'{"material":"grass_clippings_fresh","name":"Grass","amount":2.5,"unit":"wheelbarrow","since":"2026-03-28","note":"","giver":"","id":"00000000-0000-4000-8000-000000000042","is_sample":false}');
insert into build_sheet (name, bay_id, recipe_id, made_at_utc, question_json, answer_json, ticked_layers, id, is_sample, is_removed)
values ('Spring heap', null, null, '2026-03-29T10:01:00Z', '{}', '{"layers":[]}', '1 2', '00000000-0000-4000-8000-000000000043', 0, 0);
insert into heap (name, bay_id, sheet_id, built_at_utc, time_zone, aim, question_json, id, is_sample, is_removed)
values ('Spring heap', null, '00000000-0000-4000-8000-000000000043', '2026-03-29T10:02:00Z', 'Europe/London', 'all_through_heat',
'{"bin":{"shape":"ring","diameter_m":1,"height_m":1},"ingredients":[{"material":"grass_clippings_fresh","amount":{"value":2,"unit":"wheelbarrow"}}],"water_l":0}', '00000000-0000-4000-8000-000000000044', 0, 0);
insert into diary_entry (heap_id, place, entry_id, at_unix_ms, is_correction, record_json, chain_sha256)
values ('00000000-0000-4000-8000-000000000044', 1, '00000000-0000-4000-8000-000000000045', 1774857600000, 0,
'{"schema":1,"id":"00000000-0000-4000-8000-000000000045","heap_id":"00000000-0000-4000-8000-000000000044","received_at":"2026-03-30T08:00:05+00:00","way":"page","at":"2026-03-30T09:00:00+01:00","zone":"Europe/London","entry":"temperature","temperature_c":41.5,"spot":"core","depth_cm":45,"verdict":{"status":"plausible"}}',
'9231a013078eeae07a6bdc6bd83eef85a6e982ca1641b9bc9ca49dc4a590f09e');
insert into diary_entry (heap_id, place, entry_id, at_unix_ms, is_correction, record_json, chain_sha256)
values ('00000000-0000-4000-8000-000000000044', 2, '00000000-0000-4000-8000-000000000046', 1775116800000, 0,
'{"schema":1,"id":"00000000-0000-4000-8000-000000000046","heap_id":"00000000-0000-4000-8000-000000000044","received_at":"2026-04-02T08:00:05+00:00","way":"http","at":"2026-04-02T09:00:00+01:00","entry":"event","do":"turn","thoroughness":"fair","part":"all"}',
'863689c6a988978404bd14a37cabc943ba97de65937f4f84942a28e273b5ddde');
insert into lesson (heap_id, name, bay_id, bin_json, made_at_utc, readings, is_used, parameters_json, id, is_sample, is_removed)
values ('00000000-0000-4000-8000-000000000044', 'Spring heap', null, '{"shape":"ring","diameter_m":1,"height_m":1}', '2026-04-20T10:00:00Z', 14, 1,
'{"fast_rate":{"mean":0.8,"deviation":0.6}}', '00000000-0000-4000-8000-000000000047', 0, 0);
insert into forecast (id, heap_id, made_at_utc, entries, question_sha256, engine, data, from_day, readings_used, step_json, chance_better, latest_json, stale, course_json)
values ('00000000-0000-4000-8000-000000000048', '00000000-0000-4000-8000-000000000044', '2026-04-02T09:00:00Z', 2,
'9231a013078eeae07a6bdc6bd83eef85a6e982ca1641b9bc9ca49dc4a590f09e', '1.0.0', 'abc', 4.0, 1,
'{"Deed":"turn","OnDay":5,"Litres":20,"Amount":null,"Unit":null,"Material":null,"Cover":null}', 0.75, '[1,30,40,50,41.5]', 'OldReadings', '[[4,50,52,55,57,60],[14,30,34,40,44,50]]');
insert into link (id, purpose, heap_id, token_sha256, made_at_utc, expires_at_utc, revoked_at_utc)
values ('00000000-0000-4000-8000-000000000049', 'share', '00000000-0000-4000-8000-000000000044', 'fixture', '2026-04-20T10:00:00Z', '2026-05-20T10:00:00Z', null);
insert into setting (name, value) values ('mail.address', 'garden@example.org');
insert into device (id, name, role, token_sha256, made_at_utc, until_utc, revoked_at_utc)
values ('00000000-0000-4000-8000-000000000050', 'Robin', 'coordinator', 'robin', '2026-04-20T10:00:00Z', '2026-04-20T23:00:00Z', null);
