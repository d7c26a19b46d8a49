/** Line weights fall with the scale: a strong line near, a hairline on a sheet of the whole property. CSS pixels. */
export function lineWeightPx(metresPerPx: number): number {
  // From 3.2 px at 0.05 m/px down to 1.1 px at 50 m/px, evenly by the logarithm of the scale.
  const t = (Math.log10(metresPerPx) + 1.3) / 3;
  return 3.2 - 2.1 * Math.min(1, Math.max(0, t));
}
