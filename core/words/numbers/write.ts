/** Figures with their units, for screens and sheets. Metric or imperial; A point for decimals, commas between thousands. */
export type Units = 'metric' | 'imperial';

const feetPerM = 1 / 0.3048;
const milesPerM = 1 / 1609.344;
const acresPerM2 = 1 / 4046.8564224;

/** A length as people say it: 4.20 m, 318 m, 3.84 km; 13 ft 9 in, 1,043 ft, 2.39 mi. */
export function formatLength(lengthM: number, units: Units): string {
  if (!Number.isFinite(lengthM)) return 'not known';
  if (units === 'imperial') return formatImperialLength(lengthM);
  const size = Math.abs(lengthM);
  if (size < 99.95) return `${fixed(lengthM, size < 9.995 ? 2 : 1)} m`;
  if (size < 999.5) return `${fixed(lengthM, 0)} m`;
  return `${fixed(lengthM / 1000, size < 99_950 ? 2 : 1)} km`;
}

/** A length for work with a tape, always to the centimetre or the hundredth of a foot: 2.40 m, 7.87 ft. */
export function formatTape(lengthM: number, units: Units): string {
  if (!Number.isFinite(lengthM)) return 'not known';
  return units === 'imperial' ? `${fixed(lengthM * feetPerM, 2)} ft` : `${fixed(lengthM, 2)} m`;
}

export function formatArea(areaM2: number, units: Units): string {
  if (!Number.isFinite(areaM2)) return 'not known';
  return units === 'imperial' ? `${fixed(areaM2 * acresPerM2, 2)} ac` : `${fixed(areaM2 / 10_000, 2)} ha`;
}

/** A bearing: degrees clockwise from north, 0 to 359.9. */
export function formatBearing(bearingDeg: number): string {
  const tenths = Math.round(bearingDeg * 10);
  return `${fixed((((tenths % 3600) + 3600) % 3600) / 10, 1)}°`;
}

export function formatVoltage(volts: number): string {
  if (!Number.isFinite(volts)) return 'not known';
  return Math.abs(volts) < 995 ? `${fixed(volts, 0)} V` : `${fixed(volts / 1000, 1)} kV`;
}

function formatImperialLength(lengthM: number): string {
  const feet = lengthM * feetPerM;
  if (Math.abs(feet) < 50) {
    const inches = Math.round(Math.abs(feet) * 12);
    return `${feet < 0 && inches > 0 ? '-' : ''}${Math.floor(inches / 12)} ft ${inches % 12} in`;
  }
  if (Math.abs(feet) < 2640) return `${fixed(feet, 0)} ft`;
  return `${fixed(lengthM * milesPerM, 2)} mi`;
}

/** A number with this many decimals and commas between thousands; never "-0". */
export function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  const [whole = '0', fraction] = text.split('.');
  const sign = value < 0 && Number(text) !== 0 ? '-' : '';
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${sign}${grouped}${fraction === undefined ? '' : `.${fraction}`}`;
}
