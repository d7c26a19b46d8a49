import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { schemaOf, schemaOfKind, thingSchemas } from '../../../core/api/thingSchemas.ts';
import { columnsOf } from '../../../core/exchange/tables/plainColumns.ts';
import { allKinds, describedAs, fieldsOf, kinds, kindsIn } from '../../../core/kinds/allKinds.ts';
import { type AnyField, type AnyKind, type Fields, kind, newThing, type Shape } from '../../../core/kinds/describe.ts';
import { choice, flag, lengthM, name, optional, orNone, reference, text, whole } from '../../../core/kinds/fields.ts';
import { formFieldOf, formOf } from '../../../core/kinds/form.ts';
import { fieldRules, ruleOf, rulesOf } from '../../../core/model/edits/support/fieldRules.ts';
import { kinds as kindWords } from '../../../core/words/en/things.ts';
import { inEnglish } from '../../support/english.ts';

/** A kind that is nowhere else: a rail that slides out of its posts. */
const slipRail = kind('slipRail', {
  prefix: 'R',
  lists: ['drawing', 'exchange'],
  fields: {
    name: name({ column: true }),
    lineId: reference('fenceLine'),
    lengthM: lengthM({ min: 1, max: 8, column: true, default: 3 }),
    rails: whole({ min: 1, max: 6, column: true, default: 2 }),
    wood: choice(['pine', 'oak'], { column: true }),
    live: flag({ column: true, default: false }),
    sagMm: orNone(whole({ max: 500 }), { column: 'sag_mm', default: null }),
    colour: optional(text({ column: 'colour' })),
  },
});

describe('a kind that is described and nothing else', () => {
  const rail = newThing(slipRail, { id: 'r', name: 'R1', lineId: 'F', wood: 'oak' });

  it('has its defaults, in the order of its description', () => {
    expect(Object.keys(rail)).toEqual(['kind', 'id', 'name', 'lineId', 'lengthM', 'rails', 'wood', 'live', 'sagMm']);
    expect(rail).toMatchObject({ kind: 'slipRail', lengthM: 3, rails: 2, live: false, sagMm: null });
  });

  it('has a schema', () => {
    const schema = schemaOfKind(slipRail);
    expect(schema.safeParse(rail).success).toBe(true);
    expect(schema.safeParse({ ...rail, colour: 'grey' }).success).toBe(true);
    for (const wrong of [{ wood: 'steel' }, { rails: 1.5 }, { lengthM: -1 }, { live: null }, { colour: 3 }]) {
      expect(schema.safeParse({ ...rail, ...wrong }).success).toBe(false);
    }
  });

  it('has rules that say what a value must be', () => {
    const rules = rulesOf(slipRail.fields, 'slipRail');
    expect(inEnglish(rules.lengthM!(9))).toBe('a number from 1 to 8 m');
    expect(inEnglish(rules.wood!('steel'))).toBe('pine or oak');
    expect(inEnglish(rules.sagMm!(501))).toBe('a whole number from 0 to 500, or nothing');
    expect(rules.colour!(undefined)).toBeNull();
  });

  it('has a form', () => {
    const form = new Map(formOf(slipRail.fields));
    expect([...form.keys()]).toEqual(['name', 'lengthM', 'rails', 'wood', 'live', 'sagMm', 'colour']);
    expect(form.get('lengthM')).toMatchObject({
      as: 'length',
      unit: 'm',
      min: 1,
      max: 8,
      required: true,
    });
    expect(form.get('sagMm')).toMatchObject({ max: 500, required: false });
    expect(form.get('wood')!.choices).toEqual(['pine', 'oak']);
  });

  it('has columns', () => {
    expect(columnsOf(slipRail.fields).map(([column, type]) => `${column} ${type}`)).toEqual([
      'name text',
      'length_m number',
      'rails whole',
      'wood text',
      'live text',
      'sag_mm whole',
      'colour text',
    ]);
  });

  it('stands in its lists', () => {
    const standing = [...allKinds, slipRail as AnyKind].filter(({ lists }) => (lists as string[]).includes('exchange'));
    expect(standing.map((each) => each.kind)).toEqual([...kindsIn('exchange'), 'slipRail']);
  });
});

describe('every kind', () => {
  it('is called something, has a schema and rules for each of its fields', () => {
    for (const each of kinds) {
      expect(kindWords[each]).not.toBe(undefined);
      expect(Object.keys(fieldRules[each])).toEqual(Object.keys(fieldsOf(each)));
      expect(thingSchemas[each]).toBeDefined();
    }
    expect(new Set(kinds).size).toBe(kinds.length);
  });

  it('stands on kinds that are described before it', () => {
    for (const [i, each] of kinds.entries()) {
      for (const [field, to] of referencesOf(fieldsOf(each))) {
        expect(kinds, `${each}.${field}`).toContain(to.kind);
        if (to.mustBeThere) expect(kinds.slice(0, i), `${each}.${field}`).toContain(to.kind);
      }
    }
  });

  it('bounds a field by another thing only where that thing has such a figure', () => {
    for (const each of kinds) {
      for (const { atMost } of Object.values(fieldsOf(each))) {
        if (!atMost) continue;
        const through = fieldsOf(each)[atMost.through]!.shape;
        const other = through.as === 'reference' ? fieldsOf(through.to as (typeof kinds)[number]) : {};
        expect(other[atMost.field]!.shape.as).toBe('number');
      }
    }
  });

  it('has a fixed id where there is one thing of it at most', () => {
    expect(kinds.filter((each) => describedAs(each).onlyId !== undefined)).toEqual([
      'property',
      'orderSettings',
      'coordinateSettings',
    ]);
  });
});

