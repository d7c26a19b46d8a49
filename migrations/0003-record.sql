-- What is recorded of the work as built. The records are things like all others; the views below read them.

-- Pictures, each once, named by the SHA-256 of its bytes in hexadecimal. They are written before the thing that names
-- them and outlive it while a step of undo or a handover still names them: see electron/store/blobTable.ts.
CREATE TABLE blob (
  id         TEXT PRIMARY KEY,
  media_type TEXT NOT NULL,
  bytes      BLOB NOT NULL
) STRICT;

CREATE VIEW v_built AS
SELECT
  mark.body ->> '$.thingKind' AS what,
  coalesce(thing.body ->> '$.name', gateway.body ->> '$.name') AS name,
  mark.body ->> '$.date'      AS built_on,
  mark.body ->> '$.by'        AS built_by,
  mark.body ->> '$.note'      AS note
FROM thing AS mark
LEFT JOIN thing ON thing.kind = mark.body ->> '$.thingKind' AND thing.id = mark.body ->> '$.thingId'
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = thing.body ->> '$.gatewayId'
WHERE mark.kind = 'builtMark'
ORDER BY mark.number;

CREATE VIEW v_crossing_records AS
SELECT
  gateway.body ->> '$.name'            AS gateway,
  record.body ->> '$.route'            AS route,
  record.body ->> '$.jointsUnderground' AS joints_underground,
  record.body ->> '$.jointsNote'       AS joints_note,
  record.body ->> '$.risers.start'     AS start_riser,
  record.body ->> '$.risers.end'       AS end_riser,
  record.body ->> '$.alsoInTrench'     AS also_in_trench,
  record.body ->> '$.soil'             AS soil,
  record.body ->> '$.recordedBy'       AS recorded_by,
  record.body ->> '$.recordedOn'       AS recorded_on,
  record.body ->> '$.note'             AS note
FROM thing AS record
LEFT JOIN thing AS crossing ON crossing.kind = 'crossing' AND crossing.id = record.body ->> '$.crossingId'
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = crossing.body ->> '$.gatewayId'
WHERE record.kind = 'crossingRecord'
ORDER BY record.number;

CREATE VIEW v_depths AS
SELECT
  gateway.body ->> '$.name' AS gateway,
  depth.value ->> '$.alongM' AS along_trench_m,
  depth.value ->> '$.depthM' AS depth_m
FROM thing AS record
JOIN json_each(record.body, '$.depths') AS depth
LEFT JOIN thing AS crossing ON crossing.kind = 'crossing' AND crossing.id = record.body ->> '$.crossingId'
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = crossing.body ->> '$.gatewayId'
WHERE record.kind = 'crossingRecord'
ORDER BY record.number, depth.key;

-- One row for each tape distance. The side is as seen from the first tie's post of a point towards the second's.
CREATE VIEW v_ties AS
SELECT
  gateway.body ->> '$.name'     AS gateway,
  point.body ->> '$.role'       AS point,
  point.body ->> '$.name'       AS point_name,
  tie.value ->> '$.postName'    AS from_post,
  tie.value ->> '$.postAt[0]'   AS post_longitude_deg,
  tie.value ->> '$.postAt[1]'   AS post_latitude_deg,
  tie.value ->> '$.distanceM'   AS distance_m,
  tie.value ->> '$.seM'         AS standard_error_m,
  point.body ->> '$.side'       AS side
FROM thing AS point
JOIN json_each(point.body, '$.ties') AS tie
LEFT JOIN thing AS crossing ON crossing.kind = 'crossing' AND crossing.id = point.body ->> '$.crossingId'
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = crossing.body ->> '$.gatewayId'
WHERE point.kind = 'buriedPoint'
ORDER BY gateway.number, point.number, tie.key;

