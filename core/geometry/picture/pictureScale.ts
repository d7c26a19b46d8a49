/** Metres of ground a pixel: outside these a picture is no picture of a property, but placed by wrong figures. Common practice, no source. */
const likely = { least: 0.001, most: 100 };

/** False for a scale that only mistaken figures give: degrees taken for metres, a slip in a distance. */
export function isLikelyScale(metresPerPixel: number): boolean {
  return metresPerPixel >= likely.least && metresPerPixel <= likely.most;
}
