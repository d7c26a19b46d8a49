-- Maps and pictures under the drawing. What they are and where they lie are things of kind "underlay"; here are the
-- pictures themselves, cut into tiles. An image is written once, together with the first thing that names it, and goes
-- when the file is opened and neither a thing nor a step of undo names it any more: see electron/store/imageTable.ts.

CREATE TABLE image (
  id        TEXT PRIMARY KEY,
  file_name TEXT NOT NULL,
  width_px  INTEGER NOT NULL,
  height_px INTEGER NOT NULL,
  tile_px   INTEGER NOT NULL
) STRICT;

-- Level 0 is the full size, level 1 half of it, and so on to one tile that shows all. JPEG or WebP.
CREATE TABLE image_tile (
  image_id    TEXT NOT NULL REFERENCES image (id),
  level       INTEGER NOT NULL,
  tile_column INTEGER NOT NULL,
  tile_row    INTEGER NOT NULL,
  bytes       BLOB NOT NULL,
  PRIMARY KEY (image_id, level, tile_column, tile_row)
) STRICT;

CREATE VIEW v_underlays AS
SELECT
  body ->> '$.name'            AS name,
  body ->> '$.source.from'     AS source,
  body ->> '$.source.fileName' AS file_name,
  body ->> '$.source.path'     AS path,
  body ->> '$.placement.by'    AS placed_by,
  body ->> '$.opacity'         AS opacity,
  body ->> '$.shown'           AS shown,
  body ->> '$.note'            AS note
FROM thing
WHERE kind = 'underlay'
ORDER BY body ->> '$.rank';
