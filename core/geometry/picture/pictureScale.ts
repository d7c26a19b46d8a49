/**
 * Metres of ground a pixel: finer or coarser than these a picture is no picture of a property, but placed by wrong
 * figures. Common practice, no source.
 */
export const leastMetresPerPixel = 0.001;
const mostMetresPerPixel = 100;

/** False for a scale that only mistaken figures give: degrees taken for metres, a slip in a distance. */
export function isLikelyScale(metresPerPixel: number): boolean {
  return metresPerPixel >= leastMetresPerPixel && metresPerPixel <= mostMetresPerPixel;
}
