-- The whole schema in words that any SQLite since 3.31 (January 2020) reads. One newer word anywhere, even in a view that
-- nobody asks for, makes all of a file unreadable to an older SQLite.

-- STRICT is of 3.37. The same is said here with checks of types; "value" of a fact has no type, so that it is kept exactly as
-- it was given. What lies in a table is the same with STRICT and without, so only the words change, and pictures of
-- hundreds of megabytes stay where they are: https://www.sqlite.org/lang_altertable.html, section 7.
PRAGMA writable_schema = ON;

UPDATE sqlite_master SET sql = 'CREATE TABLE fact (
  name  TEXT PRIMARY KEY NOT NULL CHECK (typeof(name) = ''text''),
  value NOT NULL
) WITHOUT ROWID' WHERE type = 'table' AND name = 'fact';

UPDATE sqlite_master SET sql = 'CREATE TABLE thing (
  number INTEGER PRIMARY KEY,
  kind   TEXT NOT NULL CHECK (typeof(kind) = ''text''),
  id     TEXT NOT NULL CHECK (typeof(id) = ''text''),
  body   TEXT NOT NULL CHECK (typeof(body) = ''text'' AND json_valid(body)),
  UNIQUE (kind, id),
  CHECK (json_extract(body, ''$.kind'') = kind AND json_extract(body, ''$.id'') = id)
)' WHERE type = 'table' AND name = 'thing';

UPDATE sqlite_master SET sql = 'CREATE TABLE step (
  seq     INTEGER PRIMARY KEY,
  at      TEXT NOT NULL CHECK (typeof(at) = ''text''),
  label   TEXT NOT NULL CHECK (typeof(label) = ''text''),
  changes TEXT NOT NULL CHECK (typeof(changes) = ''text'' AND json_valid(changes))
)' WHERE type = 'table' AND name = 'step';

UPDATE sqlite_master SET sql = 'CREATE TABLE register (
  kind TEXT NOT NULL CHECK (typeof(kind) = ''text''),
  row  INTEGER NOT NULL CHECK (typeof(row) = ''integer''),
  body TEXT NOT NULL CHECK (typeof(body) = ''text'' AND json_valid(body)),
  PRIMARY KEY (kind, row)
) WITHOUT ROWID' WHERE type = 'table' AND name = 'register';

UPDATE sqlite_master SET sql = 'CREATE TABLE blob (
  id         TEXT PRIMARY KEY NOT NULL CHECK (typeof(id) = ''text''),
  media_type TEXT NOT NULL CHECK (typeof(media_type) = ''text''),
  bytes      BLOB NOT NULL CHECK (typeof(bytes) = ''blob'')
)' WHERE type = 'table' AND name = 'blob';

UPDATE sqlite_master SET sql = 'CREATE TABLE image (
  id        TEXT PRIMARY KEY NOT NULL CHECK (typeof(id) = ''text''),
  file_name TEXT NOT NULL CHECK (typeof(file_name) = ''text''),
  width_px  INTEGER NOT NULL CHECK (typeof(width_px) = ''integer''),
  height_px INTEGER NOT NULL CHECK (typeof(height_px) = ''integer''),
  tile_px   INTEGER NOT NULL CHECK (typeof(tile_px) = ''integer'')
)' WHERE type = 'table' AND name = 'image';

UPDATE sqlite_master SET sql = 'CREATE TABLE image_tile (
  image_id    TEXT NOT NULL CHECK (typeof(image_id) = ''text'') REFERENCES image (id),
  level       INTEGER NOT NULL CHECK (typeof(level) = ''integer''),
  tile_column INTEGER NOT NULL CHECK (typeof(tile_column) = ''integer''),
  tile_row    INTEGER NOT NULL CHECK (typeof(tile_row) = ''integer''),
  bytes       BLOB NOT NULL CHECK (typeof(bytes) = ''blob''),
  PRIMARY KEY (image_id, level, tile_column, tile_row)
)' WHERE type = 'table' AND name = 'image_tile';

-- Reads the new words, and lets no more of them be changed.
PRAGMA writable_schema = RESET;

-- Which writing the file holds: new at each, so that a file that was laid over this one while it was open is never taken
-- for it. See electron/store/heldFile.ts.
INSERT INTO fact (name, value) VALUES ('stamp', lower(hex(randomblob(16))));

