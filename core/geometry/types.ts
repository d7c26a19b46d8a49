/** A place on earth: `[longitude, latitude]` in degrees, WGS 84, longitude first as in GeoJSON (RFC 7946). */
export type LonLat = readonly [lon: number, lat: number];

/** A place in the working plane: metres, x to the east, y to the north. */
export type Xy = readonly [x: number, y: number];