describe('rule, schema and form of every field', () => {
  const fields = kinds.flatMap((each) => figuresOf(each, fieldsOf(each)));

  it('agree on what is allowed: what the form takes the rule takes, and what the rule takes a file can hold', () => {
    const near = (limit: number) =>
      fc.oneof(
        fc.constantFrom(limit, limit - 1e-6, limit + 1e-6, limit - 1, limit + 1, limit * 2),
        fc.double({ noNaN: true, min: Math.min(limit, 0) - 10, max: limit + 10 }),
      );
    for (const [path, field] of fields) {
      const [rule, schema, form] = [ruleOf(field), schemaOf(field), formFieldOf(field)];
      if (form.as === 'number' || form.as === 'length') {
        const odd = fc.constantFrom<unknown>(null, undefined, Number.NaN, Infinity, -Infinity, '5', 1e300, -0.5, 0.5);
        fc.assert(
          fc.property(fc.oneof(near(form.min), near(form.max), odd), (value) => {
            const typed = typeof value === 'number' && !Number.isNaN(value);
            const inForm =
              (value === null && !form.required && field.shape.as === 'orNone') ||
              (value === undefined && field.optional === true) ||
              (typed &&
                value <= form.max &&
                (form.above ? value > form.min : value >= form.min) &&
                (!form.whole || Number.isInteger(value)));
            expect(rule(value) === null, `${path} ${String(value)}`).toBe(inForm);
            if (rule(value) === null && value !== undefined) {
              expect(schema.safeParse(value).success, `${path} ${JSON.stringify(value)}`).toBe(true);
            }
          }),
          { numRuns: 60 },
        );
      }
      if (form.as === 'choice') {
        for (const value of form.choices) {
          expect(rule(value), path).toBeNull();
          expect(schema.safeParse(value).success, path).toBe(true);
        }
        expect(rule('none of them'), path).not.toBeNull();
        expect(schema.safeParse('none of them').success, path).toBe(false);
      }
    }
  });

  it('agree on texts, dates, places, lists and groups too', () => {
    const anything = fc.oneof(
      fc.string(),
      fc.constantFrom(
        '',
        ' ',
        'x'.repeat(200),
        'x'.repeat(201),
        'x'.repeat(20_000),
        'x'.repeat(20_001),
        '2025-03-14',
        '2025-02-30',
        '2025-03-14T10:00',
        '2025-03-14T25:00',
        '2025-03-14 10:00',
        '2025-03-14T10:00:00Z',
        'EUR',
      ),
      fc.tuple(fc.double({ min: -200, max: 200, noNaN: true }), fc.double({ min: -100, max: 100, noNaN: true })),
      fc.array(
        fc.tuple(fc.double({ min: -180, max: 180, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true })),
        {
          maxLength: 4,
        },
      ),
      fc.jsonValue(),
    );
    const all = kinds.flatMap((each) => Object.entries(fieldsOf(each)).map(([n, f]) => [`${each}.${n}`, f] as const));
    for (const [path, field] of all) {
      const [rule, schema] = [ruleOf(field), schemaOf(field)];
      fc.assert(
        fc.property(anything, (value) => {
          if (rule(value) === null)
            expect(schema.safeParse(value).success, `${path} ${JSON.stringify(value)}`).toBe(true);
        }),
        { numRuns: 40 },
      );
    }
  });
});

function referencesOf(fields: Fields): [string, { kind: string; mustBeThere: boolean }][] {
  const inShape = (path: string, shape: Shape): [string, { kind: string; mustBeThere: boolean }][] => {
    switch (shape.as) {
      case 'reference':
        return [[path, { kind: shape.to, mustBeThere: shape.mustBeThere }]];
      case 'orNone':
      case 'list':
        return inShape(path, shape.of.shape);
      case 'record':
        return referencesOf(shape.fields);
      case 'tagged':
        return Object.values(shape.cases).flatMap(referencesOf);
      default:
        return [];
    }
  };
  return Object.entries(fields).flatMap(([path, { shape }]) => inShape(path, shape));
}

/** Every figure and choice of a kind, those in groups and lists too. */
function figuresOf(path: string, fields: Fields): (readonly [string, AnyField])[] {
  return Object.entries(fields).flatMap(([field, each]) => {
    const { shape } = each;
    const at = `${path}.${field}`;
    if (shape.as === 'record') return figuresOf(at, shape.fields);
    if (shape.as === 'tagged') return Object.entries(shape.cases).flatMap(([tag, of]) => figuresOf(`${at}.${tag}`, of));
    if (shape.as === 'list') return figuresOf(at, { each: shape.of });
    if (shape.as === 'orNone' && shape.of.shape.as === 'record') return figuresOf(at, shape.of.shape.fields);
    return [[at, each] as const];
  });
}