-- The views again: json_extract where it said ->> (3.38), and lists put in order before they are joined (ORDER BY inside of
-- group_concat is of 3.44).
DROP VIEW v_gateways;
DROP VIEW v_crossings;
DROP VIEW v_switches;
DROP VIEW v_readings;
DROP VIEW v_sections;
DROP VIEW v_order_settings;
DROP VIEW v_price_list;
DROP VIEW v_rolls_on_hand;
DROP VIEW v_stages;
DROP VIEW v_built;
DROP VIEW v_crossing_records;
DROP VIEW v_depths;
DROP VIEW v_ties;
DROP VIEW v_photos;
DROP VIEW v_test_results;
DROP VIEW v_earth_tests;
DROP VIEW v_handovers;
DROP VIEW v_fault_hunts;
DROP VIEW v_hunt_readings;
DROP VIEW v_underlays;

CREATE VIEW v_gateways AS
SELECT
  json_extract(gateway.body, '$.name')     AS gateway,
  json_extract(line.body, '$.name')        AS fence_line,
  json_extract(gateway.body, '$.atM')      AS along_line_m,
  json_extract(gateway.body, '$.widthM')   AS width_m,
  json_extract(gateway.body, '$.leaves')   AS leaves,
  json_extract(gateway.body, '$.hungFrom') AS hung_from,
  json_extract(gateway.body, '$.opens')    AS opens_to,
  json_extract(gateway.body, '$.vehicles') AS vehicles_pass,
  json_extract(gateway.body, '$.status')   AS status,
  json_extract(gateway.body, '$.note')     AS note
FROM thing AS gateway
LEFT JOIN thing AS line ON line.kind = 'fenceLine' AND line.id = json_extract(gateway.body, '$.lineId')
WHERE gateway.kind = 'gateway'
ORDER BY gateway.number;

-- A bow of NULL is the property's default share of the opening's width. The planned depth is what was drawn; how deep it was
-- found to lie stands beside it, NULL where nobody measured (each place of it: v_depths). Trench, pipe and cable lengths
-- are computed from the plan.
CREATE VIEW v_crossings AS
SELECT
  json_extract(gateway.body, '$.name')              AS gateway,
  json_extract(crossing.body, '$.method')           AS method,
  json_extract(crossing.body, '$.bowM')             AS bow_m,
  json_extract(crossing.body, '$.bowSide')          AS bow_side,
  json_extract(crossing.body, '$.depthM')           AS planned_depth_m,
  measured.shallowest_m                             AS shallowest_measured_depth_m,
  measured.deepest_m                                AS deepest_measured_depth_m,
  json_extract(crossing.body, '$.riserHeightM')     AS riser_height_m,
  json_extract(crossing.body, '$.tailM')            AS tail_m,
  json_extract(crossing.body, '$.allowanceM')       AS allowance_m,
  json_extract(crossing.body, '$.pipeBoreMm')       AS pipe_bore_mm,
  json_extract(crossing.body, '$.minBendRadiusM')   AS least_bend_radius_m,
  json_extract(crossing.body, '$.cableId')          AS live_cable,
  json_extract(crossing.body, '$.earth')            AS earth_cable_too,
  json_extract(crossing.body, '$.earthConnectionM') AS earth_connection_height_m,
  json_extract(crossing.body, '$.sealed')           AS risers_sealed,
  json_extract(crossing.body, '$.status')           AS status,
  json_extract(crossing.body, '$.note')             AS note,
  json_extract(register.body, '$.trenchM')          AS trench_m,
  json_extract(register.body, '$.pipeM')            AS pipe_m,
  json_extract(register.body, '$.liveCableM')       AS live_cable_m,
  json_extract(register.body, '$.earthCableM')      AS earth_cable_m,
  (SELECT value FROM fact WHERE name = 'registersAt') = (SELECT value FROM fact WHERE name = 'revision') AS up_to_date
FROM thing AS crossing
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = json_extract(crossing.body, '$.gatewayId')
LEFT JOIN register ON register.kind = 'crossing' AND json_extract(register.body, '$.crossingId') = crossing.id
LEFT JOIN (
  SELECT
    json_extract(record.body, '$.crossingId')  AS crossing_id,
    min(json_extract(depth.value, '$.depthM')) AS shallowest_m,
    max(json_extract(depth.value, '$.depthM')) AS deepest_m
  FROM thing AS record
  JOIN json_each(record.body, '$.depths') AS depth
  WHERE record.kind = 'crossingRecord'
  GROUP BY json_extract(record.body, '$.crossingId')
) AS measured ON measured.crossing_id = crossing.id
WHERE crossing.kind = 'crossing'
ORDER BY crossing.number;

