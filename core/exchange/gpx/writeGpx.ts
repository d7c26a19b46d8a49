import type { Position } from 'geojson';
import { EditRefused } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { LonLat } from '../../model/things.ts';
import type { Survey } from '../../survey/types.ts';
import { figures } from '../../words/figures.ts';
import type { Figures } from '../../words/types.ts';
import { type AnyFeature, featuresOf } from '../outgoing/featuresOf.ts';
import { outgoingName } from '../outgoing/outgoingName.ts';
import { registerText, saidOf } from '../outgoing/registerText.ts';
import { thingText } from '../outgoing/thingText.ts';
import { whyNotOnEarth } from '../outgoing/whyNotOnEarth.ts';
import { idProperty, kindProperty } from '../preview/ours.ts';
import { own, type RawObject } from '../preview/raw.ts';
import { escapeXml } from '../xml/escapeXml.ts';
import { thingElement } from './readGpx.ts';

/** Ours, by a name that need not be looked up anywhere. */
const namespace = 'urn:undergate:thing:1';

/** Computed for the eye, where a handheld has the fences themselves; and heights by the thousand, which choke it. */
const passedOver: ReadonlySet<string> = new Set(['run', 'paddockOutline', 'ground']);

/**
 * The drawing for a handheld, as GPX 1.1: points and paddock names as waypoints, lines and outlines as tracks. Each holds
 * its thing whole in its extensions, so that it comes back as what it was. Throws `EditRefused` for a drawing without a
 * place on earth.
 */
export function writeGpx(project: Project, survey: Survey): string {
  const refusal = whyNotOnEarth(project, 'GPX');
  if (refusal) throw new EditRefused(refusal);
  const writer = { project, f: figures(propertyOf(project).units), said: registerText(project, survey) };
  const waypoints: string[] = [];
  const tracks: string[] = [];
  const placeless: string[] = [];
  for (const feature of featuresOf(project, survey)) {
    const kind = String(feature.id).split(':', 1)[0]!;
    if (passedOver.has(kind)) continue;
    const words = wordsOf(writer, feature, kind);
    const { points, segments } = shapeOf(feature);
    for (const [i, point] of points.entries()) {
      // The thing itself stands with the first of its places only.
      const own = i === 0 ? words : wordsOf(writer, otherPlace(feature, i), kind);
      waypoints.push(`<wpt ${place(point)}>${own}</wpt>`);
    }
    if (points.length > 0) continue;
    if (segments.length > 0) tracks.push(`<trk>${words}${segments.map(segment).join('')}</trk>`);
    else placeless.push(thing(feature));
  }
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx version="1.1" creator="Undergate" xmlns="http://www.topografix.com/GPX/1/1" xmlns:u="${namespace}">`,
    `<metadata><name>${escapeXml(propertyOf(project).name)}</name></metadata>`,
    ...waypoints,
    ...tracks,
    `<extensions>${placeless.join('\n')}</extensions>`,
    '</gpx>',
    '',
  ].join('\n');
}

interface Writer {
  readonly project: Project;
  readonly f: Figures;
  readonly said: ReadonlyMap<string, string>;
}

/** In the order that the schema of GPX 1.1 asks for. */
function wordsOf({ project, f, said }: Writer, feature: AnyFeature, kind: string): string {
  const description = saidOf(said, feature);
  return [
    `<name>${escapeXml(outgoingName(project, feature, f))}</name>`,
    description === '' ? '' : `<desc>${escapeXml(description)}</desc>`,
    `<type>${escapeXml(kind)}</type>`,
    `<extensions>${thing(feature)}</extensions>`,
  ].join('');
}

function thing(feature: AnyFeature): string {
  return `<u:${thingElement}>${escapeXml(thingText(feature))}</u:${thingElement}>`;
}

/** A point that may as well be here: passed over when the file comes back. */
function otherPlace({ type, id, properties, geometry }: AnyFeature, index: number): AnyFeature {
  const computed = { ...properties, [kindProperty]: 'otherPlace', [idProperty]: `${String(id)} ${index + 1}` };
  return { type, id: String(id), properties: computed, geometry };
}

interface Shape {
  readonly points: readonly Position[];
  readonly segments: readonly (readonly Position[])[];
}

/** A paddock is its name at its place: a track round it would double its fences. */
function shapeOf({ geometry, properties }: AnyFeature): Shape {
  const at = own((properties ?? {}) as RawObject, 'at') as LonLat | undefined;
  if (!geometry) return { points: [], segments: [] };
  if (geometry.type === 'Point') return { points: [geometry.coordinates], segments: [] };
  if (geometry.type === 'MultiPoint') return { points: geometry.coordinates, segments: [] };
  if (at) return { points: [[...at]], segments: [] };
  if (geometry.type === 'LineString') return { points: [], segments: [geometry.coordinates] };
  if (geometry.type === 'MultiLineString' || geometry.type === 'Polygon') {
    return { points: [], segments: geometry.coordinates };
  }
  return { points: [], segments: [] };
}

function segment(path: readonly Position[]): string {
  return `<trkseg>${path.map((position) => `<trkpt ${place(position)}/>`).join('')}</trkseg>`;
}

function place([lon, lat]: Position): string {
  return `lat="${decimal(lat!)}" lon="${decimal(lon!)}"`;
}

/** All digits, and never in powers of ten: the schema asks for xsd:decimal. */
function decimal(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(20).replace(/0+$/, '0') : text;
}
