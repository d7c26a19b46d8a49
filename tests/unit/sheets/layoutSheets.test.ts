import { describe, expect, it } from 'vitest';
import type { SheetOptions } from '../../../core/api/sheetOptions.ts';
import { type Item, leafItems, type Page, type TextItem } from '../../../core/drawing/displayList.ts';
import { quadsMeet } from '../../../core/drawing/labels/quads.ts';
import { mapWindow } from '../../../core/drawing/mapWindow.ts';
import { letters, mmPerPt } from '../../../core/drawing/style.ts';
import { textBox, textCorners } from '../../../core/drawing/words.ts';
import { newProperty } from '../../../core/model/defaults.ts';
import { projectOf, propertyOf } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { cautions } from '../../../core/sheets/cautions.ts';
import { layoutSheets, planSheets } from '../../../core/sheets/layoutSheets.ts';
import { sheetFormat } from '../../../core/sheets/paper.ts';
import { suggestedScales } from '../../../core/sheets/scales.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { figures } from '../../../core/words/figures.ts';
import { at, baseOptions, inventedThings, origin } from './inventedProperty.ts';
import { plainMeasure as measure } from './plainMeasure.ts';

function layout(things: readonly Thing[], options: Partial<SheetOptions> = {}): Page[] {
  const project = projectOf(things);
  const survey = surveyOf(project);
  return layoutSheets({
    project,
    survey,
    testSheets: testSheets(project, survey),
    options: { ...baseOptions, ...options },
    f: figures(propertyOf(project).units),
    measure,
  });
}

const texts = (items: readonly Item[]): TextItem[] => [...leafItems(items)].filter((item) => item.kind === 'text');

const words = (page: Page): string =>
  texts(page.items)
    .map(({ text }) => text)
    .join(' ');

/** The words inside the map's frame. */
function mapTexts(page: Page): TextItem[] {
  const inside: TextItem[] = [];
  const walk = (items: readonly Item[]) => {
    for (const item of items) {
      if (item.kind === 'clip') inside.push(...texts(item.items));
      else if (item.kind === 'tagged') walk(item.items);
    }
  };
  walk(page.items);
  return inside;
}

const variants: readonly Partial<SheetOptions>[] = [
  {},
  { paper: 'A3', scaleDenominator: 5000 },
  { orientation: 'portrait', scaleDenominator: 12_500 },
  { scaleDenominator: 2500 },
  { scaleDenominator: 500, centre: at(20, 20) },
];

describe.each(variants)('sheets with %j', (options) => {
  const things = inventedThings();
  const pages = layout(things, options);
  const maps = pages.filter(({ title }) => title.startsWith('Map sheet'));

  it('have no words and no ink outside the page', () => {
    for (const { widthMm, heightMm, items } of pages) {
      const unclipped = items.flatMap(function flat(item: Item): Item[] {
        if (item.kind === 'tagged') return item.items.flatMap(flat);
        return item.kind === 'clip' ? texts(item.items) : [item];
      });
      for (const item of unclipped) {
        const points =
          item.kind === 'text'
            ? textCorners(item, measure)
            : item.kind === 'path'
              ? item.paths.flat()
              : item.kind === 'circles'
                ? item.centres
                : [];
        for (const [x, y] of points) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(widthMm);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(heightMm);
        }
      }
    }
  });

  it('overlap no two labels on the map, and keep them in its frame', () => {
    const frame = sheetFormat({ ...baseOptions, ...options }).map;
    for (const page of maps) {
      const labels = mapTexts(page);
      expect(labels.length).toBeGreaterThan(3);
      labels.forEach((label, i) => {
        const [left, top, right, bottom] = textBox(label, measure);
        expect(left >= frame[0] && right <= frame[2] && top >= frame[1] && bottom <= frame[3]).toBe(true);
        for (const other of labels.slice(i + 1)) {
          const meet = quadsMeet(textCorners(label, measure), textCorners(other, measure));
          expect(meet ? `${label.text} on ${other.text}` : '').toBe('');
        }
      });
    }
  });

  it('overlap no two words beside the map either', () => {
    for (const page of maps) {
      const inside = new Set(mapTexts(page));
      const beside = texts(page.items).filter((item) => !inside.has(item));
      beside.forEach((item, i) => {
        for (const other of beside.slice(i + 1)) {
          const meet = quadsMeet(textCorners(item, measure), textCorners(other, measure));
          expect(meet ? `${item.text} on ${other.text}` : '').toBe('');
        }
      });
    }
  });

  it('carry property, date, page of how many, and the cautions', () => {
    const f = figures('metric');
    pages.forEach((page, i) => {
      const said = words(page);
      expect(said).toContain('Kōwhai Flat (invented)');
      expect(said).toContain('12 May 2026');
      expect(said).toContain(`Page ${i + 1} of ${pages.length}`);
      expect(said).toContain('INVENTED EXAMPLE');
      expect(
        said.includes(f.words.sheets.common.cautions.inOneLine) ||
          cautions(f).every((caution) => said.includes(caution)),
      ).toBe(true);
    });
  });

  it('name every gateway, switch and energiser that a sheet shows, on the map or in its list', () => {
    const project = projectOf(things);
    const survey = surveyOf(project);
    const all = { ...baseOptions, ...options };
    const lists = pages
      .filter(({ title }) => title.startsWith('Beside'))
      .map(words)
      .join(' ');
    planSheets(project, survey, all, figures('metric')).forEach((tile, i) => {
      const window = mapWindow(sheetFormat(all).map, tile.centre, all.scaleDenominator, survey.plane);
      const said = `${words(maps[i]!)} ${lists}`.split(/[\s,]+/);
      for (const { centre, gateway } of survey.gateways.values()) {
        if (window.shows(window.toPaper(centre))) expect(said).toContain(gateway.name);
      }
      for (const row of survey.switches)
        if (window.shows(window.toPaper(row.xy))) expect(said).toContain(row.switch.name);
    });
  });
});

