import { message } from '../../words/message.ts';
import { refuse } from '../preview/refuse.ts';
import type { ReadOptions, ReadResult } from '../preview/types.ts';
import { decodeText } from '../text/decodeText.ts';
import { encodingOf } from '../xml/encodingOf.ts';
import type { Archive } from '../zip/readZip.ts';
import { readKml } from './readKml.ts';

/** Reads the map in a KMZ file: "doc.kml", or the first KML file of the archive (OGC KML 2.2, annex C). Throws a `ZipFault`. */
export function readKmz({ entries, unpack }: Archive, options: ReadOptions = {}): ReadResult {
  const maps = entries.filter(({ name }) => /\.kml$/i.test(name));
  const main = maps.find(({ path }) => /^doc\.kml$/i.test(path)) ?? maps[0];
  if (!main) return refuse(message('exchange.file.noKml'), message('exchange.remedy.selectKmz'));
  const content = unpack(main);
  const read = readKml(decodeText(content, encodingOf(content)).text, options);
  if (!read.ok || maps.length === 1) return read;
  const others = message('exchange.note.otherMaps', { maps: maps.length, read: main.name });
  return { ok: true, preview: { ...read.preview, notes: [...read.preview.notes, others] } };
}
