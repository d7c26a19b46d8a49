import proj4 from 'proj4';
import type { LonLat, Xy } from '../geometry/types.ts';

export interface WktProjection {
  readonly name: string;
  readonly toLonLat: (grid: Xy) => LonLat;
  /** Its datum may lie up to a few hundred metres from WGS 84, and the text does not say how far. */
  readonly shiftUnknown: boolean;
}

const longestText = 10_000;

/** Datums that are WGS 84 to within about a metre or two, by the names that such texts give them. */
const likeWgs84 =
  /WGS_?(19)?84|GDA_?(19)?94|GDA_?2020|NZGD_?2000|New_Zealand_Geodetic_Datum_2000|Geocentric_Datum_of_Australia|ETRS_?(19)?89|European_Terrestrial_Reference|IRENET|NAD_?(19)?83|North_American_(Datum_)?1983|North_American_1983|SIRGAS_?2000|JGD_?(2000|2011)|Hartebeesthoek/i;

/** The system that a .prj text (well-known text, OGC 01-009 and ESRI's way of it) describes; null where it can't be used. */
export function projectionOfWkt(text: string): WktProjection | null {
  const wkt = text.trim();
  if (wkt.length > longestText || !/^(PROJCS|GEOGCS|PROJCRS|GEOGCRS|GEODCRS|COMPD_?CS|BOUNDCRS)\s*\[/i.test(wkt))
    return null;
  try {
    const converter = proj4(wkt, '+proj=longlat +datum=WGS84 +no_defs');
    const toLonLat = (grid: Xy): LonLat => {
      try {
        const [lon = Number.NaN, lat = Number.NaN] = converter.forward([...grid]);
        return [lon, lat];
      } catch {
        return [Number.NaN, Number.NaN];
      }
    };
    const shiftUnknown = !likeWgs84.test(wkt) && !/TOWGS84/i.test(wkt);
    return { name: /\["([^"]{1,80})"/.exec(wkt)?.[1] ?? 'unnamed', toLonLat, shiftUnknown };
  } catch {
    return null;
  }
}
