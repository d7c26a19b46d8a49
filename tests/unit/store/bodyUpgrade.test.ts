import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { readGeoJson } from '../../../core/exchange/geojson/readGeoJson.ts';
import { readGpx } from '../../../core/exchange/gpx/readGpx.ts';
import { importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { readKml } from '../../../core/exchange/kml/readKml.ts';
import { type Body, type BodyStep, upgrade } from '../../../core/kinds/upgrade.ts';
import { newEnergiser, newGateway } from '../../../core/model/defaults.ts';
import { allThings, projectOf } from '../../../core/model/project.ts';
import type { Energiser, FenceLine, Gateway, Post, Thing } from '../../../core/model/things.ts';
import { type Migration, newestVersion, readMigrations } from '../../../electron/store/migrations.ts';
import { openProjectFile } from '../../../electron/store/projectFile.ts';
import { inEnglish } from '../../support/english.ts';
import { fullProperty } from '../../support/fullProperty.ts';
import { countingIds } from '../../support/ids.ts';
import { changed, edit, makeStore, problemIn, startingThings, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

/**
 * A made-up migration, as if bodies had had another shape before it: a post's note was its remark; a gateway did not say
 * whether vehicles pass; an energiser held its earth; and a post could be a thing of the kind "stake".
 */
const { steps, madeUp, next } = vi.hoisted(() => {
  const to = 1000;
  const all: readonly BodyStep[] = [
    { to, kind: 'post', upgrade: ({ remark, ...rest }) => [{ ...rest, note: remark }] },
    { to, kind: 'stake', upgrade: ({ remark, ...rest }) => [{ ...rest, kind: 'post', note: remark }] },
    { to, kind: 'gateway', upgrade: (body) => [{ vehicles: true, ...body }] },
    {
      to,
      kind: 'energiser',
      upgrade: ({ earth, ...rest }) => [rest, { ...(earth as Body), kind: 'earthField', energiserId: rest.id }],
    },
  ];
  return { steps: [...all], madeUp: all, next: to };
});
vi.mock('../../../core/kinds/bodySteps.ts', () => ({ bodySteps: steps }));

const present = readMigrations();
const migrations: readonly Migration[] = [
  ...present,
  { number: next, fileName: `${next}-test.sql`, sql: 'CREATE TABLE gone_through (x)' },
];

beforeEach(() => {
  steps.splice(0, steps.length, ...madeUp);
});

const line: FenceLine = {
  kind: 'fenceLine',
  id: 'line',
  name: 'Line',
  typeId: startingThings.find(({ kind }) => kind === 'fenceType')!.id,
  live: true,
  path: [
    [175.5, -37.9],
    [175.51, -37.9],
  ],
  growth: null,
  status: 'planned',
  note: '',
};
const gateway: Gateway = {
  ...newGateway({ id: 'gw', name: 'G1', lineId: 'line', atM: 100, widthM: 4.2 }),
  vehicles: true,
};
const energiser: Energiser = newEnergiser('en', 'E1', [175.5, -37.9]);
const earthField: Thing = {
  kind: 'earthField',
  id: 'ea',
  energiserId: 'en',
  at: [175.5, -37.9001],
  rods: 3,
  rodLengthM: 2,
  rodDiameterMm: 16,
  spacingM: 3,
  status: 'planned',
  note: '',
};
const stake: Post = { kind: 'post', id: 'st', name: 'Stake', at: [175.502, -37.9], role: 'other', note: 'of oak' };
const corner: Post = { ...stake, id: 'po', name: 'Corner', note: 'as surveyed' };

/** A thing as it is now, as it was before the migration. */
function before(thing: Thing): Body[] {
  if (thing === stake || (thing.kind === 'post' && thing.id === 'st')) {
    const { note, ...rest } = thing as Post;
    return [{ ...rest, kind: 'stake', remark: note }];
  }
  if (thing.kind === 'post') {
    const { note, ...rest } = thing;
    return [{ ...rest, remark: note }];
  }
  if (thing.kind === 'gateway') {
    const { vehicles: _, ...rest } = thing;
    return [rest];
  }
  if (thing.kind === 'energiser') {
    const { kind: _, energiserId: __, ...earth } = earthField as Extract<Thing, { kind: 'earthField' }>;
    return [{ ...thing, earth }];
  }
  if (thing.kind === 'earthField') return [];
  if (thing.kind === 'builtMark' && thing.planned) {
    return [{ ...thing, planned: { ...thing.planned, thing: before(thing.planned.thing)[0] } }];
  }
  if (thing.kind === 'inGround' && thing.was.what === 'crossing') {
    const { was } = thing;
    const mark = was.mark && before(was.mark)[0];
    return [{ ...thing, was: { ...was, gateway: before(was.gateway)[0], mark } }];
  }
  if (thing.kind === 'keptPlan' || thing.kind === 'handover')
    return [{ ...thing, things: thing.things.flatMap(before) }];
  return [thing as unknown as Body];
}

const mark: Thing = {
  kind: 'builtMark',
  id: 'mark',
  thingKind: 'gateway',
  thingId: 'gw',
  date: '2031-05-02',
  by: '',
  note: '',
  planned: { thing: gateway, places: [] },
};
const left = fullProperty().find(({ kind }) => kind === 'inGround') as Extract<Thing, { kind: 'inGround' }>;
const leftWithGateway: Thing = left.was.what === 'crossing' ? { ...left, was: { ...left.was, gateway, mark } } : left;
const drawn = [...startingThings, line, stake, corner, gateway, energiser, earthField] as const;
const plan = { kind: 'keptPlan', id: 'plan', name: 'Plan', date: '2031-05-01', note: '', things: drawn } as Thing;
const handover = {
  kind: 'handover',
  id: 'handover',
  number: 1,
  date: '2031-05-03',
  by: '',
  to: '',
  note: '',
  things: [...drawn, mark, leftWithGateway],
} as Thing;
const things: readonly Thing[] = [
  ...startingThings,
  line,
  stake,
  corner,
  gateway,
  energiser,
  mark,
  leftWithGateway,
  plan,
  handover,
  earthField,
];

/** A file of the version before the made-up one: its records, and steps in which each of them was made or changed. */
function makeOlder(path: string, spoil: (body: Body) => Body = (body) => body): string {
  const store = makeStore(path, things);
  store.apply(edit(store, 'Name the stake', [changed(stake, { ...stake, name: 'Oak' })]));
  store.apply(edit(store, 'Widen', [changed(gateway, { ...gateway, widthM: 5 })]));
  store.apply(
    edit(
      store,
      'Take down',
      [energiser, earthField, handover].map((thing) => ({ ...changed(thing, thing), after: null })),
    ),
  );
  store.undo();
  store.close();
  withSqlite(path, (database) => {
    database.exec('DELETE FROM thing');
    const insert = database.prepare('INSERT INTO thing (kind, id, body) VALUES (?, ?, ?)');
    const now = things.map((thing) => {
      if (thing === stake) return { ...stake, name: 'Oak' };
      return thing === gateway ? { ...gateway, widthM: 5 } : thing;
    });
    for (const body of now.flatMap(before).map(spoil)) insert.run(body.kind, body.id, JSON.stringify(body));
    const write = database.prepare('UPDATE step SET changes = ? WHERE seq = ?');
    for (const { seq, changes } of database
      .prepare<[], { seq: number; changes: string }>('SELECT seq, changes FROM step')
      .all()) {
      const older = (JSON.parse(changes) as { before: Thing | null; after: Thing | null }[]).flatMap((change) => {
        const [from, to] = [change.before, change.after].map((thing) => (thing ? (before(thing)[0] ?? null) : null));
        const { kind, id } = from ?? to ?? {};
        return kind ? [{ kind, id, before: from, after: to }] : [];
      });
      write.run(JSON.stringify(older), seq);
    }
  });
  return path;
}

describe('a migration that changes bodies', () => {
  test('brings things, handovers, kept plans, marks and what was left in the ground to the present shape', () => {
    const folder = temporaryFolder();
    const path = makeOlder(join(folder, 'Farm.undergate'));
    const { store, things: opened } = openProjectFile(path, migrations);
    const now = things.map((thing) => {
      if (thing === stake) return { ...stake, name: 'Oak' };
      return thing === gateway ? { ...gateway, widthM: 5 } : thing;
    });
    expect(opened).toEqual(now);
    expect(store.holdsUnknown(opened)).toBe(false);
    store.close();
    expect(readdirSync(folder)).toContain(
      `Farm.before-${String(newestVersion(present) + 1).padStart(4, '0')}.undergate`,
    );
  });

  test('can be undone and redone over', () => {
    const path = makeOlder(join(temporaryFolder(), 'Farm.undergate'));
    const { store } = openProjectFile(path, migrations);
    const all = () => store.things();
    expect(store.undo()!.changes).toEqual([changed({ ...gateway, widthM: 5 }, gateway)]);
    expect(store.undo()!.changes).toEqual([changed({ ...stake, name: 'Oak' }, stake)]);
    expect(all()).toEqual(things);
    store.redo();
    store.redo();
    store.redo();
    expect(all().map(({ id }) => id)).not.toContain('ea');
    expect(all().map(({ id }) => id)).not.toContain('handover');
    store.undo();
    expect(all()).toEqual(expect.arrayContaining([energiser, earthField, handover]));
    store.close();
  });

  test('leaves the file as it was where a body can’t bear it', () => {
    steps.push({
      to: next,
      kind: 'fenceLine',
      upgrade: (body) => [{ ...body, path: (body.path as string[]).toSorted() }],
    });
    const path = makeOlder(join(temporaryFolder(), 'Farm.undergate'), (body) =>
      body.kind === 'fenceLine' ? { kind: body.kind, id: body.id } : body,
    );
    const bytes = readFileSync(path);
    const problem = problemIn(path, () => openProjectFile(path, migrations));
    expect(problem.code).toBe('damaged');
    expect(problem.message).toContain('The record of fenceLine line can');
    expect(readFileSync(path).equals(bytes)).toBe(true);
  });

  test('takes out a step of which nothing is left', () => {
    const path = makeOlder(join(temporaryFolder(), 'Farm.undergate'));
    steps.splice(0, steps.length, ...madeUp.filter(({ kind }) => kind !== 'stake'), {
      to: next,
      kind: 'stake',
      upgrade: () => [],
    });
    const { store, things: opened } = openProjectFile(path, migrations);
    expect(opened.map(({ id }) => id)).not.toContain('st');
    expect(store.undo()!.label).toBe('Widen');
    expect(store.undo()).toBeNull();
    store.close();
  });
});

describe('steps of several versions', () => {
  test('are taken in order, from the version of the body on', () => {
    steps.splice(
      0,
      steps.length,
      { to: next + 1, kind: 'b', upgrade: (body) => [{ ...body, kind: 'c', path: `${String(body.path)}c` }] },
      { to: next, kind: 'a', upgrade: (body) => [{ ...body, kind: 'b', path: `${String(body.path)}b` }] },
    );
    expect(upgrade('a', next - 1, { kind: 'a', id: '1', path: 'a' })).toEqual([{ kind: 'c', id: '1', path: 'abc' }]);
    expect(upgrade('b', next, { kind: 'b', id: '1', path: 'b' })).toEqual([{ kind: 'c', id: '1', path: 'bc' }]);
    const body = { kind: 'a', id: '1', path: 'a' };
    expect(upgrade('a', next + 1, body)[0]).toBe(body);
  });
});

describe('a file for exchange of a version before', () => {
  const properties = (body: Body): Record<string, unknown> => {
    const { kind, id, at: _, path: __, ...rest } = body;
    return { 'undergate:kind': kind, 'undergate:id': id, ...rest };
  };
  const older = [line, stake, corner, gateway, energiser].flatMap(before);
  const point = (body: Body) => body.at as readonly number[] | undefined;
  const wanted = [line, gateway, stake, corner, energiser, earthField];

  const geoJson = JSON.stringify({
    type: 'FeatureCollection',
    features: older.map((body) => ({
      type: 'Feature',
      properties: properties(body),
      geometry:
        (point(body) && { type: 'Point', coordinates: point(body) }) ??
        (body.path ? { type: 'LineString', coordinates: body.path } : null),
    })),
  });
  const text = (body: Body) => JSON.stringify(properties(body)).replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  const pathOf = (body: Body) => (body.path ?? []) as readonly (readonly number[])[];
  const kml = `<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${older
    .map((body) => {
      const places = point(body)
        ? `<Point><coordinates>${point(body)!.join(',')}</coordinates></Point>`
        : `<LineString><coordinates>${pathOf(body)
            .map((place) => place.join(','))
            .join(' ')}</coordinates></LineString>`;
      const shape = point(body) || body.path ? places : '';
      return `<Placemark><ExtendedData><Data name="undergate:thing"><value>${text(body)}</value></Data></ExtendedData>${shape}</Placemark>`;
    })
    .join('')}</Document></kml>`;
  const lonLat = ([lon, lat]: readonly number[]) => `lat="${lat}" lon="${lon}"`;
  const own = (body: Body) => `<extensions><u:thing>${text(body)}</u:thing></extensions>`;
  const gpx = `<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1" xmlns:u="urn:undergate:thing:1">${older
    .map((body) => {
      if (point(body)) return `<wpt ${lonLat(point(body)!)}>${own(body)}</wpt>`;
      const places = pathOf(body).map((place) => `<trkpt ${lonLat(place)}/>`);
      return body.path ? `<trk>${own(body)}<trkseg>${places.join('')}</trkseg></trk>` : '';
    })
    .join('')}<extensions>${older
    .filter((body) => !point(body) && !body.path)
    .map((body) => `<u:thing>${text(body)}</u:thing>`)
    .join('')}</extensions></gpx>`;

  test.each([
    ['GeoJSON', () => readGeoJson(geoJson)],
    ['KML', () => readKml(kml)],
    ['GPX', () => readGpx(gpx)],
  ])('is read with the same steps: %s', (_, read) => {
    const result = read();
    if (!result.ok) throw new Error(inEnglish(result.message));
    expect(result.preview.problems).toEqual([]);
    const typeId = line.typeId;
    const back = importFeatures(
      result.preview,
      { ...usualChoices, typeId },
      projectOf(startingThings),
      countingIds(900),
    );
    expect(back.problems).toEqual([]);
    expect([...allThings(back.project)]).toEqual(expect.arrayContaining(wanted));
    expect([...allThings(back.project)].length).toBe(startingThings.length + wanted.length);
  });
});
