-- Searches for faults are things like all others; these views read them.

CREATE VIEW v_fault_hunts AS
SELECT
  hunt.body ->> '$.name'          AS name,
  hunt.body ->> '$.startedAt'     AS started_at,
  hunt.body ->> '$.by'            AS searched_by,
  hunt.body ->> '$.end.at'        AS ended_at,
  hunt.body ->> '$.end.outcome'   AS outcome,
  hunt.body ->> '$.end.section'   AS section,
  hunt.body ->> '$.end.place'     AS place,
  hunt.body ->> '$.end.confirmed' AS confirmed,
  hunt.body ->> '$.end.cause'     AS cause,
  hunt.body ->> '$.note'          AS note
FROM thing AS hunt
WHERE hunt.kind = 'faultHunt'
ORDER BY hunt.number;

-- One row for each reading of a search.
CREATE VIEW v_hunt_readings AS
SELECT
  hunt.body ->> '$.name'           AS hunt,
  reading.key + 1                  AS number,
  reading.value ->> '$.at'         AS read_at,
  reading.value ->> '$.check'      AS read_for,
  reading.value ->> '$.switchName' AS at_switch,
  reading.value ->> '$.voltageV'   AS voltage_v,
  reading.value ->> '$.result'     AS result,
  reading.value ->> '$.doubtful'   AS doubtful,
  reading.value ->> '$.setAside'   AS set_aside
FROM thing AS hunt
JOIN json_each(hunt.body, '$.readings') AS reading
WHERE hunt.kind = 'faultHunt'
ORDER BY hunt.number, reading.key;
