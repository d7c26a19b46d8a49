/** What GDAL writes of the first band into its own tag of a TIFF (GDAL_METADATA, a small XML text). */
export interface GdalBand {
  readonly unitType: string | null;
  /** What the numbers are multiplied with, and what is added then. */
  readonly scale: number;
  readonly offset: number;
}

const longestText = 1_000_000;

export function gdalBand(xml: string | null): GdalBand {
  const byRole = new Map<string, string>();
  for (const [, attributes = '', content = ''] of (xml ?? '')
    .slice(0, longestText)
    .matchAll(/<Item\b([^<>]*)>([^<]*)<\/Item>/g)) {
    if (attribute(attributes, 'sample') !== '0') continue;
    const role = attribute(attributes, 'role');
    if (role) byRole.set(role, content.trim());
  }
  const unitType = byRole.get('unittype');
  const scale = Number(byRole.get('scale') ?? 1);
  const offset = Number(byRole.get('offset') ?? 0);
  return {
    unitType: unitType ? unitType : null,
    scale: Number.isFinite(scale) && scale !== 0 ? scale : 1,
    offset: Number.isFinite(offset) ? offset : 0,
  };
}

function attribute(attributes: string, name: string): string | null {
  return new RegExp(`\\b${name}\\s*=\\s*["']([^"']*)["']`).exec(attributes)?.[1] ?? null;
}
