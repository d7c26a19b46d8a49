import { fieldsOf, kinds } from '../../../kinds/allKinds.ts';
import {
  type AnyField,
  type AnyKind,
  type Bounds,
  type Fields,
  fillingLists,
  type NumberShape,
  type Shape,
  type TextShape,
} from '../../../kinds/describe.ts';
import { most } from '../../../kinds/fields.ts';
import { fieldCalled } from '../../../kinds/words.ts';
import { type Message, message } from '../../../words/message.ts';
import type { Kind, ThingOf } from '../../things.ts';

/** What is wrong with a value, as the end of "It must be ...", or null where it will do. */
export type Rule = (value: unknown) => Message | null;

export type FieldsOf<K extends Kind> = Exclude<keyof ThingOf<K>, 'kind' | 'id'>;
type RulesByName = Readonly<Record<string, Rule>>;
type Rules = { readonly [K in Kind]: { readonly [F in FieldsOf<K>]-?: Rule } };

/** Which values a field may be given, by its description. `at`: where its words stand, for what it says of fields within it. */
export function ruleOf({ shape, optional }: Pick<AnyField, 'shape' | 'optional'>, at = ''): Rule {
  const rule = ruleOfShape(shape, at);
  return optional ? (value) => (value === undefined ? null : rule(value)) : rule;
}

/** The rules of some fields, by their names. `at`: where the words of all of them stand. */
export function rulesOf(fields: Fields, at: string): RulesByName {
  return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, ruleOf(field, `${at}.${name}`)]));
}

/** Which values each field of each kind may have: derived from the descriptions in `core/kinds`. */
export const fieldRules = Object.fromEntries(
  kinds.map((kind) => [kind, rulesOf(fieldsOf(kind), kind)]),
) as unknown as Rules;

function ruleOfShape(shape: Shape, at: string): Rule {
  switch (shape.as) {
    case 'text':
      return textRule(shape);
    case 'number':
      return numberRule(shape);
    case 'flag':
      return rule((value) => typeof value === 'boolean', message('kinds.mustBe.yesOrNo'));
    case 'choice': {
      const codes = shape.choices;
      return rule((value) => codes.includes(value as string), message('kinds.mustBe.oneOf', { codes }));
    }
    case 'date':
      return rule(isDate, message('kinds.mustBe.date'));
    case 'place':
      return rule(isPlace, message('kinds.mustBe.place'));
    case 'path':
      return pathRule(shape.least, shape.most);
    case 'reference':
      return nameRule(most.id);
    case 'kindName':
      return rule((value) => kinds.includes(value as Kind), message('kinds.mustBe.kindName'));
    case 'list':
      return listRule(ruleOf(shape.of), shape.most, shape.mustBe);
    case 'tuple': {
      const each = shape.of.map((one) => ruleOf(one));
      return rule(
        (value) => Array.isArray(value) && value.length === each.length && each.every((one, i) => !one(value[i])),
        shape.mustBe,
      );
    }
    case 'record':
      return recordRule(shape.fields, shape.mustBe ?? message('kinds.mustBe.group'), `${at}.fields`);
    case 'tagged': {
      const cases = new Map(
        Object.entries(shape.cases).map(([tag, fields]) => [
          tag,
          { rules: rulesOf(fields, at), lists: fillingLists(fields) },
        ]),
      );
      return (value) => {
        const found = isObject(value) ? cases.get(value[shape.tag] as string) : undefined;
        if (!found) return shape.mustBe;
        const wrong = whyNotGroup(value as Values, found.rules, at);
        return wrong === null && isFilled(value as Values, found.lists) ? null : shape.mustBe;
      };
    }
    case 'orNone':
      return orNoneRule(ruleOf(shape.of, at));
    case 'either': {
      const each = shape.of.map((one) => ruleOf(one));
      return rule((value) => each.some((one) => one(value) === null), shape.mustBe);
    }
    case 'thing': {
      const rules = new Map(shape.of.map((kind) => [kind.kind, thingRule(kind, shape.needs)]));
      return rule((value) => isObject(value) && rules.get(value.kind as string)?.(value) === null, shape.mustBe);
    }
  }
}

