import { oursInText } from '../preview/oursInText.ts';
import type { RawObject } from '../preview/raw.ts';
import { childOf, childrenOf, textOf, type XmlElement } from '../xml/readXml.ts';

/** The name of the datum (OGC KML 2.2, 9.3) that holds a thing of ours whole. */
export const thingDatum = 'undergate:thing';

/** What a placemark says of itself, as plain text: what it may hold of HTML or script is never run. */
export function kmlProperties(placemark: XmlElement, above: readonly XmlElement[]): RawObject {
  const extended = childOf(placemark, 'ExtendedData');
  const data = new Map<string, string>();
  for (const datum of extended ? childrenOf(extended, 'Data') : []) {
    data.set(datum.attributes.name ?? '', textOf(datum, 'value') ?? '');
  }
  for (const schemaData of extended ? childrenOf(extended, 'SchemaData') : []) {
    for (const simple of childrenOf(schemaData, 'SimpleData')) data.set(simple.attributes.name ?? '', simple.text);
  }
  const ours = oursInText(data.get(thingDatum));
  if (ours) return ours;
  data.delete(thingDatum);
  const said = { name: textOf(placemark, 'name'), folder: folderName(above) };
  return { ...Object.fromEntries(data), ...withoutUndefined(said) };
}

function withoutUndefined(fields: Readonly<Record<string, string | undefined>>): RawObject {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}

/** The name of the folder that an element lies in. */
function folderName(above: readonly XmlElement[]): string | undefined {
  const folder = above.findLast(({ name }) => name === 'Folder');
  return folder && textOf(folder, 'name');
}