CREATE VIEW v_photos AS
SELECT
  photo.body ->> '$.of.kind'   AS what,
  coalesce(thing.body ->> '$.name', gateway.body ->> '$.name') AS name,
  photo.body ->> '$.caption'   AS caption,
  photo.body ->> '$.takenAt'   AS taken_at,
  photo.body ->> '$.gps[0]'    AS longitude_deg,
  photo.body ->> '$.gps[1]'    AS latitude_deg,
  photo.body ->> '$.fileName'  AS file_name,
  blob.media_type              AS media_type,
  blob.bytes                   AS bytes
FROM thing AS photo
LEFT JOIN blob ON blob.id = photo.body ->> '$.blobId'
LEFT JOIN thing ON thing.kind = photo.body ->> '$.of.kind' AND thing.id = photo.body ->> '$.of.id'
LEFT JOIN thing AS gateway ON gateway.kind = 'gateway' AND gateway.id = thing.body ->> '$.gatewayId'
WHERE photo.kind = 'photo'
ORDER BY photo.number;

CREATE VIEW v_test_results AS
SELECT
  run.body ->> '$.name'        AS run,
  run.body ->> '$.date'        AS begun_on,
  run.body ->> '$.by'          AS by,
  run.body ->> '$.meter'       AS meter,
  run.body ->> '$.weather'     AS weather,
  result.value ->> '$.section' AS section,
  result.value ->> '$.outcome' AS outcome,
  result.value ->> '$.note'    AS note
FROM thing AS run
JOIN json_each(run.body, '$.results') AS result
WHERE run.kind = 'testRun'
ORDER BY run.number, result.key;

CREATE VIEW v_earth_tests AS
SELECT
  energiser.body ->> '$.name' AS energiser,
  test.body ->> '$.date'      AS date,
  test.body ->> '$.earthV'    AS earth_v,
  test.body ->> '$.fenceV'    AS loaded_fence_v,
  test.body ->> '$.load'      AS load,
  test.body ->> '$.by'        AS by,
  test.body ->> '$.meter'     AS meter,
  test.body ->> '$.weather'   AS weather,
  test.body ->> '$.note'      AS note
FROM thing AS test
LEFT JOIN thing AS field ON field.kind = 'earthField' AND field.id = test.body ->> '$.earthFieldId'
LEFT JOIN thing AS energiser ON energiser.kind = 'energiser' AND energiser.id = field.body ->> '$.energiserId'
WHERE test.kind = 'earthTest'
ORDER BY test.number;

CREATE VIEW v_handovers AS
SELECT
  body ->> '$.number' AS handover,
  body ->> '$.date'   AS date,
  body ->> '$.by'     AS handed_over_by,
  body ->> '$.to'     AS handed_over_to,
  body ->> '$.note'   AS note
FROM thing
WHERE kind = 'handover'
ORDER BY body ->> '$.number';

DROP VIEW v_readings;

CREATE VIEW v_readings AS
SELECT
  reading.body ->> '$.date'     AS date,
  reading.body ->> '$.at[0]'    AS longitude_deg,
  reading.body ->> '$.at[1]'    AS latitude_deg,
  reading.body ->> '$.place'    AS place,
  reading.body ->> '$.section'  AS section,
  reading.body ->> '$.voltageV' AS voltage_v,
  reading.body ->> '$.currentA' AS current_a,
  (
    SELECT group_concat(switch.body ->> '$.name', ', ' ORDER BY switch.number)
    FROM json_each(reading.body, '$.openSwitchIds') AS open
    JOIN thing AS switch ON switch.kind = 'switch' AND switch.id = open.value
  )                             AS open_switches,
  reading.body ->> '$.meter'    AS meter,
  reading.body ->> '$.weather'  AS weather,
  reading.body ->> '$.by'       AS by,
  run.body ->> '$.name'         AS run,
  reading.body ->> '$.note'     AS note
FROM thing AS reading
LEFT JOIN thing AS run ON run.kind = 'testRun' AND run.id = reading.body ->> '$.runId'
WHERE reading.kind = 'reading'
ORDER BY reading.number;
