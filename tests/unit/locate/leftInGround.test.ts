import type { Point } from 'geojson';
import { describe, expect, it } from 'vitest';
import { type Item, leafItems } from '../../../core/drawing/displayList.ts';
import { mapWindow } from '../../../core/drawing/mapWindow.ts';
import { writeRegisters } from '../../../core/exchange/csv/registersCsv.ts';
import { writeDxf } from '../../../core/exchange/dxf/writeDxf.ts';
import { readGeoJson } from '../../../core/exchange/geojson/readGeoJson.ts';
import { writeGeoJson } from '../../../core/exchange/geojson/writeGeoJson.ts';
import { writeGpx } from '../../../core/exchange/gpx/writeGpx.ts';
import { importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { writeKml } from '../../../core/exchange/kml/writeKml.ts';
import { featuresOf } from '../../../core/exchange/outgoing/featuresOf.ts';
import { phonePage } from '../../../core/exchange/phone/phonePage.ts';
import { allTables } from '../../../core/exchange/tables/allTables.ts';
import { crossingById } from '../../../core/locate/allCrossings.ts';
import { leftThing } from '../../../core/locate/buriedThings.ts';
import { leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../../core/locate/inGround/leftWithin.ts';
import { newProperty, startingFenceTypes } from '../../../core/model/defaults.ts';
import { placeOnEarth } from '../../../core/model/edits/placeOnEarth.ts';
import type { WasCrossing } from '../../../core/model/inGroundThings.ts';
import { type Project, projectOf, propertyOf, put } from '../../../core/model/project.ts';
import { changesSince } from '../../../core/record/changesSince.ts';
import { crossingRegister } from '../../../core/record/crossingRegister.ts';
import { handOver } from '../../../core/record/edits/handOver.ts';
import { stakeOutAt, stakeOutPages } from '../../../core/sheets/find/stakeOutPages.ts';
import { tapesInWords } from '../../../core/sheets/find/stakeWords.ts';
import { drawMap } from '../../../core/sheets/map/drawMap.ts';
import { inGroundLayer } from '../../../core/sheets/map/inGroundLayer.ts';
import { layoutPack } from '../../../core/sheets/pack/layoutPack.ts';
import { leftPages } from '../../../core/sheets/pack/leftPages.ts';
import type { PackInput } from '../../../core/sheets/pack/packInput.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { figures } from '../../../core/words/figures.ts';
import { qrModules } from '../../../electron/print/qrModules.ts';
import { typefaces } from '../../../electron/print/typefaces.ts';
import { partDistanceM } from '../../../renderer/map/scene/partDistance.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { drawingWithLeft, placesInGround, recordedDrawing } from '../../support/recordedDrawing.ts';
import { bytesOf, previewOfBytes } from '../exchange/mapFiles.ts';

const project = drawingWithLeft();
const survey = surveyOf(project);
const { measure } = typefaces();
const wordsOf = (items: readonly Item[]) =>
  [...leafItems(items)].flatMap((item) => (item.kind === 'text' ? [item.text] : [])).join(' ');
const left = leftInGround(project, survey);
const crossing = left.find(({ thing }) => thing.was.what === 'crossing')!;

function packInput(of: Project): PackInput {
  const surveyed = surveyOf(of);
  return {
    project: of,
    survey: surveyed,
    property: propertyOf(of),
    options: {
      parts: ['crossings'],
      paper: 'A4',
      orientation: 'landscape',
      scaleDenominator: null,
      handoverNumber: null,
      preparedBy: '',
      preparedFor: '',
      note: '',
      date: '2026-12-01',
    },
    date: '2026-12-01',
    measure,
    f: figures('metric'),
    testSheets: testSheets(of, surveyed),
    crossings: crossingRegister(of, surveyed),
    takeOff: null,
    makeQr: qrModules,
    photoBytes: () => null,
  };
}

/** By id: GPX has waypoints before tracks. */
const exchangedLeft = ({ inGround }: Project) => [...inGround.values()].sort((a, b) => a.id.localeCompare(b.id));

describe('what is in the ground and drawn no longer', () => {
  it('is found by the same tapes and at the same place as before', () => {
    expect(left.map(({ thing }) => [thing.name, thing.fate])).toEqual([
      ['old lead-out L1', 'inUse'],
      ['old earth stakes of E1', 'inUse'],
      ['old crossing under G1', 'dead'],
    ]);
    const before = placesInGround(recordedDrawing()).get('X-G1')!;
    const now = crossing.path.map(survey.plane.toLonLat);
    now.forEach(([lon, lat], i) => {
      expect(lon).toBeCloseTo(before[i]![0], 9);
      expect(lat).toBeCloseTo(before[i]![1], 9);
    });
    expect(crossingById(project, survey, crossing.thing.id)!.crossing.certainty.basis).toBe('measured');
  });

  it('has a sheet of its own to find it by', () => {
    const input = { property: propertyOf(project), date: '2026-12-01', measure, f: figures('metric') };
    const [page] = stakeOutPages(stakeOutAt(project, survey, crossing.thing.id, figures('metric')), survey, input);
    const words = wordsOf(page!.items);
    expect(words).toContain('To find the old crossing under G1 (dead, left in the ground)');
    expect(words).toContain('No longer in the drawing since 30 November 2026.');
    expect(words).toMatch(/Measured: it lies within 0\.\d\d m of this line/);
  });

  it('is told from where its gate posts stood where no post stands any more, each post once in the sketch', () => {
    const was = { ...(crossing.thing.was as WasCrossing), points: [] };
    const alone = projectOf([propertyOf(project), { ...crossing.thing, was }]);
    const { stake } = stakeOutAt(alone, surveyOf(alone), crossing.thing.id, figures('metric'));
    expect(stake.points.map((point) => tapesInWords(point, figures('metric')))).toEqual([
      'At the foot of the hinge post (west) (no longer drawn).',
      'Assumed: from the hinge post (west) (no longer drawn) 2.24 m, from the latch post (east) (no longer drawn) 2.24 m, on the north side.',
      'At the foot of the latch post (east) (no longer drawn).',
    ]);
    // A hair off, as places are that were worked out by another way.
    const { opening } = was.record;
    const [lon, lat] = opening.startPostAt;
    const off = {
      ...was,
      record: { ...was.record, opening: { ...opening, startPostAt: [lon, lat - 1e-9] as const } },
      points: (crossing.thing.was as WasCrossing).points,
    };
    const hair = put(project, { ...crossing.thing, was: off });
    const input = { property: propertyOf(hair), date: '2026-12-01', measure, f: figures('metric') };
    const [page] = stakeOutPages(
      stakeOutAt(hair, surveyOf(hair), crossing.thing.id, figures('metric')),
      surveyOf(hair),
      input,
    );
    const labels = [...leafItems(page!.items)].flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    expect(labels.filter((text) => text === 'hinge post (west)').length).toBeLessThanOrEqual(1);
  });

  it('tells its note on its sheet and on the phone page', () => {
    const noted = put(project, { ...crossing.thing, note: 'Cut by the old yard.' });
    const surveyed = surveyOf(noted);
    const input = { property: propertyOf(noted), date: '2026-12-01', measure, f: figures('metric') };
    const [page] = stakeOutPages(stakeOutAt(noted, surveyed, crossing.thing.id, figures('metric')), surveyed, input);
    expect(wordsOf(page!.items)).toContain('Cut by the old yard.');
    const phone = phonePage({ project: noted, survey: surveyed, date: '2026-12-01', measure, photos: [] });
    expect(phone).toContain('<p>Cut by the old yard.</p>');
  });

  it('stands on the map sheet with a sign and what it is', () => {
    const box = [-20, -20, 220, 30] as const;
    const window = mapWindow([0, 0, 240, 50], [100, 5], 1000, survey.plane);
    const words = wordsOf(drawMap(project, survey, window, box, 50, figures('metric'), measure).items);
    expect(words).toContain('old crossing under G1: dead, left in the ground');
    expect(words).toContain('old lead-out L1: may be live');
  });

  it('stands on the phone page under a heading of its own, as text', () => {
    const page = phonePage({ project, survey, date: '2026-12-01', measure, photos: [] });
    expect(page).toContain('In the ground, no longer drawn (3)');
    expect(page).toContain('Old crossing under G1 <span class="tag warns">dead, left in the ground</span>');
    expect(page).toContain('nobody has said that it is cut off: take it for live');
    const hostile = put(project, { ...crossing.thing, name: '<img src=x onerror=alert(1)>', note: '</script>' });
    const other = phonePage({ project: hostile, survey: surveyOf(hostile), date: '2026-12-01', measure, photos: [] });
    expect(other).not.toContain('<img src=x');
  });

  it('stands in the pack: on the cover, in a list, and each crossing on a sheet', () => {
    const pages = layoutPack(packInput(project));
    const words = pages.map(({ items }) => wordsOf(items));
    const dots = [...leafItems(pages[0]!.items)].filter(({ kind }) => kind === 'circles').length;
    const drawn = layoutPack(packInput(put(project, { ...crossing.thing, fate: 'takenOut' })));
    expect(dots).toBe([...leafItems(drawn[0]!.items)].filter(({ kind }) => kind === 'circles').length + 1);
    expect(words[0]).toContain('3 things are in the ground that the drawing shows no longer, 2 of them perhaps live');
    expect(words.some((page) => page.includes('Old lead-out L1') && page.includes('may be live'))).toBe(true);
    expect(words.some((page) => page.includes('To find the old crossing under G1'))).toBe(true);
  });

  describe('with the side not said', () => {
    const { thing } = crossing;
    const was = thing.was as WasCrossing;
    const points = was.points.map((point) => ({ ...point, side: null, ties: point.ties.slice(0, 2) }));
    const open = put(project, { ...thing, was: { ...was, points } });
    const opened = surveyOf(open);
    const lying = leftInGround(open, opened).find((each) => each.thing.id === thing.id)!;

    it('is drawn at every place that it may have, on screen and on the map sheet', () => {
      expect(lying.crossing!.courses.length).toBeGreaterThan(1);
      expect(lying.ways.length).toBeGreaterThanOrEqual(lying.crossing!.courses.length);
      const others = leftInGround(open, opened).flatMap(({ path }) => (path.length > 1 ? [path] : [])).length - 1;
      const window = mapWindow([0, 0, 240, 50], [100, 5], 1000, opened.plane);
      const { lines } = inGroundLayer(open, opened, window, figures('metric'), measure);
      expect(lines.length).toBe(others + lying.crossing!.courses.length);
      const part = { kind: 'inGround', id: thing.id, left: lying, box: [0, 0, 0, 0] } as const;
      for (const way of lying.ways) expect(partDistanceM(part, way[way.length >> 1]!, 10)).toBe(0);
    });

    it('is told in the same way by the pack, the tables and the map files', () => {
      const word = wordsOf(leftPages({ ...packInput(open), project: open, survey: opened })[0]!.items);
      expect(word).toContain('side not said: see its own sheet');
      const table = allTables(open, opened).find(({ name }) => name === 'no_longer_drawn')!;
      const row = table.rows.find(({ id }) => id === thing.id)!.cells;
      const told = Object.fromEntries(table.columns.map(({ name }, i) => [name, row[i]]));
      const feature = [...featuresOf(open, opened)].find(({ id }) => id === `inGround:${thing.id}`)!;
      const { placeKnownBy, placeWithinM } = feature.properties as { placeKnownBy: string; placeWithinM: number };
      expect(told).toMatchObject({ place_known_by: 'side not said', possible_courses: lying.crossing!.courses.length });
      expect(placeKnownBy).toBe('side not said');
      expect(told.place_within_m).toBeCloseTo(placeWithinM, 3);
    });
  });

  describe('with a measured point that its arc passes by', () => {
    const { thing } = crossing;
    const was = thing.was as WasCrossing;
    const bend = was.points.find(({ role }) => role === 'bend')!;
    const gps = { lonLat: survey.plane.toLonLat([50, 4]), seM: 0.5 };
    const further = { ...bend, id: 'further', role: 'point' as const, ties: [], side: null, gps };
    const passed = put(project, { ...thing, was: { ...was, points: [...was.points, further] } });
    const surveyed = surveyOf(passed);
    const lying = leftInGround(passed, surveyed).find((each) => each.thing.id === thing.id)!;
    const places = lying.ways.filter(({ length }) => length === 1).map(([xy]) => surveyed.plane.toLonLat(xy!));
    const name = 'old crossing under G1 (dead, left in the ground)';

    it('shows that place too in the map files, as a point with the same words', () => {
      expect(places).toHaveLength(1);
      const spots = [...featuresOf(passed, surveyed)].filter(({ properties }) => {
        return properties!['undergate:kind'] === 'otherPlace';
      });
      expect(spots.map(({ geometry }) => geometry!.type)).toEqual(places.map(() => 'Point'));
      expect(spots[0]!.properties).toMatchObject({ name: thing.name, inTheGround: true, fate: 'dead' });
      for (const [i, { geometry }] of spots.entries()) {
        const [lon, lat] = (geometry as Point).coordinates;
        expect(lon).toBeCloseTo(places[i]![0], 8);
        expect(lat).toBeCloseTo(places[i]![1], 8);
      }
      const ids = [...featuresOf(passed, surveyed)].map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      const kml = writeKml(passed, surveyed)
        .split('<Placemark>')
        .filter((mark) => mark.includes(name));
      expect(kml).toHaveLength(1 + places.length);
      for (const mark of kml) expect(mark).toContain('place known by: ');
      const gpx = writeGpx(passed, surveyed);
      expect(
        gpx.split(`<wpt `).filter((mark) => mark.startsWith('lat') && mark.includes(`<name>${name}`)),
      ).toHaveLength(places.length);
      const { geometry } = allTables(passed, surveyed)
        .find((table) => table.name === 'no_longer_drawn')!
        .rows.find(({ id }) => id === thing.id)!;
      expect(geometry!.type).toBe('LineString');
    });

    it('is told within what reaches that place', () => {
      const within = lying.crossing!.certainty.withinM;
      expect(within).toBeGreaterThan(Math.max(...leftThing(lying).ways.map(({ withinM }) => withinM)));
      expect(leftWithinM(lying)).toBe(within);
    });

    it.each([
      ['map.geojson', writeGeoJson],
      ['map.kml', writeKml],
      ['map.gpx', writeGpx],
    ])('comes back from %s as it was, once', (file, write) => {
      const preview = previewOfBytes(file, bytesOf(write(passed, surveyed)));
      expect(preview.features.filter(({ ours }) => !ours)).toEqual([]);
      const fresh = projectOf([newProperty('Another'), ...startingFenceTypes()]);
      const back = importFeatures(preview, { ...usualChoices, typeId: 'ft-2' }, fresh, countingIds(900));
      expect(back.problems).toEqual([]);
      expect(exchangedLeft(back.project)).toEqual(exchangedLeft(passed));
    });
  });

  it('says on other maps what the registers say of it', () => {
    const mark = writeKml(project, survey)
      .split('<Placemark>')
      .find((each) => each.includes('<name>old crossing under G1'));
    expect(mark).toMatch(/<description>[^<]*drawn until: 2026-11-30[^<]*place known by: measured/);
    expect(writeGpx(project, survey)).toMatch(/<desc>[^<]*drawn until: 2026-11-30/);
  });

  it('once taken out stands apart from what is planned, and is not shown at first', () => {
    const out = put(project, { ...crossing.thing, fate: 'takenOut' as const });
    const kml = writeKml(out, surveyOf(out));
    const folders = new Map(
      [...kml.matchAll(/<Folder><name>([^<]*)<\/name>(.*?)<\/Folder>/gs)].map(([, a, b]) => [a, b]),
    );
    const mark = folders.get('Taken out of the ground')!;
    expect(mark).toContain('old crossing under G1 (taken out)');
    expect(mark).toContain('<styleUrl>#takenOut</styleUrl>');
    expect(mark).toContain('<visibility>0</visibility>');
    expect(folders.get('Planned cables, not in the ground') ?? '').not.toContain('old crossing under G1');
    expect(folders.get('In the ground, no longer drawn')).not.toContain('old crossing under G1');
  });

  it('goes out in every format, and comes back as what it was', () => {
    const json = writeGeoJson(project, survey);
    const read = readGeoJson(json);
    if (!read.ok) throw new Error(inEnglish(read.message));
    const fresh = projectOf([newProperty('Another'), ...startingFenceTypes()]);
    const back = importFeatures(read.preview, { ...usualChoices, typeId: 'ft-2' }, fresh, countingIds(900));
    expect(back.problems).toEqual([]);
    expect([...back.project.inGround.values()]).toEqual([...project.inGround.values()]);
    const feature = [...featuresOf(project, survey)].find(({ id }) => id === `inGround:${crossing.thing.id}`)!;
    expect(feature.geometry!.type).toBe('LineString');
    expect(feature.properties).toMatchObject({ inTheGround: true, state: 'dead, left in the ground' });
    for (const text of [writeKml(project, survey), writeGpx(project, survey), writeDxf(project, survey)]) {
      expect(text).toContain('old crossing under G1 (dead, left in the ground)');
    }
    expect(new TextDecoder('latin1').decode(writeRegisters(project, survey))).toContain('no_longer_drawn');
  });

  it('is frozen with a handover, and what was left since is told', () => {
    const frozen = handOver({ date: '2026-11-01', by: '', to: '', note: '' }, countingIds(1))(recordedDrawing());
    const [handover] = [...frozen.handover.values()];
    const now = put(project, handover!);
    const changes = changesSince(handover!, now, surveyOf(now)).filter(({ kind }) => kind === 'inGround');
    expect(changes.map(({ name, what }) => `${inEnglish(name)}: ${what}`)).toContain('old crossing under G1: new');
  });

  it('comes along when the property is given its place on earth', () => {
    const onGrid: Project = put(project, { ...propertyOf(project), placed: false });
    const placed = placeOnEarth({ point: { grid: [0, 0], earth: [10, 50] }, gridNorthDeg: 30 })(onGrid);
    const [was, is] = [crossing.path, leftInGround(placed, surveyOf(placed)).at(-1)!.path];
    const lengthOf = (path: typeof was) => Math.hypot(path.at(-1)![0] - path[0]![0], path.at(-1)![1] - path[0]![1]);
    expect(lengthOf(is)).toBeCloseTo(lengthOf(was), 4);
    expect(surveyOf(placed).plane.toLonLat(is[0]!)[0]).toBeCloseTo(10, 2);
  });
});