CREATE VIEW v_switches AS
SELECT
  json_extract(switch.body, '$.name')       AS switch,
  json_extract(switch.body, '$.place.on')   AS stands_at,
  json_extract(gateway.body, '$.name')      AS gateway,
  json_extract(switch.body, '$.place.post') AS gateway_post,
  json_extract(line.body, '$.name')         AS fence_line,
  json_extract(switch.body, '$.place.end')  AS line_end,
  json_extract(switch.body, '$.place.atM')  AS along_line_m,
  json_extract(lead.body, '$.name')         AS lead_out,
  json_extract(switch.body, '$.normally')   AS normally,
  json_extract(switch.body, '$.status')     AS status,
  json_extract(switch.body, '$.note')       AS note
FROM thing AS switch
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = json_extract(switch.body, '$.place.gatewayId')
LEFT JOIN thing AS line ON line.kind = 'fenceLine'
  AND line.id = coalesce(json_extract(switch.body, '$.place.lineId'), json_extract(gateway.body, '$.lineId'))
LEFT JOIN thing AS lead ON lead.kind = 'leadOut' AND lead.id = json_extract(switch.body, '$.place.leadOutId')
WHERE switch.kind = 'switch'
ORDER BY switch.number;

CREATE VIEW v_readings AS
SELECT
  json_extract(reading.body, '$.date')     AS date,
  json_extract(reading.body, '$.at[0]')    AS longitude_deg,
  json_extract(reading.body, '$.at[1]')    AS latitude_deg,
  json_extract(reading.body, '$.place')    AS place,
  json_extract(reading.body, '$.section')  AS section,
  json_extract(reading.body, '$.voltageV') AS voltage_v,
  json_extract(reading.body, '$.currentA') AS current_a,
  (
    SELECT group_concat(name, ', ')
    FROM (
      SELECT json_extract(switch.body, '$.name') AS name
      FROM json_each(reading.body, '$.openSwitchIds') AS open
      JOIN thing AS switch ON switch.kind = 'switch' AND switch.id = open.value
      ORDER BY switch.number
    )
  )                                        AS open_switches,
  json_extract(reading.body, '$.meter')    AS meter,
  json_extract(reading.body, '$.weather')  AS weather,
  json_extract(reading.body, '$.by')       AS by,
  json_extract(run.body, '$.name')         AS run,
  json_extract(reading.body, '$.note')     AS note
FROM thing AS reading
LEFT JOIN thing AS run ON run.kind = 'testRun' AND run.id = json_extract(reading.body, '$.runId')
WHERE reading.kind = 'reading'
ORDER BY reading.number;

-- A section is what stays joined when every cut-out switch is open. All of it is computed.
CREATE VIEW v_sections AS
SELECT
  json_extract(body, '$.letter')       AS section,
  json_extract(body, '$.fenceLengthM') AS fence_length_m,
  json_extract(body, '$.gateways')     AS gateways,
  json_extract(body, '$.switches')     AS switches,
  json_extract(body, '$.fed')          AS fed,
  (SELECT value FROM fact WHERE name = 'registersAt') = (SELECT value FROM fact WHERE name = 'revision') AS up_to_date
FROM register
WHERE kind = 'section'
ORDER BY row;

CREATE VIEW v_order_settings AS
SELECT
  json_extract(body, '$.currency')   AS currency,
  json_extract(body, '$.taxPercent') AS tax_percent,
  json_extract(body, '$.count')      AS counts
FROM thing
WHERE kind = 'orderSettings';

CREATE VIEW v_price_list AS
SELECT
  json_extract(body, '$.name')         AS item,
  json_extract(body, '$.measure')      AS serves,
  json_extract(body, '$.unit')         AS unit,
  json_extract(body, '$.packSize')     AS pack_size,
  json_extract(body, '$.price')        AS price_of_pack,
  json_extract(body, '$.taxPercent')   AS tax_percent,
  json_extract(body, '$.wastePercent') AS waste_percent,
  json_extract(body, '$.invented')     AS invented_price,
  json_extract(body, '$.note')         AS note
FROM thing
WHERE kind = 'catalogueItem'
ORDER BY number;

CREATE VIEW v_rolls_on_hand AS
SELECT
  json_extract(body, '$.measure') AS serves,
  json_extract(body, '$.lengthM') AS length_m,
  json_extract(body, '$.count')   AS rolls,
  json_extract(body, '$.note')    AS note
FROM thing
WHERE kind = 'rollOnHand'
ORDER BY number;

CREATE VIEW v_stages AS
SELECT
  json_extract(stage.body, '$.name')                     AS stage,
  thing.kind                                             AS what,
  coalesce(json_extract(thing.body, '$.name'), thing.id) AS thing
