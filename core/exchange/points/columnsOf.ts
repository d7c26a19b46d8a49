/** Which column of a table of points holds what; -1: none does. */
export interface PointColumns {
  /** `degrees`: longitude and latitude; `grid`: east and north in metres. */
  readonly as: 'degrees' | 'grid';
  readonly x: number;
  readonly y: number;
  readonly heightM: number;
  /** That they are degrees stands in their figures only, not in the heading. */
  readonly unsaid?: boolean;
}

const names = {
  lon: ['lon', 'long', 'lng', 'longitude', 'lon_dd', 'longitude_dd', 'x_wgs84'],
  lat: ['lat', 'latitude', 'lat_dd', 'latitude_dd', 'y_wgs84'],
  east: ['easting', 'east', 'e', 'eastings', 'mge'],
  north: ['northing', 'north', 'n', 'northings', 'mgn'],
  x: ['x', 'point_x', 'xcoord'],
  y: ['y', 'point_y', 'ycoord'],
  height: ['ele', 'elev', 'elevation', 'height', 'altitude', 'alt', 'z', 'rl'],
} as const;

/** The columns of a heading row (lower case) that give places, or null. */
export function columnsOf(
  columns: readonly string[],
  looksDegrees: (x: number, y: number) => boolean,
): PointColumns | null {
  const plain = columns.map((column) => column.replace(/\s*[([].*$/, '').replaceAll(/[\s-]+/g, '_'));
  const find = (wanted: readonly string[]) => plain.findIndex((column) => wanted.includes(column));
  const heightM = find(names.height);
  const [lon, lat] = [find(names.lon), find(names.lat)];
  if (lon >= 0 && lat >= 0) return { as: 'degrees', x: lon, y: lat, heightM };
  const [east, north] = [find(names.east), find(names.north)];
  const [x, y] = east >= 0 && north >= 0 ? [east, north] : [find(names.x), find(names.y)];
  if (x < 0 || y < 0) return null;
  return looksDegrees(x, y) ? { as: 'degrees', x, y, heightM, unsaid: true } : { as: 'grid', x, y, heightM };
}
