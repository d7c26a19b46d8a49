/** A piece of an elevation model. */
export interface Raster {
  readonly values: ArrayLike<number>;
  readonly width: number;
  readonly height: number;
  /** The value that stands where no height is known. */
  readonly noData: number | null;
  /** Metres for one unit of the values, and what is added to them then, metres. */
  readonly unitM: number;
  readonly offsetM: number;
}

/** The shore of the Dead Sea and the top of Everest, with room for an ellipsoid that lies elsewhere. */
const sensibleM = { least: -600, most: 9000 } as const;

/**
 * Height at a place of a raster, in its own pixels from its upper left corner; the values stand in the middles of the
 * pixels, and it is linear both ways between them (bilinear). Null outside, and beside a gap.
 */
export function rasterHeightM(raster: Raster, x: number, y: number): number | null {
  const { values, width, height, noData, unitM, offsetM } = raster;
  if (!(x >= 0 && y >= 0 && x <= width && y <= height)) return null;
  const [u, v] = [clamp(x - 0.5, width - 1), clamp(y - 0.5, height - 1)];
  const [left, top] = [
    Math.min(Math.floor(u), Math.max(0, width - 2)),
    Math.min(Math.floor(v), Math.max(0, height - 2)),
  ];
  const [right, down] = [u - left, v - top];
  let sumM = 0;
  for (const [column, row, share] of [
    [left, top, (1 - right) * (1 - down)],
    [left + 1, top, right * (1 - down)],
    [left, top + 1, (1 - right) * down],
    [left + 1, top + 1, right * down],
  ] as const) {
    if (share === 0) continue;
    const value = values[row * width + column];
    if (value === undefined || value === noData) return null;
    const heightM = value * unitM + offsetM;
    if (!(heightM >= sensibleM.least && heightM <= sensibleM.most)) return null;
    sumM += share * heightM;
  }
  return sumM;
}

/** Beyond the middles of the outermost pixels their own value holds. */
function clamp(value: number, most: number): number {
  return Math.min(most, Math.max(0, value));
}
