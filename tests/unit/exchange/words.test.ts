import DxfParser from 'dxf-parser';
import { zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { writeCutLists, writeOrder, writeQuantities } from '../../../core/exchange/csv/orderCsv.ts';
import { readPriceList } from '../../../core/exchange/csv/priceListCsv.ts';
import { writeDxf } from '../../../core/exchange/dxf/writeDxf.ts';
import { heightUnitOf } from '../../../core/exchange/elevation/heightUnit.ts';
import { writeGpx } from '../../../core/exchange/gpx/writeGpx.ts';
import { whyAskForSystem } from '../../../core/exchange/image/geoTiffTags.ts';
import { whyNotSize } from '../../../core/exchange/image/pyramid.ts';
import { readWorldFile } from '../../../core/exchange/image/worldFile.ts';
import { importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { writeKml } from '../../../core/exchange/kml/writeKml.ts';
import { phonePage } from '../../../core/exchange/phone/phonePage.ts';
import { readAny } from '../../../core/exchange/readAny.ts';
import { allTables } from '../../../core/exchange/tables/allTables.ts';
import { allThings, type Project, projectOf } from '../../../core/model/project.ts';
import { orderOf } from '../../../core/quantities/order/order.ts';
import { priceListOf } from '../../../core/quantities/order/priceList.ts';
import { orderSettingsOf, takeOff } from '../../../core/quantities/takeOff.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { setLanguage } from '../../../core/words/language.ts';
import type { Message } from '../../../core/words/message.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { capital } from '../../../core/words/text.ts';
import { typefaces } from '../../../electron/print/typefaces.ts';
import { countingIds } from '../../support/ids.ts';
import { englishIn, expectFromCatalogue, namesIn } from '../../support/pseudo.ts';
import { emptyProject } from '../../support/randomProjects.ts';
import { drawingWithLeft } from '../../support/recordedDrawing.ts';
import { bytesOf, mapFile, mapFileNames } from './mapFiles.ts';

const feature = (geometry: unknown, properties: object = {}) => ({ type: 'Feature', properties, geometry });
const line = (...coordinates: unknown[]) => ({ type: 'LineString', coordinates });
const collection = (...features: unknown[]) => JSON.stringify({ type: 'FeatureCollection', features });
const kml = (inside: string) => `<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inside}</Document></kml>`;
const zip = (files: Record<string, string>) =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, bytesOf(text)])));

/** Files that can't be read, or not whole. */
const spoilt: readonly (readonly [name: string, contents: string | Uint8Array])[] = [
  ['empty.kml', ''],
  ['blank.kml', '  \n'],
  ['other.bin', 'abc\0def'],
  ['other.zip', zip({ 'letter.txt': 'x' })],
  ['broken.zip', zip({ 'map.kml': kml('') }).subarray(0, 60)],
  ['locked.zip', zip({ 'lines.shp': 'x' })],
  ['photo.png', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0])],
  ['data.gpkg', 'SQLite format 3'],
  ['map.pdf', '%PDF-1.7'],
  ['half.zip', 'PK'],
  ['page.kml', '<html><body/></html>'],
  ['other.xml', '<svg/>'],
  ['entities.kml', '<!DOCTYPE kml [<!ENTITY a "b">]><kml/>'],
  ['half.kml', '<kml><Document>'],
  ['a.geojson', '{"type":'],
  ['b.geojson', '{"type":}'],
  ['c.geojson', '[1]'],
  ['d.geojson', '{"type":"FeatureCollection"}'],
  ['e.geojson', '{"type":"Topology"}'],
  ['f.geojson', JSON.stringify({ ...feature(line()), crs: { properties: { name: 'EPSG:2193' } } })],
  ['g.csv', 'colour,shape\nred,round\n'],
  ['h.csv', 'easting,northing\n1504849,5173296\n'],
  ['i.csv', 'lon,lat\n"1,2'],
  ['j.csv', 'lon,lat\n,\n1,\nx,y\n'],
  [
    'k.geojson',
    collection(
      7,
      { type: 'Topology' },
      feature(null),
      feature(7),
      feature({ type: 'Circle' }),
      feature(line([1, 2])),
      feature(line([1, 2], 'x')),
      feature(line([1, 2], ['a', 'b'])),
      feature(line([1, 2], [1, 95])),
      feature({ type: 'Polygon', coordinates: [[[1, 2]]] }),
      feature({ type: 'Polygon', coordinates: 7 }),
      feature({ type: 'LineString', coordinates: 7 }),
      feature(null, { 'undergate:kind': 'beacon', 'undergate:id': 'b', 'undergate:version': 2000 }),
    ),
  ],
  [
    'l.kml',
    kml('<NetworkLink/><GroundOverlay/><PhotoOverlay/><Placemark><Model/></Placemark><Placemark><Point/></Placemark>'),
  ],
];

