import jsqr from 'jsqr';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { type PackOptions, packParts } from '../../../core/api/packOptions.ts';
import { type Item, leafItems, type Page, type PathItem } from '../../../core/drawing/displayList.ts';
import { type Project, projectOf, propertyOf, put } from '../../../core/model/project.ts';
import { newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint, Photo } from '../../../core/model/recordThings.ts';
import { crossingRegister } from '../../../core/record/crossingRegister.ts';
import { middleOfTrench } from '../../../core/sheets/pack/cardPoints.ts';
import { geoUri } from '../../../core/sheets/pack/geoUri.ts';
import { layoutPack } from '../../../core/sheets/pack/layoutPack.ts';
import type { PackInput } from '../../../core/sheets/pack/packInput.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { figures, plainWords } from '../../../core/words/figures.ts';
import { qrModules } from '../../../electron/print/qrModules.ts';
import { inEnglish } from '../../support/english.ts';
import { plainMeasure } from './plainMeasure.ts';

const options: PackOptions = {
  parts: packParts,
  paper: 'A3',
  orientation: 'landscape',
  scaleDenominator: null,
  handoverNumber: null,
  preparedBy: 'the crew',
  preparedFor: 'the owner',
  note: '',
  date: '2031-05-02',
};

function inputOf(project: Project, changes: Partial<PackInput> = {}): PackInput {
  const survey = surveyOf(project);
  return {
    project,
    survey,
    property: propertyOf(project),
    options,
    date: options.date,
    measure: plainMeasure,
    f: figures(propertyOf(project).units),
    testSheets: testSheets(project, survey),
    crossings: crossingRegister(project, survey),
    takeOff: null,
    makeQr: qrModules,
    photoBytes: () => null,
    ...changes,
  };
}

const demo = projectOf(demoThings());
const input = inputOf(demo);
const textsOf = (page: Page) => [...leafItems(page.items)].flatMap((item) => (item.kind === 'text' ? [item.text] : []));

/** The figures of a page that are QR codes, by what they say they hold. */
function codesOn(page: Page): { readonly says: string; readonly path: PathItem }[] {
  const found: { says: string; path: PathItem }[] = [];
  const look = (items: readonly Item[]) => {
    for (const item of items) {
      if (item.kind === 'clip') look(item.items);
      if (item.kind !== 'tagged') continue;
      const says = /^QR code of (.*)$/.exec(item.alternative ?? '')?.[1];
      if (says === undefined) look(item.items);
      else found.push({ says, path: item.items.find((inner) => inner.kind === 'path')! });
    }
  };
  look(page.items);
  return found;
}

/** What an independent reader makes of a code as it is drawn: its rectangles painted 8 dots a millimetre. */
function decoded({ paths }: PathItem): string | undefined {
  const dotsPerMm = 8;
  const all = paths.flat();
  const [left, top] = [Math.min(...all.map(([x]) => x)) - 4, Math.min(...all.map(([, y]) => y)) - 4];
  const size = Math.ceil((Math.max(...all.map(([x]) => x)) + 4 - left) * dotsPerMm);
  const dots = new Uint8ClampedArray(size * size * 4).fill(255);
  for (const path of paths) {
    const xs = path.map(([x]) => Math.round((x - left) * dotsPerMm));
    const ys = path.map(([, y]) => Math.round((y - top) * dotsPerMm));
    for (let y = Math.min(...ys); y < Math.max(...ys); y++) {
      for (let x = Math.min(...xs); x < Math.max(...xs); x++) dots.fill(0, (y * size + x) * 4, (y * size + x) * 4 + 3);
    }
  }
  return jsqr(dots, size, size)?.data;
}

