import type { FeatureCollection, Geometry } from 'geojson';
import { EditRefused, type Refusal } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { featuresOf } from '../outgoing/featuresOf.ts';
import { whyNotOnEarth } from '../outgoing/whyNotOnEarth.ts';

/**
 * The whole drawing as GeoJSON (RFC 7946). Coordinates have all their digits, so that what is read back is the same to
 * the last one. What lies across the 180 meridian is cut there, as the RFC asks. Throws `EditRefused` where
 * `whyNotWriteGeoJson` says no.
 */
export function writeGeoJson(project: Project, survey: Survey): string {
  const refusal = whyNotWriteGeoJson(project);
  if (refusal) throw new EditRefused(refusal);
  const collection: FeatureCollection<Geometry | null> & { readonly name: string } = {
    type: 'FeatureCollection',
    name: propertyOf(project).name,
    features: [...featuresOf(project, survey)],
  };
  // One feature to a line: small enough, and a difference between two files can be read.
  const { features: all, ...head } = collection;
  const lines = all.map((feature) => JSON.stringify(feature)).join(',\n');
  return `${JSON.stringify(head).slice(0, -1)},"features":[\n${lines}\n]}\n`;
}

export function whyNotWriteGeoJson(project: Project): Refusal | null {
  return whyNotOnEarth(project, 'GeoJSON');
}
