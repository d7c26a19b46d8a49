import type { GeoTIFFImage } from 'geotiff';
import { type GeoTiffPlace, placeOfGeoTiff } from '../../../core/exchange/image/geoTiffTags.ts';

/** Where an image of a GeoTIFF lies, by its tags; null where they don't say. */
export async function placeOfTiff(image: GeoTIFFImage): Promise<GeoTiffPlace | null> {
  const { fileDirectory } = image;
  const numbers = async (tag: 'ModelPixelScale' | 'ModelTiepoint' | 'ModelTransformation') => {
    const value: ArrayLike<number> | undefined = await fileDirectory.loadValue(tag);
    return value ? Array.from(value) : null;
  };
  try {
    const keys = image.getGeoKeys() as Readonly<Record<string, unknown>> | null;
    const key = (name: string) => {
      const value = keys?.[name];
      return typeof value === 'number' ? value : null;
    };
    const words = keys?.PCSCitationGeoKey ?? keys?.GTCitationGeoKey;
    return placeOfGeoTiff({
      pixelScale: await numbers('ModelPixelScale'),
      tiepoints: await numbers('ModelTiepoint'),
      transformation: await numbers('ModelTransformation'),
      rasterType: key('GTRasterTypeGeoKey'),
      projectedCode: key('ProjectedCSTypeGeoKey'),
      modelType: key('GTModelTypeGeoKey'),
      geographicCode: key('GeographicTypeGeoKey'),
      citation: typeof words === 'string' ? words : null,
    });
  } catch {
    return null;
  }
}