/** Everything that is said of a file, as it is read and as it is taken in. */
function saidOf(name: string, bytes: Uint8Array): Message[] {
  const read = readAny(name, bytes);
  if (!read.ok) return [read.message, read.remedy];
  const { problems, notes, looksSwapped } = read.preview;
  const told = [
    ...notes,
    ...(looksSwapped ? [looksSwapped] : []),
    ...problems.flatMap((one) => [one.why, one.whatToDo]),
  ];
  if (read.preview.features.length === 0) return told;
  const choices = { ...usualChoices, typeId: 'ft-2', snapEndsM: 3, fileName: name };
  const imported = importFeatures(read.preview, choices, emptyProject([168, -42]), countingIds());
  return [...told, ...imported.notes, ...imported.problems.flatMap((one) => [one.why, one.whatToDo])];
}

describe('what is said of a file', () => {
  it.each(spoilt)('such as %s comes from the catalogue', (name, contents) => {
    const bytes = typeof contents === 'string' ? bytesOf(contents) : contents;
    const said = saidOf(name, bytes);
    expect(said.length).toBeGreaterThan(0);
    // What stands in the file, and what the library that reads XML says of a fault.
    const names = new Set([name, 'letter.txt', 'lines.shp', 'beacon', 'svg', 'colour', 'shape', 'Topology', 'Circle']);
    for (const one of said) {
      if (one.code === 'exchange.file.xmlWrong') continue;
      expectFromCatalogue(one, new Set([...names, 'EPSG:2193', 'KML', 'GPX']));
    }
  });

  it.each(mapFileNames)('that another program wrote comes from the catalogue: %s', (name) => {
    for (const one of saidOf(name, mapFile(name))) expectFromCatalogue(one, namesIn(one.values));
  });

  it('of a price list comes from the catalogue', () => {
    const prices = priceListOf(emptyProject([168, -42]));
    const rows = [
      'row,id,name,serves,unit,pack size,price,part',
      'item,a,Post,post,each,1,cheap,',
      'gift,e,Post,post,each,1,2,',
    ];
    const read = readPriceList(
      [...rows, 'labour,,Walk,hour,,,5,', 'kit,k,Kit,post,,,,'].join('\n'),
      prices,
      countingIds(),
    );
    const said = read.ok ? read.value.leftOut.map(({ why }) => why) : [read.message, read.remedy];
    expect(said).toHaveLength(4);
    for (const one of said) expectFromCatalogue(one, namesIn(one.values));
    const without = readPriceList('a,b\n1,2', prices, countingIds());
    if (without.ok) throw new Error('It was read.');
    for (const one of [without.message, without.remedy]) expectFromCatalogue(one, namesIn(one.values));
  });

  it('of a picture or of heights comes from the catalogue', () => {
    const tags = { unitCode: 9001, systemCode: 6360, citation: null, unitType: 'furlong', planeUnitCode: 9002 };
    const said = [
      whyNotSize(0, 5),
      whyNotSize(90_000, 90_000),
      readWorldFile('1\n2').problem,
      readWorldFile('1\n2\n3\nx\n5\n6').problem,
      readWorldFile('0\n0\n0\n0\n5\n6').problem,
      whyAskForSystem({ epsg: 9, ownSystem: false, citation: null }, 'a.tif'),
      whyAskForSystem({ epsg: null, ownSystem: false, citation: null }, null),
      whyAskForSystem({ epsg: null, ownSystem: true, citation: 'Ours' }, null),
      heightUnitOf(tags).doubt,
      heightUnitOf({ ...tags, systemCode: 5701 }).toldBy,
      heightUnitOf({ ...tags, systemCode: null, unitCode: null }).doubt,
      heightUnitOf({ ...tags, systemCode: null, unitCode: null, unitType: null }).doubt,
    ];
    for (const one of said) expectFromCatalogue(one!, new Set(['a.tif', 'Ours', 'furlong', 'EPSG']));
  });
});

