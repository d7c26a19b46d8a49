import { afterEach, describe, expect, it } from 'vitest';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { setLanguage } from '../../../core/words/language.ts';
import { type Catalogue, type Language, message, say } from '../../../core/words/message.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { inEnglish } from '../../support/english.ts';
import { englishIn, inPseudo, proseIn, survivesJson } from '../../support/pseudo.ts';

const g1 = { kind: 'gateway', name: 'G1' } as const;
const g2 = { kind: 'gateway', name: 'G2' } as const;
const overlap = message('checks.gatewaysOverlap.message', { thing: g1, other: g2, overlapM: 1.5 });

afterEach(() => setLanguage(english));

describe('a message', () => {
  it('is plain data that JSON and another thread give back whole', () => {
    expect(JSON.parse(JSON.stringify(overlap))).toEqual(overlap);
    expect(structuredClone(overlap)).toEqual(overlap);
    expect(survivesJson(overlap)).toBe(true);
  });

  it('is said in the units of the property', () => {
    expect(inEnglish(overlap)).toBe('Gateway G1 and gateway G2 overlap by 1.50 m.');
    expect(inEnglish(overlap, 'imperial')).toBe('Gateway G1 and gateway G2 overlap by 4 ft 11 in.');
  });

  it('is said in the active language', () => {
    setLanguage(pseudo());
    expect(say(overlap, figures('metric'))).toBe(inPseudo(overlap));
    expect(inPseudo(overlap)).toMatch(/^⟦.*⟧$/);
  });

  it('of a code that the catalogue lacks is shown by its code', () => {
    expect(figures('metric').say({ code: 'checks.notThere.message', values: {} })).toBe('checks.notThere.message');
  });

  it('has its values checked by the compiler', () => {
    // @ts-expect-error: the length is missing.
    message('checks.gatewaysOverlap.message', { thing: g1, other: g2 });
    // @ts-expect-error: there is no such text.
    message('checks.gatewaysOverlap.massage', { thing: g1, other: g2, overlapM: 1 });
    // @ts-expect-error: a language without all texts is none.
    const missing: Catalogue = { things: english.words.things };
    expect(missing).toBeDefined();
  });
});

describe('figures', () => {
  it('make lists and plurals by the rules of the language', () => {
    const f = figures('metric');
    expect([f.list([]), f.list(['A']), f.list(['A', 'B']), f.list(['A', 'B', 'C'])]).toEqual([
      '',
      'A',
      'A and B',
      'A, B and C',
    ]);
    expect(f.list(['A', 'B', 'C', 'D', 'E'], 4)).toBe('A, B, C and 2 more');
    const welsh: Language = { tag: 'cy', locale: 'cy', words: english.words };
    const forms = { zero: 'none', one: 'one', two: 'two', few: 'few', many: 'many', other: 'other' };
    expect([0, 1, 2, 3, 6, 8].map((count) => figures('metric', welsh).plural(count, forms))).toEqual(
      Object.values(forms),
    );
    expect([0, 1, 2].map((count) => f.plural(count, { one: 'wire', other: 'wires' }))).toEqual([
      'wires',
      'wire',
      'wires',
    ]);
  });

  it('write numbers as they were entered, and days', () => {
    const f = figures('metric');
    expect([0.1, 2, 1e-7, 1250.25, Number.NaN].map((value) => f.number(value))).toEqual([
      '0.1',
      '2',
      '0.0000001',
      '1,250.25',
      'not known',
    ]);
    expect(f.date('2026-03-09')).toBe('9 March 2026');
  });
});

describe('the pseudo-language', () => {
  it('tells what does not come from the catalogue', () => {
    expect(englishIn(`${inPseudo(overlap)} Home paddock`)).toBe('Home paddock');
    expect(englishIn(`${inPseudo(overlap)} Home paddock`, ['Home paddock'])).toBe('');
    const prose = message('checks.emptyProject.message', { name: 'the west end' });
    expect(proseIn(prose, new Set())).toEqual(['the west end']);
    expect(proseIn(prose, new Set(['the west end']))).toEqual([]);
  });
});