FROM thing AS mark
JOIN thing AS stage ON stage.kind = 'stage' AND stage.id = json_extract(mark.body, '$.stageId')
JOIN thing ON thing.id = json_extract(mark.body, '$.thingId') AND thing.kind <> 'stageMark'
WHERE mark.kind = 'stageMark'
ORDER BY json_extract(stage.body, '$.rank'), thing.number;

CREATE VIEW v_built AS
SELECT
  json_extract(mark.body, '$.thingKind')                                             AS what,
  coalesce(json_extract(thing.body, '$.name'), json_extract(gateway.body, '$.name')) AS name,
  json_extract(mark.body, '$.date')                                                  AS built_on,
  json_extract(mark.body, '$.by')                                                    AS built_by,
  json_extract(mark.body, '$.note')                                                  AS note
FROM thing AS mark
LEFT JOIN thing ON thing.kind = json_extract(mark.body, '$.thingKind') AND thing.id = json_extract(mark.body, '$.thingId')
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = json_extract(thing.body, '$.gatewayId')
WHERE mark.kind = 'builtMark'
ORDER BY mark.number;

CREATE VIEW v_crossing_records AS
SELECT
  json_extract(gateway.body, '$.name')             AS gateway,
  json_extract(record.body, '$.route')             AS route,
  json_extract(record.body, '$.jointsUnderground') AS joints_underground,
  json_extract(record.body, '$.jointsNote')        AS joints_note,
  json_extract(record.body, '$.risers.start')      AS start_riser,
  json_extract(record.body, '$.risers.end')        AS end_riser,
  json_extract(record.body, '$.alsoInTrench')      AS also_in_trench,
  json_extract(record.body, '$.soil')              AS soil,
  json_extract(record.body, '$.recordedBy')        AS recorded_by,
  json_extract(record.body, '$.recordedOn')        AS recorded_on,
  json_extract(record.body, '$.note')              AS note
FROM thing AS record
LEFT JOIN thing AS crossing ON crossing.kind = 'crossing' AND crossing.id = json_extract(record.body, '$.crossingId')
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = json_extract(crossing.body, '$.gatewayId')
WHERE record.kind = 'crossingRecord'
ORDER BY record.number;

CREATE VIEW v_depths AS
SELECT
  json_extract(gateway.body, '$.name')  AS gateway,
  json_extract(depth.value, '$.alongM') AS along_trench_m,
  json_extract(depth.value, '$.depthM') AS depth_m
FROM thing AS record
JOIN json_each(record.body, '$.depths') AS depth
LEFT JOIN thing AS crossing ON crossing.kind = 'crossing' AND crossing.id = json_extract(record.body, '$.crossingId')
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = json_extract(crossing.body, '$.gatewayId')
WHERE record.kind = 'crossingRecord'
ORDER BY record.number, depth.key;

-- One row for each tape distance. The side is as seen from the first tie's post of a point towards the second's.
CREATE VIEW v_ties AS
SELECT
  json_extract(gateway.body, '$.name')   AS gateway,
  json_extract(point.body, '$.role')     AS point,
  json_extract(point.body, '$.name')     AS point_name,
  json_extract(tie.value, '$.postName')  AS from_post,
  json_extract(tie.value, '$.postAt[0]') AS post_longitude_deg,
  json_extract(tie.value, '$.postAt[1]') AS post_latitude_deg,
  json_extract(tie.value, '$.distanceM') AS distance_m,
  json_extract(tie.value, '$.seM')       AS standard_error_m,
  json_extract(point.body, '$.side')     AS side
FROM thing AS point
JOIN json_each(point.body, '$.ties') AS tie
LEFT JOIN thing AS crossing ON crossing.kind = 'crossing' AND crossing.id = json_extract(point.body, '$.crossingId')
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = json_extract(crossing.body, '$.gatewayId')
WHERE point.kind = 'buriedPoint'
ORDER BY gateway.number, point.number, tie.key;

CREATE VIEW v_photos AS
SELECT
  json_extract(photo.body, '$.of.kind')                                              AS what,
  coalesce(json_extract(thing.body, '$.name'), json_extract(gateway.body, '$.name')) AS name,
  json_extract(photo.body, '$.caption')                                              AS caption,
  json_extract(photo.body, '$.takenAt')                                              AS taken_at,
  json_extract(photo.body, '$.gps[0]')                                               AS longitude_deg,
  json_extract(photo.body, '$.gps[1]')                                               AS latitude_deg,
  json_extract(photo.body, '$.fileName')                                             AS file_name,
  blob.media_type                                                                    AS media_type,
  blob.bytes                                                                         AS bytes