/** Every text of a property. A heading begins with a capital, whatever the name does. */
function namesOf(project: Project): string[] {
  return [...namesIn([...allThings(project)])].flatMap((name) => [name, capital(name)]);
}

describe('the page for the phone', () => {
  afterEach(() => setLanguage(english));

  it.each([
    ['the invented property', () => projectOf(demoThings())],
    ['a drawing with what was left in the ground', drawingWithLeft],
  ] as const)('of %s is in the active language', (_, drawn) => {
    setLanguage(pseudo());
    const project = drawn();
    const survey = surveyOf(project);
    const page = phonePage({ project, survey, date: '2026-05-01', measure: typefaces().measure, photos: [] });
    expect(page).toContain('<html lang="en-XA">');
    const body = page.slice(page.indexOf('<body>'), page.indexOf('<script>'));
    const spoken = [...body.matchAll(/(?:aria-label|alt)="([^"]*)"/g)].map(([, text]) => text!);
    const shown = body.replaceAll(/<[^>]*>/g, '\n');
    expect(englishIn([...spoken, shown].join('\n'), [...namesOf(project), 'kV', 'ha', 'km'])).toBe('');
  });
});

describe.each([
  ['the invented property', () => projectOf(demoThings())],
  ['a drawing with what was left in the ground', drawingWithLeft],
] as const)('what goes out of %s', (_, drawn) => {
  const project = drawn();
  const survey = surveyOf(project);
  const names = namesOf(project);

  beforeEach(() => setLanguage(pseudo()));
  afterEach(() => setLanguage(english));

  it('to other programs has its names and words from the catalogue', () => {
    const inKml = [...writeKml(project, survey).matchAll(/<name>([^<]*)<\/name>/g)].map(([, text]) => text!);
    const inGpx = [...writeGpx(project, survey).matchAll(/<name>([^<]*)<\/name>/g)].map(([, text]) => text!);
    expect(inKml.length).toBeGreaterThan(20);
    expect(englishIn([...inKml, ...inGpx].join('\n'), names)).toBe('');
    const drawing = new DxfParser().parseSync(writeDxf(project, survey))!;
    const decoded = (text: string) =>
      text.replaceAll(/\\U\+([0-9A-F]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
    const letters = drawing.entities.flatMap((entity) => ('text' in entity ? [decoded(String(entity.text))] : []));
    expect(letters.length).toBeGreaterThan(10);
    expect(englishIn(letters.join('\n'), names)).toBe('');
  });

  it('as tables has its titles and its heads for people from the catalogue', () => {
    expect(
      englishIn(
        allTables(project, survey)
          .map(({ title }) => title)
          .join('\n'),
      ),
    ).toBe('');
    const counted = takeOff({ project, survey });
    const prices = priceListOf(project);
    const order = orderOf({ project, takeOff: counted, prices, settings: orderSettingsOf(project) });
    const f = figures('metric');
    const heads = [writeOrder(order, null, f), writeQuantities(counted, f), writeCutLists([], f)].map(
      (text) => text.split('\r\n')[0]!,
    );
    expect(englishIn(heads.join('\n'))).toBe('');
  });
});
