-- An Undergate project file: one property, everything drawn on it, and the history of its edits.
-- "UGAT" in ASCII; tells this kind of file from any other SQLite file.
PRAGMA application_id = 1430733140;

-- Single facts about the file: revision, position (the newest step that is applied), registersAt (the revision that
-- the registers were computed at; -1: never), made, madeWith.
CREATE TABLE fact (
  name  TEXT PRIMARY KEY,
  value ANY NOT NULL
) STRICT, WITHOUT ROWID;

-- Everything that was drawn or written down. The number keeps the order in which things were made.
CREATE TABLE thing (
  number INTEGER PRIMARY KEY,
  kind   TEXT NOT NULL,
  id     TEXT NOT NULL,
  body   TEXT NOT NULL CHECK (json_valid(body)),
  UNIQUE (kind, id),
  CHECK (json_extract(body, '$.kind') = kind AND json_extract(body, '$.id') = id)
) STRICT;

-- The edits that undo can take back (seq up to the fact "position") and redo can bring again (those after it).
CREATE TABLE step (
  seq     INTEGER PRIMARY KEY,
  at      TEXT NOT NULL,
  label   TEXT NOT NULL,
  changes TEXT NOT NULL CHECK (json_valid(changes))
) STRICT;

-- What the app computed from the things when the file was last closed, for readers without the app. The app itself
-- never reads it.
CREATE TABLE register (
  kind TEXT NOT NULL,
  row  INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (kind, row)
) STRICT, WITHOUT ROWID;

-- Views for reading the file with plain SQLite. Units stand in the column names; places are WGS 84 degrees. Where a
-- view shows something computed, up_to_date is 0 if the file was edited after that.

CREATE VIEW v_gateways AS
SELECT
  gateway.body ->> '$.name'     AS gateway,
  line.body ->> '$.name'        AS fence_line,
  gateway.body ->> '$.atM'      AS along_line_m,
  gateway.body ->> '$.widthM'   AS width_m,
  gateway.body ->> '$.leaves'   AS leaves,
  gateway.body ->> '$.hungFrom' AS hung_from,
  gateway.body ->> '$.opens'    AS opens_to,
  gateway.body ->> '$.vehicles' AS vehicles_pass,
  gateway.body ->> '$.status'   AS status,
  gateway.body ->> '$.note'     AS note
FROM thing AS gateway
LEFT JOIN thing AS line ON line.kind = 'fenceLine' AND line.id = gateway.body ->> '$.lineId'
WHERE gateway.kind = 'gateway'
ORDER BY gateway.number;

-- A bow of NULL is the property's default share of the opening's width. Trench, pipe and cable lengths are computed.
CREATE VIEW v_crossings AS
SELECT
  gateway.body ->> '$.name'             AS gateway,
  crossing.body ->> '$.method'          AS method,
  crossing.body ->> '$.bowM'            AS bow_m,
  crossing.body ->> '$.bowSide'         AS bow_side,
  crossing.body ->> '$.depthM'          AS depth_m,
  crossing.body ->> '$.riserHeightM'    AS riser_height_m,
  crossing.body ->> '$.tailM'           AS tail_m,
  crossing.body ->> '$.allowanceM'      AS allowance_m,
  crossing.body ->> '$.pipeBoreMm'      AS pipe_bore_mm,
  crossing.body ->> '$.minBendRadiusM'  AS least_bend_radius_m,
  crossing.body ->> '$.cableId'         AS live_cable,
  crossing.body ->> '$.earth'           AS earth_cable_too,
  crossing.body ->> '$.earthConnectionM' AS earth_connection_height_m,
  crossing.body ->> '$.sealed'          AS risers_sealed,
  crossing.body ->> '$.status'          AS status,
  crossing.body ->> '$.note'            AS note,
  register.body ->> '$.trenchM'         AS trench_m,
  register.body ->> '$.pipeM'           AS pipe_m,
  register.body ->> '$.liveCableM'      AS live_cable_m,
  register.body ->> '$.earthCableM'     AS earth_cable_m,
  (SELECT value FROM fact WHERE name = 'registersAt') = (SELECT value FROM fact WHERE name = 'revision') AS up_to_date
FROM thing AS crossing
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = crossing.body ->> '$.gatewayId'
LEFT JOIN register ON register.kind = 'crossing' AND register.body ->> '$.crossingId' = crossing.id
WHERE crossing.kind = 'crossing'
ORDER BY crossing.number;

CREATE VIEW v_switches AS
SELECT
  switch.body ->> '$.name'     AS switch,
  switch.body ->> '$.place.on' AS stands_at,
  gateway.body ->> '$.name'    AS gateway,
  switch.body ->> '$.place.post' AS gateway_post,
  line.body ->> '$.name'       AS fence_line,
  switch.body ->> '$.place.end' AS line_end,
  switch.body ->> '$.place.atM' AS along_line_m,
  lead.body ->> '$.name'       AS lead_out,
  switch.body ->> '$.normally' AS normally,
  switch.body ->> '$.status'   AS status,
  switch.body ->> '$.note'     AS note
FROM thing AS switch
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = switch.body ->> '$.place.gatewayId'
LEFT JOIN thing AS line ON line.kind = 'fenceLine'
  AND line.id = coalesce(switch.body ->> '$.place.lineId', gateway.body ->> '$.lineId')
LEFT JOIN thing AS lead ON lead.kind = 'leadOut' AND lead.id = switch.body ->> '$.place.leadOutId'
WHERE switch.kind = 'switch'
ORDER BY switch.number;

CREATE VIEW v_readings AS
SELECT
  reading.body ->> '$.date'     AS date,
  reading.body ->> '$.at[0]'    AS longitude_deg,
  reading.body ->> '$.at[1]'    AS latitude_deg,
  reading.body ->> '$.voltageV' AS voltage_v,
  reading.body ->> '$.currentA' AS current_a,
  (
    SELECT group_concat(switch.body ->> '$.name', ', ' ORDER BY switch.number)
    FROM json_each(reading.body, '$.openSwitchIds') AS open
    JOIN thing AS switch ON switch.kind = 'switch' AND switch.id = open.value
  )                             AS open_switches,
  reading.body ->> '$.note'     AS note
FROM thing AS reading
WHERE reading.kind = 'reading'
ORDER BY reading.number;

-- A section is what stays joined when every cut-out switch is open. All of it is computed.
CREATE VIEW v_sections AS
SELECT
  body ->> '$.letter'       AS section,
  body ->> '$.fenceLengthM' AS fence_length_m,
  body ->> '$.gateways'     AS gateways,
  body ->> '$.switches'     AS switches,
  body ->> '$.fed'          AS fed,
  (SELECT value FROM fact WHERE name = 'registersAt') = (SELECT value FROM fact WHERE name = 'revision') AS up_to_date
FROM register
WHERE kind = 'section'
ORDER BY row;