describe('what a reading is judged by', () => {
  const words = layoutPack(input).map((page) => textsOf(page).join(' '));

  it('stands on each test sheet, with from where on it is low, and that an estimate is one', () => {
    const sheets = words.filter((text) => text.includes('Test sheet, section') && text.includes('Reading, kV'));
    expect(sheets.length).toBeGreaterThan(5);
    for (const text of sheets) {
      for (const said of ['Usual there', 'Low under', 'Good from', 'an estimate may be off', 'an assumption']) {
        expect(text).toContain(said);
      }
    }
    expect(sheets.some((text) => /8\.\d kV, estimated/.test(text))).toBe(true);
    expect(sheets.some((text) => text.includes('kV, read on 4 March 2025'))).toBe(true);
  });

  it('stands beside the readings that were judged by it', () => {
    const [first] = demo.reading.values();
    const yardstick = { usualV: 8100, by: 'estimate', lowBelowV: 4900, goodFromV: 6100 } as const;
    const pages = layoutPack(inputOf(put(demo, { ...first!, yardstick })));
    const text = pages.map((page) => textsOf(page).join(' ')).join(' ');
    expect(text).toContain('8.1 kV, estimated');
    expect(text).toContain('A section passes where every reading is as usual');
  });
});

describe('the handover pack of the demo property', () => {
  let pages: Page[];
  beforeAll(() => {
    pages = layoutPack(input);
  });
  const cards = () => pages.filter(({ title }) => /^(Planned c|C)rossing at G\d+$/.test(title));
  const cardAt = (name: string) => cards().find(({ title }) => title.endsWith(`rossing at ${name}`))!;

  const built = input.crossings.filter((row) => row.built.figures.crossing.status === 'built');

  it('has a card for each crossing, the planned ones last and called so, and a tag for each in the ground', () => {
    const nameOf = (row: (typeof built)[number]) => row.built.figures.gateway.name;
    const planned = input.crossings.filter((row) => !built.includes(row));
    expect(cards().map(({ title }) => title)).toEqual([
      ...built.map((row) => `Crossing at ${nameOf(row)}`),
      ...planned.map((row) => `Planned crossing at ${nameOf(row)}`),
    ]);
    const cover = textsOf(pages[0]!).join(' ');
    expect(cover).toContain(`of ${built.length} crossings in the ground recorded`);
    expect(cover).toContain(`${planned.length} planned`);
    expect(cover).toContain('A ring is a planned one: not in the ground.');
    const tags = pages.filter(({ title }) => title.startsWith('Gate tags')).flatMap(codesOn);
    expect(built.length).toBeLessThan(input.crossings.length);
    expect(tags).toHaveLength(built.length);
  });

  it('names on its cover the page at which each part begins', () => {
    const cover = textsOf(pages[0]!);
    const pageOf = (title: string) => Number(cover[cover.indexOf(title) + 1]);
    expect(pages[pageOf('Crossings: schedule, and a card for each') - 1]!.title).toBe('Schedule of crossings');
    expect(pages[pageOf('Energiser and earth') - 1]!.title).toBe('Energiser and earth');
    expect(pages[pageOf('Gate tags to cut out') - 1]!.title).toBe('Gate tags to cut out');
  });

  it('says on its cover what to heed before anything is touched', () => {
    expect(textsOf(pages[0]!).join(' ')).toContain('energiser off, and the fence proven dead');
  });

  it('draws QR codes that hold the coordinate that stands below them', () => {
    const places = new Map(
      input.crossings.map(({ built }) => [
        built.figures.gateway.name,
        geoUri(input.survey.plane.toLonLat(middleOfTrench(built))),
      ]),
    );
    for (const card of cards()) {
      const [code, ...more] = codesOn(card);
      expect(more).toEqual([]);
      const place = places.get(card.title.replace(/^.*rossing at /, ''));
      expect(decoded(code!.path)).toBe(place);
      expect(textsOf(card)).toContain(place);
    }
    const tags = pages.filter(({ title }) => title.startsWith('Gate tags')).flatMap(codesOn);
    const ofBuilt = built.map((row) => places.get(row.built.figures.gateway.name));
    expect(tags.map(({ path }) => decoded(path))).toEqual(ofBuilt);
  });

  it('gives every tape distance of a crossing on its card', () => {
    for (const { built } of input.crossings) {
      const card = cardAt(built.figures.gateway.name);
      const words = textsOf(card).join(' ').replaceAll('\u00a0', ' ');
      for (const { ties } of built.points) {
        for (const { distanceM, name } of ties)
          expect(words).toContain(`${distanceM.toFixed(2)} m from ${inEnglish(name)}`);
      }
    }
  });

  it('says on each card and on the schedule what the live cable must be and must not lie with', () => {
    const schedule = pages.find(({ title }) => title === 'Schedule of crossings')!;
    for (const page of [...cards(), schedule]) {
      const words = textsOf(page).join(' ');
      expect(words).toContain(plainWords().power.conductors.oneConduit);
      expect(words).toContain(plainWords().power.conductors.ratingCaution);
    }
  });

  it('says louder on a card that a cable of another sort is recorded in the trench', () => {
    const [row] = input.crossings;
    const { crossing, gateway } = row!.built.figures;
    const record = { ...newCrossingRecord(crossing.id), alsoInTrench: 'mains cable to the pump' };
    const noted = layoutPack(inputOf(put(demo, record)));
    const card = noted.find(({ title }) => title === `Crossing at ${gateway.name}`)!;
    expect(textsOf(card).join(' ')).toContain('Another cable is recorded here (mains cable).');
  });

  it('warns of a joint underground, and says what was never measured', () => {
    const texts = (name: string) => textsOf(cardAt(name)).join(' ');
    const joined = input.crossings.find(({ built }) => built.record?.jointsUnderground === 1)!;
    expect(texts(joined.built.figures.gateway.name)).toContain('A joint lies underground');
    const unmeasured = built.find((row) => row.built.certainty.basis === 'drawn')!;
    expect(texts(unmeasured.built.figures.gateway.name)).toContain('Not measured (from the plan).');
    const planned = input.crossings.find((row) => !built.includes(row))!;
    expect(texts(planned.built.figures.gateway.name)).toContain('Planned, not in the ground');
  });

  describe('of a crossing that its record leaves open', () => {
    const open = input.crossings.find(({ built: { points, record } }) => {
      return points.filter(({ by }) => by === 'ties').length === 3 && (record?.depths.length ?? 0) > 0;
    })!;
    const { name } = open.built.figures.gateway;
    const changed = (bend: Partial<BuriedPoint>) => {
      const { point } = open.built.points.find((each) => each.point.role === 'bend')!;
      return layoutPack(inputOf(put(demo, { ...point, ties: point.ties.slice(0, 2), side: null, ...bend })));
    };
    const wordsOf = (all: readonly Page[], title: string) =>
      all
        .filter((page) => page.title === title || (title.startsWith('Gate') && page.title.startsWith(title)))
        .flatMap(textsOf)
        .join(' ')
        .replaceAll('\u00a0', ' ');

    it('shows both places on card and tag where the side was not said', () => {
      const all = changed({});
      const card = wordsOf(all, `Crossing at ${name}`);
      expect(card).toContain('Side not said (bend: ');
      expect(card).toMatch(/B (north|south|east|west)\S* .*B (north|south|east|west)/);
      expect(card).not.toContain('Measured: it lies within');
      expect(wordsOf(all, 'Gate tags to cut out')).toContain('side: not said which.');
      expect(all.some(({ title }) => title === `Crossing at ${name} (2)`)).toBe(false);
    });

    it('tells on the tag of a mains cable in the trench, and of no water pipe', () => {
      const tags = (alsoInTrench: string) =>
        wordsOf(layoutPack(inputOf(put(demo, { ...open.built.record!, alsoInTrench }))), 'Gate tags to cut out');
      expect(tags('Mains cable to the pump')).toContain('Also in the trench: Mains cable to the pump.');
      expect(tags('Water pipe')).not.toContain('Also in the trench: Water');
    });

    it('prints tapes that do not meet as tapes, and an assumed curve as assumed', () => {
      const { point } = open.built.points.find((each) => each.point.role === 'bend')!;
      const all = changed({ ties: point.ties.slice(0, 2).map((tie) => ({ ...tie, distanceM: 0.4 })) });
      const card = wordsOf(all, `Crossing at ${name}`);
      expect(card).toContain('These tapes do not meet: 0.40 m from ');
      expect(card).toContain('assumed');
      expect(card).not.toMatch(/off \d/);
      expect(wordsOf(all, 'Gate tags to cut out')).toContain('these tapes do not meet. Find it with care.');
    });

    it('tells depths as measured, the shallowest first, and as planned where nobody measured', () => {
      const [first, ...more] = open.built.record!.depths;
      const record = { ...open.built.record!, depths: [{ ...first!, depthM: 0.1 }, ...more] };
      const all = layoutPack(inputOf(put(demo, record)));
      const most = Math.max(...record.depths.map(({ depthM }) => depthM)).toFixed(2);
      expect(wordsOf(all, 'Gate tags to cut out')).toContain(`0.10 to ${most} m deep to the top of the pipe, measured`);
      expect(wordsOf(all, 'Gate tags to cut out')).toContain('deep as planned, not measured');
      expect(wordsOf(all, 'Schedule of crossings')).toContain(`0.10 to ${most} to pipe, measured`);
      expect(wordsOf(all, 'Schedule of crossings')).toContain('trench planned, not measured');
      expect(wordsOf(all, `Crossing at ${name}`)).toContain(`0.10 to ${most} m deep to the top of the pipe, measured`);
    });
  });

  it('has room for a card on one page', () => {
    expect(pages.filter(({ title }) => /rossing at \S+ \(2\)$/.test(title)).map(({ title }) => title)).toEqual([]);
  });

  it('keeps everything on the page', () => {
    for (const page of pages) {
      for (const item of leafItems(page.items)) {
        if (item.kind !== 'text') continue;
        const [x, y] = item.at;
        expect(x >= 0 && x <= page.widthMm && y >= 0 && y <= page.heightMm, `${page.title}: ${item.text}`).toBe(true);
      }
    }
  });

  it('holds only the parts that were chosen', () => {
    const few = layoutPack({ ...input, options: { ...options, parts: ['power'] } });
    expect(few.map(({ title }) => title)).toEqual(['Handover pack', 'Energiser and earth']);
  });
});

