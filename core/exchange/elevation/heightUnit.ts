import { type Message, message } from '../../words/message.ts';
import { mPerFoot } from '../../words/numbers/units.ts';

/** In which unit an elevation model gives its heights, as far as its tags say it. */

export const heightUnits = {
  metres: { inM: 1 },
  feet: { inM: mPerFoot },
  usFeet: { inM: 1200 / 3937 },
} as const;

export type HeightUnit = keyof typeof heightUnits;

/** What a GeoTIFF says of its heights; null where it says nothing. */
export interface HeightTags {
  /** VerticalUnitsGeoKey: the EPSG code of a unit. */
  readonly unitCode: number | null;
  /** VerticalCSTypeGeoKey: the EPSG code of a vertical system. */
  readonly systemCode: number | null;
  /** VerticalCitationGeoKey. */
  readonly citation: string | null;
  /** The unit of the band, as GDAL keeps it. */
  readonly unitType: string | null;
  /** ProjLinearUnitsGeoKey: the unit of its plane coordinates, which says nothing of heights but is a hint. */
  readonly planeUnitCode: number | null;
}

export interface HeightUnitFound {
  readonly unit: HeightUnit;
  /** What in the file says so; null: nothing does, and the unit is only assumed. */
  readonly toldBy: Message | null;
  /** What makes it doubtful; null: nothing. */
  readonly doubt: Message | null;
}

const unitByCode: Readonly<Record<number, HeightUnit>> = { 9001: 'metres', 9002: 'feet', 9003: 'usFeet' };

/**
 * Vertical systems of the EPSG Geodetic Parameter Dataset, version 10.076: those in feet one by one, those that count depths
 * downward, and the runs of codes in which all others are in metres.
 */
const inFeet = [6130, 6131, 6132, 8050, 8228];
const inUsFeet = [5702, 6360, 8052];
const depths = [
  5336, 5612, 5614, 5706, 5715, 5734, 5739, 5789, 5831, 5861, 5862, 5863, 5864, 5865, 5866, 5867, 5873, 6357, 6358,
  6359, 7976, 8051, 8053, 8358, 8378, 8897, 9287, 9288, 9672,
];
/** In feet of 1936, of which there is no choice here. */
const inOtherUnits = [5754];
const inMetres = [
  [3855, 3855],
  [3886, 3900],
  [4440, 4458],
  [5193, 5214],
  [5237, 5237],
  [5317, 5317],
  [5597, 5621],
  [5701, 5799],
  [5829, 5843],
  [5868, 5874],
  [5941, 5941],
  [6178, 6187],
  [6638, 6647],
  [6693, 6695],
  [6916, 6916],
  [7446, 7447],
  [7651, 7652],
  [7699, 7707],
  [7832, 7841],
  [7888, 7890],
  [7962, 7979],
  [8089, 8089],
  [8266, 8267],
  [8357, 8357],
  [8434, 8434],
  [8675, 8691],
  [8841, 8841],
  [8881, 8881],
  [8904, 8911],
  [9130, 9130],
  [9245, 9279],
  [9303, 9303],
  [9335, 9351],
  [9389, 9402],
  [9451, 9471],
  [9650, 9681],
  [9721, 9722],
  [9923, 9927],
  [20000, 20000],
  [20034, 20036],
] as const;

/** A file that holds depths and no heights. */
export function holdsDepths({ systemCode }: HeightTags): boolean {
  return systemCode !== null && depths.includes(systemCode);
}

/** The unit of its heights. Where the file contradicts itself, that is a doubt and nothing is told. */
export function heightUnitOf(tags: HeightTags): HeightUnitFound {
  const told = tellings(tags);
  const [first] = told;
  if (first && told.every(({ unit }) => unit === first.unit)) {
    const toldBy =
      told.length === 1 ? first.by : message('exchange.heights.toldBy.all', { by: told.map(({ by }) => by) });
    return { unit: first.unit, toldBy, doubt: null };
  }
  if (first) {
    return { unit: first.unit, toldBy: null, doubt: message('exchange.heights.contradicts', { told }) };
  }
  const planeUnit = tags.planeUnitCode === null ? undefined : unitByCode[tags.planeUnitCode];
  const inFeet = planeUnit !== undefined && planeUnit !== 'metres';
  const doubt = tags.unitType
    ? message('exchange.heights.unknownUnit', { called: tags.unitType.slice(0, 40), inFeet })
    : message('exchange.heights.noUnit', { inFeet });
  return { unit: 'metres', toldBy: null, doubt };
}

function tellings({ unitCode, systemCode, citation, unitType }: HeightTags): { unit: HeightUnit; by: Message }[] {
  const told: { unit: HeightUnit; by: Message }[] = [];
  const tell = (unit: HeightUnit | null | undefined, by: Message) => {
    if (unit) told.push({ unit, by });
  };
  if (unitType !== null) tell(unitByWords(unitType), message('exchange.heights.toldBy.band'));
  if (unitCode !== null) tell(unitByCode[unitCode], message('exchange.heights.toldBy.verticalUnit'));
  if (systemCode !== null)
    tell(unitOfSystem(systemCode), message('exchange.heights.toldBy.system', { epsg: systemCode }));
  // Citations name a system; only one with its unit in brackets tells the unit.
  if (citation !== null && told.length === 0)
    tell(unitInBrackets(citation), message('exchange.heights.toldBy.systemName'));
  return told;
}

function unitOfSystem(code: number): HeightUnit | null {
  if (inFeet.includes(code)) return 'feet';
  if (inUsFeet.includes(code)) return 'usFeet';
  if (depths.includes(code) || inOtherUnits.includes(code)) return null;
  return inMetres.some(([first, last]) => code >= first && code <= last) ? 'metres' : null;
}

/** "m", "metre"; "ft", "foot"; "US survey foot", "us-ft", "ftUS". */
function unitByWords(words: string): HeightUnit | null {
  const plain = words.toLowerCase().replaceAll(/[^a-z]/g, '');
  if (/^(m|meters?|metres?)$/.test(plain)) return 'metres';
  if (/^(ft|foot|feet)us$|^us(survey)?(ft|foot|feet)$/.test(plain)) return 'usFeet';
  return /^(international)?(ft|foot|feet)(international)?$/.test(plain) ? 'feet' : null;
}

function unitInBrackets(citation: string): HeightUnit | null {
  const [, inside] = /\(([a-z .-]+)\)\s*\|?\s*$/i.exec(citation) ?? [];
  return inside === undefined ? null : unitByWords(inside);
}