describe('the map', () => {
  it('is at true scale: 1 m on the ground is 1000 / denominator mm', () => {
    const project = projectOf(inventedThings());
    const { plane } = surveyOf(project);
    for (const scaleDenominator of [500, 2500, 10_000]) {
      const window = mapWindow([10, 10, 200, 150], [40, -30], scaleDenominator, plane);
      const [ax, ay] = window.placeToPaper(at(-300, 200));
      const [bx, by] = window.placeToPaper(at(500, -400));
      expect(Math.hypot(bx - ax, by - ay)).toBeCloseTo((1000 / scaleDenominator) * 1000, 4);
      expect(ay).toBeLessThan(by);
    }
  });

  it('gives each section its letter and each fence its status by weight', () => {
    const things = inventedThings();
    const survey = surveyOf(projectOf(things));
    expect(survey.sections.length).toBeGreaterThan(4);
    const [page] = layout(things);
    const shown = mapTexts(page!)
      .filter(({ font, size }) => font === 'bold' && size === letters.sectionLetter * mmPerPt)
      .map(({ text }) => text);
    for (const { letter } of survey.sections) expect(shown).toContain(letter);
  });

  it('leads to its neighbours and is led to from the index', () => {
    const pages = layout(inventedThings(), { scaleDenominator: 2500 });
    expect(pages[0]!.title).toBe('Index of map sheets');
    const anchors = new Set(
      pages.flatMap(({ items }) =>
        [...leafItems(items)].filter((item) => item.kind === 'anchor').map(({ name }) => name),
      ),
    );
    const links = [...leafItems(pages[0]!.items)].filter((item) => item.kind === 'link');
    expect(links.length).toBe(anchors.size);
    for (const { anchor } of links) expect(anchors).toContain(anchor);
    expect(words(pages[1]!)).toMatch(/Sheet 2/);
  });
});

describe('odd properties', () => {
  it('a blank one prints a sheet that says so, and tables that say so', () => {
    const said = layout([newProperty('Blank')])
      .map(words)
      .join(' ');
    expect(said).toContain('Nothing is drawn on this property yet.');
    expect(said).toContain('No cut-out switch is drawn.');
    expect(said).toContain('There is no section to test.');
    expect(said).toContain('not yet placed on the earth');
  });

  it('a centre far from everything prints a sheet that says so', () => {
    const [page] = layout(inventedThings(), { centre: [origin[0] + 1, origin[1]], scaleDenominator: 1000 });
    expect(words(page!)).toContain('Nothing of the property lies on this sheet.');
  });

  it.each([
    ['a very long name', 'The Property with a Name as Long as the Road to Get to It and Back '.repeat(4).trim()],
    ['a name without a space', 'Llanfair'.repeat(30)],
    ['emoji and other scripts', 'Ōtara 🐑🐄 Ферма 農場 مزرعة'],
    ['no name', ''],
  ])('%s breaks nothing', (_, name) => {
    const things = inventedThings(2, name).map((thing) =>
      thing.kind === 'gateway' || thing.kind === 'paddock' ? { ...thing, name: `${thing.name} ${name}` } : thing,
    );
    const pages = layout(things);
    for (const page of pages) {
      for (const item of texts(page.items)) {
        const [left, top, right, bottom] = textBox(item, measure);
        expect(left >= 0 && top >= 0 && right <= page.widthMm && bottom <= page.heightMm).toBe(true);
      }
    }
    const bare = (text: string) => text.replace(/\s/g, '');
    for (const page of pages) expect(bare(words(page))).toContain(bare(name));
  });

  it('one fence line without an energiser has no sections in error and no crash', () => {
    const things = inventedThings(1).filter(
      ({ kind }) => kind === 'property' || kind === 'fenceType' || kind === 'fenceLine',
    );
    expect(layout(things).length).toBeGreaterThan(3);
  });

  it('imperial: bar, areas and tables in feet and acres', () => {
    const things = inventedThings().map((thing) =>
      thing.kind === 'property' ? { ...thing, units: 'imperial' as const } : thing,
    );
    const said = layout(things).map(words).join(' ');
    expect(said).toMatch(/\d ac\b/);
    expect(said).toMatch(/[\d,]+ ft\b/);
    expect(said).not.toMatch(/\d ha\b/);
  });

  it('hundreds of sections: what finds no room beside the map goes on on a page of its own', () => {
    const things = inventedThings(60);
    const project = projectOf(things);
    const fit = suggestedScales(surveyOf(project), project, baseOptions).at(-1)!.scaleDenominator;
    const pages = layout(things, { scaleDenominator: fit });
    const said = pages
      .filter(({ title }) => /^(Map sheet|Beside)/.test(title))
      .map(words)
      .join(' ')
      .split(/[\s,]+/);
    for (const thing of things)
      if (thing.kind === 'switch' || thing.kind === 'gateway') expect(said).toContain(thing.name);
  });
});
