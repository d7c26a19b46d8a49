import { activeLanguage } from '../language.ts';
import { numberFormat } from './locale.ts';
import { areaUnit, farUnit, mPerFoot, mPerMile, type Units } from './units.ts';

export type { Units } from './units.ts';

/** Figures with their units, for screens and sheets: metric or imperial, with the separators of the active locale. */

const feetPerM = 1 / mPerFoot;

/** A length as people say it: 4.20 m, 318 m, 3.84 km; 13 ft 9 in, 1,043 ft, 2.39 mi. */
export function formatLength(lengthM: number, units: Units): string {
  if (!Number.isFinite(lengthM)) return activeLanguage().words.things.notKnown;
  if (units === 'imperial') return formatImperialLength(lengthM);
  const size = Math.abs(lengthM);
  if (size < 99.95) return `${fixed(lengthM, size < 9.995 ? 2 : 1)} m`;
  if (size < 999.5) return `${fixed(lengthM, 0)} m`;
  return `${fixed(lengthM / 1000, size < 99_950 ? 2 : 1)} km`;
}

/** A length for work with a tape, always to the centimetre or the hundredth of a foot: 2.40 m, 7.87 ft. */
export function formatTape(lengthM: number, units: Units): string {
  if (!Number.isFinite(lengthM)) return activeLanguage().words.things.notKnown;
  return units === 'imperial' ? `${fixed(lengthM * feetPerM, 2)} ft` : `${fixed(lengthM, 2)} m`;
}

/** A height or a step of the ground, to the metre or the foot: 318 m, 1,043 ft. */
export function formatWholeLength(lengthM: number, units: Units): string {
  if (!Number.isFinite(lengthM)) return activeLanguage().words.things.notKnown;
  return units === 'imperial' ? `${fixed(lengthM * feetPerM, 0)} ft` : `${fixed(lengthM, 0)} m`;
}

/** A way across the country, to the kilometre or the mile: 1,204 km, 748 mi. */
export function formatFar(lengthM: number, units: Units): string {
  const unit = farUnit(units);
  return `${fixed(lengthM / unit.lengthM, 0)} ${unit.name}`;
}

/** A round length that something asks for at least, no less in feet than in metres: 3 m, 10 ft. */
export function formatAtLeast(lengthM: number, units: Units): string {
  if (units === 'metric') return `${plainFigure(lengthM, 2)} m`;
  // Ten feet are ten feet, though they are not quite so in binary.
  return `${fixed(Math.ceil(lengthM * feetPerM - 1e-6), 0)} ft`;
}

/** A round length by the way: 0.1 m, 3.6 m, 100 m; 4 in, 12 ft, 328 ft. */
export function formatRound(lengthM: number, units: Units): string {
  if (units === 'metric') return `${plainFigure(lengthM, 2)} m`;
  const feet = lengthM * feetPerM;
  return feet < 1 ? `${fixed(feet * 12, 0)} in` : `${fixed(feet, 0)} ft`;
}

export function formatArea(areaM2: number, units: Units): string {
  if (!Number.isFinite(areaM2)) return activeLanguage().words.things.notKnown;
  const unit = areaUnit(units);
  return `${fixed(areaM2 / unit.areaM2, 2)} ${unit.name}`;
}

/** A bearing: degrees clockwise from north, 0 to 359.9. */
export function formatBearing(bearingDeg: number): string {
  const tenths = Math.round(bearingDeg * 10);
  return `${fixed((((tenths % 3600) + 3600) % 3600) / 10, 1)}°`;
}

export function formatVoltage(volts: number): string {
  if (!Number.isFinite(volts)) return activeLanguage().words.things.notKnown;
  return Math.abs(volts) < 995 ? `${fixed(volts, 0)} V` : `${fixed(volts / 1000, 1)} kV`;
}

function formatImperialLength(lengthM: number): string {
  const feet = lengthM * feetPerM;
  if (Math.abs(feet) < 50) {
    const inches = Math.round(Math.abs(feet) * 12);
    const sign = feet < 0 && inches > 0 ? minus() : '';
    return `${sign}${fixed(Math.floor(inches / 12), 0)} ft ${fixed(inches % 12, 0)} in`;
  }
  if (Math.abs(feet) < 2640) return `${fixed(feet, 0)} ft`;
  return `${fixed(lengthM / mPerMile, 2)} mi`;
}

function minus(): string {
  return fixed(-1, 0).replace('1', '');
}

/** A number with this many decimals, its thousands parted; never "-0". */
export function fixed(value: number, decimals: number): string {
  const format = numberFormat({ minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  // Rounded as a binary number, so that the same figure comes out wherever it is rounded.
  return format.format(value.toFixed(decimals) as Intl.StringNumericLiteral);
}

/** A number as it stands in a field: up to this many decimals, thousands not parted. */
export function plainFigure(value: number, decimals: number): string {
  const format = numberFormat({ maximumFractionDigits: decimals, useGrouping: false });
  return format.format(value.toFixed(decimals) as Intl.StringNumericLiteral);
}

/** An amount of money as it stands in a field: two decimals, thousands not parted. */
export function plainMoney(amount: number): string {
  const format = numberFormat({ minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: false });
  return format.format(amount.toFixed(2) as Intl.StringNumericLiteral);
}

/** "$1,234.50", "1.234,50 €"; "1,234.50" without a currency (ISO 4217); "no price" for nothing. */
export function formatMoney(amount: number | null, { currency }: { readonly currency: string | null }): string {
  if (amount === null) return activeLanguage().words.things.noPrice;
  if (currency === null) return fixed(amount, 2);
  return numberFormat({ style: 'currency', currency, signDisplay: 'auto' }).format(amount);
}

/** A text with its lengths in the units of the screen: "{3.6 m}" is "3.6 m" or "11 ft 10 in". */
export function lengthsIn(text: string, units: Units): string {
  const write = units === 'metric' ? formatRound : formatLength;
  return text.replaceAll(/\{([\d.]+) m\}/g, (_, lengthM: string) => write(Number(lengthM), units));
}