function rule(holds: (value: unknown) => boolean, mustBe: Message): Rule {
  return (value) => (holds(value) ? null : mustBe);
}

function textRule({ most, blank, pattern }: TextShape): Rule {
  if (pattern) return rule((value) => isText(value, most) && pattern.of.test(value), pattern.mustBe);
  return blank ? rule((value) => isText(value, most), message('kinds.mustBe.text', { most })) : nameRule(most);
}

function nameRule(longest: number): Rule {
  const mustBe = message('kinds.mustBe.name', { most: longest });
  return rule((value) => isText(value, longest) && value.trim() !== '', mustBe);
}

function isText(value: unknown, longest: number): value is string {
  return typeof value === 'string' && value.length <= longest;
}

function numberRule({ unit, whole, bounds }: NumberShape): Rule {
  const { min, max, above = false } = bounds;
  return rule(
    (value) => typeof value === 'number' && (!whole || Number.isInteger(value)) && isWithin(value, bounds),
    message('kinds.mustBe.figure', { min, max, above, whole, unit }),
  );
}

function isWithin(value: number, { min, max, above = false }: Bounds): boolean {
  return value <= max && (above ? value > min : value >= min);
}

const dateForm =
  /^(\d{4}-\d\d-\d\d)(?:T([01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d+)?)?(?:Z|[+-]([01]\d|2[0-3]):?[0-5]\d)?)?$/;

/** An ISO 8601 date of the calendar, with or without a time of day. */
function isDate(value: unknown): boolean {
  if (!isText(value, 40)) return false;
  const day = dateForm.exec(value)?.[1];
  if (day === undefined) return false;
  const time = Date.parse(`${day}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(day);
}

function isPlace(value: unknown): boolean {
  if (!Array.isArray(value) || value.length !== 2) return false;
  return isNoMoreThan(value[0], 180) && isNoMoreThan(value[1], 90);
}

function isNoMoreThan(value: unknown, most: number): boolean {
  return typeof value === 'number' && Math.abs(value) <= most;
}

function pathRule(least: number, mostOf: number): Rule {
  return (value) => {
    if (Array.isArray(value) && value.length > mostOf) return message('kinds.mustBe.placesAtMost', { most: mostOf });
    const will = Array.isArray(value) && value.length >= least && value.every(isPlace);
    return will ? null : message('kinds.mustBe.path', { least });
  };
}

function listRule(each: Rule, mostOf: number, mustBe: Message): Rule {
  return (value) => {
    if (!Array.isArray(value)) return mustBe;
    if (value.length > mostOf) return message('kinds.mustBe.listAtMost', { most: mostOf });
    return value.every((one) => each(one) === null) ? null : mustBe;
  };
}

function orNoneRule(other: Rule): Rule {
  return (value) => {
    const wrong = value === null ? null : other(value);
    return wrong && message('kinds.mustBe.orNothing', { mustBe: wrong });
  };
}

type Values = Readonly<Record<string, unknown>>;

function isObject(value: unknown): value is Values {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function recordRule(fields: Fields, mustBe: Message, at: string): Rule {
  const rules = rulesOf(fields, at);
  return (value) => (isObject(value) ? whyNotGroup(value, rules, at) : mustBe);
}

function thingRule(kind: AnyKind, needs: readonly string[]): Rule {
  const rules = rulesOf(kind.fields as Fields, kind.kind);
  return (value) => {
    const it = value as Values;
    if (!isText(it.id, most.id) || it.id === '' || needs.some((field) => it[field] === undefined))
      return message('kinds.mustBe.wholeThing');
    return whyNotGroup(it, rules, kind.kind);
  };
}

function isFilled(value: Values, lists: ReturnType<typeof fillingLists>): boolean {
  return lists.every(
    ({ name, counts: [a, b] }) => (value[name] as readonly unknown[]).length === Number(value[a]) * Number(value[b]),
  );
}

/** The first of its values that will not do. What a newer version wrote beside them stays. */
function whyNotGroup(value: Values, rules: RulesByName, at: string): Message | null {
  for (const [field, check] of Object.entries(rules)) {
    const mustBe = check(value[field]);
    if (mustBe) return message('kinds.mustBe.within', { mustBe, field: fieldCalled(at, field) });
  }
  return null;
}
