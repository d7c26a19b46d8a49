import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readAny } from '../../../core/exchange/readAny.ts';
import { allInEnglish } from '../../support/english.ts';
import { bytesOf, mapFile, previewOfBytes, refusalOf } from './mapFiles.ts';

const kmlWith = (inner: string) =>
  `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inner}</Document></kml>`;
const lineOf = (coordinates: string, name = 'A') =>
  `<Placemark><name>${name}</name><LineString><coordinates>${coordinates}</coordinates></LineString></Placemark>`;

describe('a file of the wrong sort says what it is', () => {
  it.each([
    ['map.kml', '', 'is empty'],
    ['map.kml', ' \n', 'is empty'],
    ['map.kml', '<svg xmlns="http://www.w3.org/2000/svg"/>', 'of the sort "svg"'],
    ['map.gpx', '<!DOCTYPE html><html><body>Log in</body></html>', 'web page'],
    ['map.kml', '%PDF-1.7', 'PDF'],
    ['map.gpkg', 'SQLite format 3\0', 'database'],
    ['map.csv', 'just a sentence', 'no columns of places'],
    ['map.geojson', 'plain words', 'not valid JSON'],
    ['map.bin', '\u0001\u0000\u0002', 'no format that is known'],
  ])('%s with %j', (name, contents, reason) => {
    expect(refusalOf(name, contents)).toContain(reason);
  });

  it('a picture, a bare .shp, and a packed file of something else', () => {
    expect(refusalOf('map.kml', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]))).toContain('picture');
    const shp = new Uint8Array(200);
    new DataView(shp.buffer).setInt32(0, 9994);
    expect(refusalOf('map.shp', shp)).toContain('one part of a Shapefile');
    expect(refusalOf('letters.zip', zipSync({ 'a/letter.txt': bytesOf('Dear') }))).toContain('letter.txt');
  });

  it('is read by what is in it, whatever its name says', () => {
    expect(previewOfBytes('wrong.gpx', mapFile('lines.kml')).features).toHaveLength(3);
    expect(previewOfBytes('wrong.txt', mapFile('tracks.gpx')).features).toHaveLength(4);
    expect(previewOfBytes('wrong.kmz', mapFile('layers.zip')).features.length).toBeGreaterThan(3);
  });
});

describe('XML that is made to do harm', () => {
  it('with entities that swell is refused at once', () => {
    const levels = Array.from({ length: 12 }, (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`).join('');
    const bomb = `<?xml version="1.0"?><!DOCTYPE kml [<!ENTITY e0 "ha">${levels}]>${kmlWith(lineOf('1,2 3,4', '&e12;')).slice(21)}`;
    const startedAt = performance.now();
    expect(refusalOf('bomb.kml', bomb)).toContain('entities');
    expect(performance.now() - startedAt).toBeLessThan(1000);
  });

  it('that asks for a file from outside gets none', () => {
    const text = `<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/passwd">]><gpx><wpt lat="1" lon="2"><name>&x;</name></wpt></gpx>`;
    expect(refusalOf('a.gpx', text)).toContain('entities');
  });

  it('with an entity that it never declared says where', () => {
    expect(refusalOf('a.kml', kmlWith(lineOf('1,2 3,4', '&nosuch;')))).toContain('line 1');
  });

  it('nested without end is refused', () => {
    expect(refusalOf('a.kml', kmlWith('<Folder>'.repeat(5000)))).toContain('deep');
  });

  it('with script in its names shows it as text', () => {
    const name = '&lt;script&gt;alert(1)&lt;/script&gt;';
    const { features } = previewOfBytes('a.kml', bytesOf(kmlWith(lineOf('1,2 3,4', name))));
    expect(features[0]!.name).toBe('<script>alert(1)</script>');
  });

  it('that breaks off says where', () => {
    const text = new TextDecoder().decode(mapFile('tracks.gpx'));
    expect(refusalOf('a.gpx', text.slice(0, 5000))).toMatch(/breaks off at line \d+/);
  });
});

describe('packed files that are made to do harm', () => {
  const bomb = () => zipSync({ 'doc.kml': new Uint8Array(300 * 1024 * 1024) }, { level: 6 });

  it('that swell beyond measure are stopped, whatever size they claim', () => {
    const honest = bomb();
    expect(honest.length).toBeLessThan(1024 * 1024);
    expect(refusalOf('bomb.kmz', honest)).toContain('unpacks to more than the 192 MB');
    // The size that the list of contents claims: 24 bytes into its record.
    const lying = honest.slice();
    const view = new DataView(lying.buffer);
    for (let at = lying.length - 46; at > 0; at--) {
      if (view.getUint32(at, true) === 0x02014b50) {
        view.setUint32(at + 24, 100, true);
        break;
      }
    }
    expect(refusalOf('lying.kmz', lying)).toContain('unpacks to more than the 192 MB');
  }, 60_000);

  it('with path names that climb out are read by their last part only', () => {
    const climbing = zipSync({ '../../../etc/doc.kml': mapFile('lines.kml') });
    expect(previewOfBytes('a.kmz', climbing).features).toHaveLength(3);
  });

  it('that are cut off, locked, or whose contents are damaged say so', () => {
    const sound = zipSync({ 'doc.kml': mapFile('lines.kml') });
    expect(refusalOf('a.kmz', sound.slice(0, sound.length - 30))).toMatch(/breaks off|damaged/);
    const locked = sound.slice();
    const central = locked.findLastIndex(
      (_, i) =>
        new DataView(locked.buffer).byteLength > i + 4 && new DataView(locked.buffer).getUint32(i, true) === 0x02014b50,
    );
    locked[central + 8]! |= 1;
    expect(refusalOf('a.kmz', locked)).toContain('password');
    const damaged = sound.slice();
    damaged.fill(0xff, 60, 120);
    expect(refusalOf('a.kmz', damaged)).toMatch(/damaged|not valid XML|not whole/);
  });
});

describe('coordinates that can’t be', () => {
  it('of any size are told of, one by one', () => {
    const inner = ['1e308,-1e308 1,2', '-181e300,91 1,2', 'NaN,NaN 1,2', 'Infinity,1 1,2', '1 2']
      .map((text) => lineOf(text))
      .join('');
    const { features, problems } = previewOfBytes('a.kml', bytesOf(kmlWith(inner)));
    expect(features).toEqual([]);
    expect(problems).toHaveLength(5);
  });

  it('that look swapped can be swapped', () => {
    const text = kmlWith(lineOf('-42.001,168.001 -42.002,168.002'));
    const asItStands = readAny('a.kml', bytesOf(text));
    expect(allInEnglish(asItStands)).toMatchObject({
      ok: true,
      preview: { looksSwapped: expect.stringContaining('exchanged') },
    });
    const { features, looksSwapped } = previewOfBytes('a.kml', bytesOf(text), { swap: true });
    expect(looksSwapped).toBeNull();
    expect(features[0]!.path[0]).toEqual([168.001, -42.001]);
  });

  it('in both hemispheres are both shown, with what lies between', () => {
    const text = kmlWith(lineOf('168,-42 168.1,-42') + lineOf('168,42 168.1,42'));
    expect(previewOfBytes('a.kml', bytesOf(text)).bounds).toEqual([168, -42, 168.1, 42]);
  });
});

describe('a huge file', () => {
  it('is refused before it is looked into', () => {
    expect(refusalOf('a.csv', new Uint8Array(65 * 1024 * 1024).fill(0x61))).toContain('65 MB');
  });
});