FROM thing AS photo
LEFT JOIN blob ON blob.id = json_extract(photo.body, '$.blobId')
LEFT JOIN thing ON thing.kind = json_extract(photo.body, '$.of.kind') AND thing.id = json_extract(photo.body, '$.of.id')
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = json_extract(thing.body, '$.gatewayId')
WHERE photo.kind = 'photo'
ORDER BY photo.number;

CREATE VIEW v_test_results AS
SELECT
  json_extract(run.body, '$.name')        AS run,
  json_extract(run.body, '$.date')        AS begun_on,
  json_extract(run.body, '$.by')          AS by,
  json_extract(run.body, '$.meter')       AS meter,
  json_extract(run.body, '$.weather')     AS weather,
  json_extract(result.value, '$.section') AS section,
  json_extract(result.value, '$.outcome') AS outcome,
  json_extract(result.value, '$.note')    AS note
FROM thing AS run
JOIN json_each(run.body, '$.results') AS result
WHERE run.kind = 'testRun'
ORDER BY run.number, result.key;

CREATE VIEW v_earth_tests AS
SELECT
  json_extract(energiser.body, '$.name') AS energiser,
  json_extract(test.body, '$.date')      AS date,
  json_extract(test.body, '$.earthV')    AS earth_v,
  json_extract(test.body, '$.fenceV')    AS loaded_fence_v,
  json_extract(test.body, '$.load')      AS load,
  json_extract(test.body, '$.by')        AS by,
  json_extract(test.body, '$.meter')     AS meter,
  json_extract(test.body, '$.weather')   AS weather,
  json_extract(test.body, '$.note')      AS note
FROM thing AS test
LEFT JOIN thing AS field ON field.kind = 'earthField' AND field.id = json_extract(test.body, '$.earthFieldId')
LEFT JOIN thing AS energiser ON energiser.kind = 'energiser' AND energiser.id = json_extract(field.body, '$.energiserId')
WHERE test.kind = 'earthTest'
ORDER BY test.number;

CREATE VIEW v_handovers AS
SELECT
  json_extract(body, '$.number') AS handover,
  json_extract(body, '$.date')   AS date,
  json_extract(body, '$.by')     AS handed_over_by,
  json_extract(body, '$.to')     AS handed_over_to,
  json_extract(body, '$.note')   AS note
FROM thing
WHERE kind = 'handover'
ORDER BY json_extract(body, '$.number');

CREATE VIEW v_fault_hunts AS
SELECT
  json_extract(hunt.body, '$.name')          AS name,
  json_extract(hunt.body, '$.startedAt')     AS started_at,
  json_extract(hunt.body, '$.by')            AS searched_by,
  json_extract(hunt.body, '$.end.at')        AS ended_at,
  json_extract(hunt.body, '$.end.outcome')   AS outcome,
  json_extract(hunt.body, '$.end.section')   AS section,
  json_extract(hunt.body, '$.end.place')     AS place,
  json_extract(hunt.body, '$.end.confirmed') AS confirmed,
  json_extract(hunt.body, '$.end.cause')     AS cause,
  json_extract(hunt.body, '$.note')          AS note
FROM thing AS hunt
WHERE hunt.kind = 'faultHunt'
ORDER BY hunt.number;

-- One row for each reading of a search.
CREATE VIEW v_hunt_readings AS
SELECT
  json_extract(hunt.body, '$.name')           AS hunt,
  reading.key + 1                             AS number,
  json_extract(reading.value, '$.at')         AS read_at,
  json_extract(reading.value, '$.check')      AS read_for,
  json_extract(reading.value, '$.switchName') AS at_switch,
  json_extract(reading.value, '$.voltageV')   AS voltage_v,
  json_extract(reading.value, '$.result')     AS result,
  json_extract(reading.value, '$.doubtful')   AS doubtful,
  json_extract(reading.value, '$.setAside')   AS set_aside
FROM thing AS hunt
JOIN json_each(hunt.body, '$.readings') AS reading
WHERE hunt.kind = 'faultHunt'
ORDER BY hunt.number, reading.key;

CREATE VIEW v_underlays AS
SELECT
  json_extract(body, '$.name')            AS name,
  json_extract(body, '$.source.from')     AS source,
  json_extract(body, '$.source.fileName') AS file_name,
  json_extract(body, '$.source.path')     AS path,
  json_extract(body, '$.placement.by')    AS placed_by,
  json_extract(body, '$.opacity')         AS opacity,
  json_extract(body, '$.shown')           AS shown,
  json_extract(body, '$.note')            AS note
FROM thing
WHERE kind = 'underlay'
ORDER BY json_extract(body, '$.rank');
