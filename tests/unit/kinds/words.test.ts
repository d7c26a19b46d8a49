import { describe, expect, it, onTestFinished, test } from 'vitest';
import { fieldsOf, kinds } from '../../../core/kinds/allKinds.ts';
import { choicesOf } from '../../../core/kinds/describe.ts';
import { fieldCalled, wordsOf } from '../../../core/kinds/words.ts';
import { fieldRules, type Rule } from '../../../core/model/edits/support/fieldRules.ts';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { setLanguage } from '../../../core/words/language.ts';
import { type FieldRule, readField } from '../../../core/words/numbers/field.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { inEnglish } from '../../support/english.ts';
import { englishIn, expectFromCatalogue } from '../../support/pseudo.ts';

const strange = figures('metric', pseudo());
const fields = kinds.flatMap((kind) => Object.entries(fieldsOf(kind)).map(([name, field]) => ({ kind, name, field })));

describe('the words of a field', () => {
  it('come from the catalogue, and say each of its choices', () => {
    for (const { kind, name, field } of fields) {
      const words = wordsOf(kind, name, strange.words);
      const { called, label, hint, placeholder, yes, choices = {} } = words;
      const hinted = typeof hint === 'function' ? hint(null) : hint;
      for (const text of [called, label, hinted, placeholder, yes, ...Object.values(choices)]) {
        if (text !== undefined) expect(englishIn(text), `${kind}.${name}`).toBe('');
      }
      if (kind === 'builtMark' && name === 'thingKind') continue;
      expect(Object.keys(choices), `${kind}.${name}`).toEqual(expect.arrayContaining(choicesOf(field).map(String)));
    }
  });

  it('stand in a sentence by the field, and by the group that it lies in', () => {
    expect(inEnglish(fieldCalled('gateway', 'widthM'))).toBe('width');
    expect(inEnglish(fieldCalled('property.divide.fields.costs.fields', 'takeOff'))).toBe('branch');
  });

  it('are lengths in the units of the screen', () => {
    const { hint } = figures('imperial').words.kinds.gateway.widthM;
    expect(hint(null)).toMatch(/^Ordinary gates are 11 ft 10 in to 16 ft 1 in,/);
  });
});

describe('what a field must be', () => {
  const odd = [null, undefined, 'none of them', 1e12, -1e12, 0.5, true, [], {}, [1, 2, 3], [[0, 100]], { id: 1 }];

  it('comes from the catalogue for every field and every odd value', () => {
    let said = 0;
    for (const { kind, name } of fields) {
      const rule = (fieldRules[kind] as Readonly<Record<string, Rule>>)[name]!;
      for (const value of odd) {
        const mustBe = rule(value);
        if (mustBe === null) continue;
        expectFromCatalogue(mustBe, new Set());
        expect(inEnglish(mustBe), `${kind}.${name}`).not.toMatch(/kinds\.|undefined/);
        said++;
      }
    }
    expect(said).toBeGreaterThan(1000);
  });

  it('names the field within a group', () => {
    const divide = { maxSectionM: 0, maxGateways: null, costs: { gateway: 1, takeOff: 1, alongRun: 1 } };
    expect(inEnglish(fieldRules.property.divide(divide))).toBe('a number from 50 to 1000000 m (max section)');
    const costs = { gateway: 1, takeOff: 0, alongRun: 1 };
    expect(inEnglish(fieldRules.property.divide({ maxSectionM: 500, maxGateways: null, costs }))).toBe(
      'a number from 0.1 to 100 (branch) (costs)',
    );
  });
});

test('what is wrong with a typed figure comes from the catalogue', () => {
  setLanguage(pseudo());
  onTestFinished(() => setLanguage(english));
  const rule: FieldRule = { label: '⟦Depth⟧', unit: 'm', decimals: 2, min: 0, max: 3, optional: false };
  for (const text of ['', 'deep', '5', '1,234']) {
    const read = readField(text, { ...rule, max: text === '1,234' ? 2000 : 3 });
    expect('problem' in read && englishIn(read.problem), text).toBe('problem' in read ? '' : false);
    if (text !== '1,234') expect(read).toHaveProperty('problem');
  }
});
