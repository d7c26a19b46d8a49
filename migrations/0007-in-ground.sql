-- What was left in the ground when it went from the drawing is a thing like all others; these views read it. Where it lies
-- is computed: by its tapes, from the places that their posts had on the day, else as it was drawn.

CREATE VIEW v_in_ground AS
SELECT
  json_extract(left_thing.body, '$.name')                     AS name,
  json_extract(left_thing.body, '$.was.what')                 AS what,
  json_extract(left_thing.body, '$.fate')                     AS fate,
  json_extract(left_thing.body, '$.since')                    AS drawn_until,
  json_extract(left_thing.body, '$.was.gateway.name')         AS gateway,
  json_extract(left_thing.body, '$.was.lineName')             AS fence_line,
  json_extract(left_thing.body, '$.was.crossing.depthM')      AS planned_depth_m,
  (
    SELECT min(json_extract(depth.value, '$.depthM'))
    FROM json_each(left_thing.body, '$.was.record.depths') AS depth
  )                                                           AS shallowest_measured_depth_m,
  (
    SELECT max(json_extract(depth.value, '$.depthM'))
    FROM json_each(left_thing.body, '$.was.record.depths') AS depth
  )                                                           AS deepest_measured_depth_m,
  json_extract(left_thing.body, '$.was.record.alsoInTrench')  AS also_in_trench,
  json_extract(left_thing.body, '$.was.mark.date')            AS built_on,
  json_extract(register.body, '$.from[0]')                    AS from_longitude_deg,
  json_extract(register.body, '$.from[1]')                    AS from_latitude_deg,
  json_extract(register.body, '$.middle[0]')                  AS middle_longitude_deg,
  json_extract(register.body, '$.middle[1]')                  AS middle_latitude_deg,
  json_extract(register.body, '$.to[0]')                      AS to_longitude_deg,
  json_extract(register.body, '$.to[1]')                      AS to_latitude_deg,
  json_extract(register.body, '$.knownBy')                    AS place_known_by,
  json_extract(register.body, '$.withinM')                    AS place_within_m,
  json_extract(left_thing.body, '$.note')                     AS note,
  (SELECT value FROM fact WHERE name = 'registersAt') = (SELECT value FROM fact WHERE name = 'revision') AS up_to_date
FROM thing AS left_thing
LEFT JOIN register ON register.kind = 'inGround' AND json_extract(register.body, '$.id') = left_thing.id
WHERE left_thing.kind = 'inGround'
ORDER BY left_thing.number;

-- One row for each tape distance to a point of a crossing that was left. The side is as seen from the first tie's post of a
-- point towards the second's.
CREATE VIEW v_in_ground_ties AS
SELECT
  json_extract(left_thing.body, '$.name') AS name,
  json_extract(point.value, '$.role')     AS point,
  json_extract(point.value, '$.name')     AS point_name,
  json_extract(tie.value, '$.postName')   AS from_post,
  json_extract(tie.value, '$.postAt[0]')  AS post_longitude_deg,
  json_extract(tie.value, '$.postAt[1]')  AS post_latitude_deg,
  json_extract(tie.value, '$.distanceM')  AS distance_m,
  json_extract(tie.value, '$.seM')        AS standard_error_m,
  json_extract(point.value, '$.side')     AS side
FROM thing AS left_thing
JOIN json_each(left_thing.body, '$.was.points') AS point
JOIN json_each(point.value, '$.ties') AS tie
WHERE left_thing.kind = 'inGround'
ORDER BY left_thing.number, point.key, tie.key;
