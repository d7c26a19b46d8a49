-- The order: price list, kits, labour, rolls on hand, stages. They are things like all others; these views read them.
-- Prices are of one pack, before tax, in the currency of v_order_settings.

CREATE VIEW v_order_settings AS
SELECT
  body ->> '$.currency'   AS currency,
  body ->> '$.taxPercent' AS tax_percent,
  body ->> '$.count'      AS counts
FROM thing
WHERE kind = 'orderSettings';

CREATE VIEW v_price_list AS
SELECT
  body ->> '$.name'         AS item,
  body ->> '$.measure'      AS serves,
  body ->> '$.unit'         AS unit,
  body ->> '$.packSize'     AS pack_size,
  body ->> '$.price'        AS price_of_pack,
  body ->> '$.taxPercent'   AS tax_percent,
  body ->> '$.wastePercent' AS waste_percent,
  body ->> '$.invented'     AS invented_price,
  body ->> '$.note'         AS note
FROM thing
WHERE kind = 'catalogueItem'
ORDER BY number;

CREATE VIEW v_rolls_on_hand AS
SELECT
  body ->> '$.measure' AS serves,
  body ->> '$.lengthM' AS length_m,
  body ->> '$.count'   AS rolls,
  body ->> '$.note'    AS note
FROM thing
WHERE kind = 'rollOnHand'
ORDER BY number;

CREATE VIEW v_stages AS
SELECT
  stage.body ->> '$.name' AS stage,
  thing.kind              AS what,
  coalesce(thing.body ->> '$.name', thing.id) AS thing
FROM thing AS mark
JOIN thing AS stage ON stage.kind = 'stage' AND stage.id = mark.body ->> '$.stageId'
JOIN thing ON thing.id = mark.body ->> '$.thingId' AND thing.kind <> 'stageMark'
WHERE mark.kind = 'stageMark'
ORDER BY stage.body ->> '$.rank', thing.number;
