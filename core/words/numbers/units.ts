/** The units of the screen and of paper; in the file everything is SI. */
export type Units = 'metric' | 'imperial';

/** The international foot and what follows from it (agreement of 1959; NIST Special Publication 811, appendix B). */
export const mPerFoot = 0.3048;
export const mPerInch = mPerFoot / 12;
export const mPerYard = 3 * mPerFoot;
export const mPerMile = 5280 * mPerFoot;
export const mPerKm = 1000;
export const m2PerHa = 10_000;
/** 4,840 square yards: 4,046.8564224 m². */
export const m2PerAcre = 4840 * mPerYard * mPerYard;

/** The unit that bare lengths are shown and typed in. */
export function lengthUnit(units: Units): { readonly name: 'm' | 'ft'; readonly lengthM: number } {
  return units === 'imperial' ? { name: 'ft', lengthM: mPerFoot } : { name: 'm', lengthM: 1 };
}

/** The word for short ways that nobody measures: "off by some metres". */
export function roughUnit(units: Units): 'metres' | 'yards' {
  return units === 'imperial' ? 'yards' : 'metres';
}

/** The unit of long ways. */
export function farUnit(units: Units): { readonly name: 'km' | 'mi'; readonly lengthM: number } {
  return units === 'imperial' ? { name: 'mi', lengthM: mPerMile } : { name: 'km', lengthM: mPerKm };
}

export function areaUnit(units: Units): { readonly name: 'ha' | 'ac'; readonly areaM2: number } {
  return units === 'imperial' ? { name: 'ac', areaM2: m2PerAcre } : { name: 'ha', areaM2: m2PerHa };
}

/** Units of one quantity as they may be typed, small letters, each with what it is in the first of them. */
type UnitNames = Readonly<Record<string, number>>;

function named(...rows: readonly (readonly [names: string, size: number])[]): UnitNames {
  return Object.fromEntries(rows.flatMap(([names, size]) => names.split(' ').map((name) => [name, size])));
}

export const lengthNames = named(
  ['m metre metres meter meters', 1],
  ['km kilometre kilometres kilometer kilometers', mPerKm],
  ['cm', 0.01],
  ['mm', 0.001],
  ["ft foot feet '", mPerFoot],
  ['in inch inches "', mPerInch],
  ['yd yard yards', mPerYard],
  ['mi mile miles', mPerMile],
);

/** Where a quantity has two units that differ by their capitals alone (mV, MV), neither is here. */
export const quantities: readonly UnitNames[] = [
  lengthNames,
  named(['m² m2', 1], ['ha', m2PerHa], ['ac acre acres', m2PerAcre], ['km² km2', 1e6]),
  named(['v volt volts', 1], ['kv', 1000]),
  named(['a amp amps', 1], ['ma', 0.001]),
  named(['j joule joules', 1]),
  named(['ohm ohms ω', 1], ['kilohm kilohms kω kohm', 1000]),
  named(['ohm/km ω/km', 1], ['ohm/m ω/m', 1000]),
  named(['ohm m ωm ω·m', 1]),
  named(['° deg d degree degrees', 1]),
  named(['% percent', 1]),
];
