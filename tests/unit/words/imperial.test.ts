import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packParts } from '../../../core/api/packOptions.ts';
import { allFindings } from '../../../core/checks/allFindings.ts';
import { leafItems } from '../../../core/drawing/displayList.ts';
import { phonePage } from '../../../core/exchange/phone/phonePage.ts';
import { projectOf, propertyOf, put } from '../../../core/model/project.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { findBook } from '../../../electron/print/findBook.ts';
import { orderBook } from '../../../electron/print/orderBook.ts';
import { packBook } from '../../../electron/print/packBook.ts';
import type { Book, Printed } from '../../../electron/print/printJob.ts';
import { sheetsBook } from '../../../electron/print/sheetsBook.ts';
import { fullProperty } from '../../support/fullProperty.ts';
import { plainMeasure } from '../sheets/plainMeasure.ts';

const metric = projectOf(fullProperty().filter(({ kind }) => kind !== 'handover'));
const project = put(metric, { ...propertyOf(metric), units: 'imperial' });
const survey = surveyOf(project);
const printed: Printed = { project, property: propertyOf(project), survey, photos: new Map() };
const date = '2031-05-02';
const paper = { paper: 'A3', orientation: 'landscape', date } as const;

const figureInMetres = /\d[\u00a0 ]?(?:m|km|ha|cm|m²)(?![\w²/])|\bmetres\b/;

/** What may stand in metres in an imperial property, each for its reason. */
const allowed: readonly RegExp[] = [
  // Names of articles in a price list: what a shop calls them, and the user may have written.
  /roll of \d+ m\b/,
  /coil of \d+ m\b/,
  /Gate leaf for an opening of [\d.]+ m\b/,
  /stake, coated steel, [\d.]+ m\b/,
  /post, [\d.]+ m\b/,
];

/** The user's own texts say what they say. */
const ownTexts = stringsIn(fullProperty()).filter((own) => figureInMetres.test(own));

function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}

function leaks(texts: Iterable<string>): string[] {
  return [...texts].filter((text) => {
    const ours = ownTexts.reduce((rest, own) => rest.replaceAll(own, ''), text);
    // A line of a paragraph may hold but a part of one.
    const part = text.replace(/\.$/, '');
    return (
      figureInMetres.test(ours) &&
      ![...ownTexts].some((own) => own.includes(part)) &&
      !allowed.some((each) => each.test(ours))
    );
  });
}

function textsOf({ pages }: Book): string[] {
  return pages.flatMap(({ items }) =>
    [...leafItems(items)].flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
  );
}

describe('an imperial property', () => {
  const crossing = [...project.crossing.values()].find(({ method }) => method === 'buried')!;
  it.each<[string, () => Book]>([
    [
      'map sheets',
      () =>
        sheetsBook(printed, {
          ...paper,
          scaleDenominator: 5000,
          centre: null,
          gridM: null,
          withSwitchRegister: true,
          withCrossingSchedule: true,
          withTestSheets: true,
        }),
    ],
    [
      'the pack',
      () =>
        packBook(printed, {
          ...paper,
          parts: packParts,
          scaleDenominator: null,
          handoverNumber: null,
          preparedBy: '',
          preparedFor: '',
          note: '',
        }),
    ],
    ['the order', () => orderBook(printed, { withCutLists: true, withQuantities: true, date })],
    ['the sheet of a crossing', () => findBook(printed, { sheet: 'crossing', gatewayId: crossing.gatewayId, date })],
    [
      'the sheet of a dig',
      () => {
        const dig = { shape: 'point', path: [propertyOf(project).origin], errorM: 5, withinM: 900 } as const;
        return findBook(printed, { sheet: 'dig', dig, date });
      },
    ],
  ])('has no metres on %s', (_, book) => {
    expect(leaks(textsOf(book()))).toEqual([]);
  });

  it('has none on the page for the phone', () => {
    const page = phonePage({ project, survey, date, measure: plainMeasure, photos: [] });
    const texts = page
      .replace(/<(style|script)[^>]*>.*?<\/\1>/gs, '')
      .split(/<[^>]*>/)
      .filter((text) => text.trim() !== '');
    expect(leaks(texts)).toEqual([]);
  });

  it('has none in what the checks say', () => {
    const f = figures('imperial');
    const texts = allFindings(project, survey).flatMap(({ message, remedy, fixes }) => [
      f.say(message),
      f.say(remedy),
      ...fixes.map(({ label }) => f.say(label)),
    ]);
    expect(leaks(texts)).toEqual([]);
  });
});

/** Where a source says metres, and why it may. */
const sources: Readonly<Record<string, string>> = {
  'renderer/panels/Welcome.tsx': 'the example, before any property is open',
};

describe('what the window says', () => {
  it('has no lengths in metres written into its sentences', () => {
    const top = join(import.meta.dirname, '..', '..', '..');
    const files = readdirSync(join(top, 'renderer'), { recursive: true, encoding: 'utf8' })
      .map((path) => `renderer/${path.replaceAll('\\', '/')}`)
      .filter((path) => /\.tsx?$/.test(path) && !path.startsWith('renderer/work/elevation/'));
    const said = files.flatMap((path) =>
      readFileSync(join(top, path), 'utf8')
        .split('\n')
        .filter((line) => !/^\s*(\/\/|\/?\*)/.test(line) && /[\d}] (?:m|km|ha)\b(?! ?[=:])/.test(line))
        .map((line) => `${path}: ${line.trim()}`),
    );
    expect(said.filter((line) => !Object.keys(sources).some((path) => line.startsWith(`${path}:`)))).toEqual([]);
  });

  it('has the feet, miles and acres in one place', () => {
    const top = join(import.meta.dirname, '..', '..', '..');
    const files = ['core', 'renderer', 'electron'].flatMap((room) =>
      readdirSync(join(top, room), { recursive: true, encoding: 'utf8' }).map(
        (path) => `${room}/${path.replaceAll('\\', '/')}`,
      ),
    );
    const found = files.filter(
      (path) => /\.tsx?$/.test(path) && /0\.3048|1609\.3|1\.609|4046\.8/.test(readFileSync(join(top, path), 'utf8')),
    );
    expect(found).toEqual(['core/words/numbers/units.ts']);
  });
});