describe('a property without a place on earth', () => {
  const unplaced = inputOf(put(demo, { ...propertyOf(demo), placed: false }));

  it('gets no codes and no degrees, and says so', () => {
    const pages = layoutPack(unplaced);
    expect(pages.flatMap(codesOn)).toEqual([]);
    const words = pages.flatMap(textsOf).join(' ');
    expect(words).not.toContain('geo:');
    expect(words).toContain('no place on earth yet');
    expect(
      pages
        .filter(({ title }) => title.startsWith('Crossing at'))
        .flatMap(textsOf)
        .join(' '),
    ).not.toContain('°');
  });
});

describe('photos on a card', () => {
  const crossing = input.crossings[0]!.built.figures.crossing;
  const photo: Photo = {
    kind: 'photo',
    id: 'ph',
    of: { kind: 'crossing', id: crossing.id },
    blobId: 'large',
    thumbId: 'small',
    widthPx: 1200,
    heightPx: 1600,
    takenAt: '2031-02-11T09:00:00',
    gps: null,
    fileName: 'a.jpg',
    caption: 'Open trench',
  };
  const bytes = Uint8Array.of(0xff, 0xd8);
  const project = put(demo, photo, { ...photo, id: 'ph2' });

  it('show the first with its words and day, in its own shape, and how many more there are', () => {
    const chosen = { ...options, parts: ['crossings'] as const };
    const pages = layoutPack(
      inputOf(project, { options: chosen, photoBytes: (id) => (id === 'small' ? bytes : null) }),
    );
    const card = pages.find(({ title }) => title === 'Crossing at G1')!;
    const images = [...leafItems(card.items)].filter((item) => item.kind === 'image');
    expect(images).toHaveLength(1);
    const [left, top, right, bottom] = images[0]!.box;
    expect((bottom - top) / (right - left)).toBeCloseTo(1600 / 1200, 6);
    expect(textsOf(card).join(' ')).toContain('Open trench, 11 February 2031 (1 more in the file)');
  });

  it('are said to be missing where the file does not have them', () => {
    const pages = layoutPack(inputOf(project, { options: { ...options, parts: ['crossings'] } }));
    expect(textsOf(pages.find(({ title }) => title === 'Crossing at G1')!)).toContain('No photo');
  });
});

describe('geo URIs', () => {
  it.each([
    [[-31.5, -42.25], 'geo:-42.25,-31.5'],
    [[172.123456789, -43.5], 'geo:-43.5,172.1234568'],
    [[0, 0], 'geo:0,0'],
    [[-0.00000001, 10], 'geo:10,0'],
    [[100, 20], 'geo:20,100'],
  ] as const)('of %s is %s (RFC 5870: latitude first, no exponents)', (place, uri) => {
    expect(geoUri(place)).toBe(uri);
  });
});
