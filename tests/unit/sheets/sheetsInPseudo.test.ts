import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { type PackOptions, packParts } from '../../../core/api/packOptions.ts';
import type { Item, Page } from '../../../core/drawing/displayList.ts';
import type { Dig } from '../../../core/locate/digCheck.ts';
import { type Project, projectOf, propertyOf } from '../../../core/model/project.ts';
import { crossingRegister } from '../../../core/record/crossingRegister.ts';
import { digPages } from '../../../core/sheets/find/digPages.ts';
import { stakeOutAt, stakeOutPages } from '../../../core/sheets/find/stakeOutPages.ts';
import { layoutSheets } from '../../../core/sheets/layoutSheets.ts';
import { layoutPack } from '../../../core/sheets/pack/layoutPack.ts';
import { numberPages } from '../../../core/sheets/pageDraft.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { setLanguage } from '../../../core/words/language.ts';
import { setLocale, usualLocale } from '../../../core/words/numbers/locale.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { qrModules } from '../../../electron/print/qrModules.ts';
import { englishIn } from '../../support/pseudo.ts';
import { drawingWithLeft, recordedDrawing } from '../../support/recordedDrawing.ts';
import { baseOptions } from './inventedProperty.ts';
import { plainMeasure as measure } from './plainMeasure.ts';

/** Unit signs and what stands for itself in every language. */
const signs = /\b(?:kV|V|mm|ha|ohm|km|geo|WGS|A4|A3|ac|ft|in|yd|mi)\b/g;

/** Every text of a page in its order, so that a text that was wrapped comes together; texts that are read aloud, too. */
function textsOf({ title, items }: Page): string[] {
  const texts = [title];
  const look = (item: Item) => {
    if (item.kind === 'text') texts.push(item.text);
    if (item.kind === 'tagged' && item.alternative !== undefined) texts.push(item.alternative);
    if (item.kind === 'tagged' || item.kind === 'clip') item.items.forEach(look);
  };
  items.forEach(look);
  return texts;
}

/** Fields that hold what people wrote. */
const written = new Set(
  'name note caption by recordedBy meter weather load soil alsoInTrench jointsNote start end place text'.split(' '),
);

function* namesOf(value: unknown, key = ''): Generator<string> {
  if (typeof value === 'string') {
    if (written.has(key) && value.length > 1) yield value;
  } else if (value instanceof Map) for (const part of value.values()) yield* namesOf(part);
  else if (Array.isArray(value)) for (const part of value) yield* namesOf(part, key);
  else if (typeof value === 'object' && value !== null)
    for (const [name, part] of Object.entries(value)) yield* namesOf(part, name);
}

/** Names of the property, and what is said of it by others than the sheets; whole words only. */
function expectNoEnglish(pages: readonly Page[], project: Project, said: readonly string[] = []): void {
  const names = [...new Set([...namesOf(project), ...said])].sort((a, b) => b.length - a.length);
  const known = new RegExp(
    `(?<![A-Za-z])(?:${names.map((name) => name.replaceAll(/[\\^$.*+?()[\]{}|]/g, '\\$&')).join('|')})(?![A-Za-z])`,
    'gi',
  );
  expect(pages.length).toBeGreaterThan(0);
  for (const page of pages) {
    const texts = textsOf(page);
    const left = englishIn(texts.join(' ').replaceAll('\u00a0', ' ').replaceAll(known, ' ').replaceAll(signs, ' '));
    expect(left === '' ? '' : `${page.title}: ${left} (${JSON.stringify(texts)})`).toBe('');
  }
}

const properties = [
  ['the invented property', projectOf(demoThings())],
  ['a drawing with every record', recordedDrawing()],
  ['a drawing with things left in the ground', drawingWithLeft()],
] as const;

const pack: PackOptions = {
  // What materials are called is not in the catalogue yet.
  parts: packParts.filter((part) => part !== 'materials'),
  paper: 'A4',
  orientation: 'landscape',
  scaleDenominator: null,
  handoverNumber: null,
  preparedBy: '',
  preparedFor: '',
  note: '',
  date: '2031-05-02',
};

beforeAll(() => {
  setLanguage(pseudo());
  // Days in figures.
  setLocale('de-DE');
});
afterAll(() => {
  setLanguage(english);
  setLocale(usualLocale);
});

describe.each(properties)('on paper, %s holds no English that is not of the catalogue', (_, project) => {
  const survey = surveyOf(project);
  const property = propertyOf(project);
  const pagesInput = () => ({ property, date: '2031-05-02', measure, f: figures(property.units) });
  const f = () => figures(property.units);

  it('on its map sheets, tables and test sheets', () => {
    const options = {
      ...baseOptions,
      scaleDenominator: 5000,
      withSwitchRegister: true,
      withCrossingSchedule: true,
      withTestSheets: true,
    };
    const sheets = testSheets(project, survey);
    expectNoEnglish(layoutSheets({ project, survey, testSheets: sheets, options, f: f(), measure }), project);
  });

  it('in the whole pack', () => {
    const pages = layoutPack({
      ...pagesInput(),
      project,
      survey,
      options: pack,
      testSheets: testSheets(project, survey),
      crossings: crossingRegister(project, survey),
      takeOff: null,
      makeQr: qrModules,
      photoBytes: () => null,
    });
    expectNoEnglish(pages, project);
  });

  it('on the sheets to find something by', () => {
    const crossings = [...survey.crossings].filter(([, { crossing }]) => crossing.method === 'buried');
    const stakes = crossings.flatMap(([id]) =>
      stakeOutPages(stakeOutAt(project, survey, id, f()), survey, pagesInput()),
    );
    const [, shape] = [...survey.gateways][0]!;
    const dig: Dig = { shape: 'point', path: [survey.plane.toLonLat(shape.centre)], errorM: 1, withinM: 200 };
    const drafts = [...stakes, ...digPages(project, survey, dig, pagesInput())];
    expectNoEnglish(numberPages(drafts, f()), project);
  });
});
