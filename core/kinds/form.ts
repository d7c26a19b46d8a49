/** How a form holds a field, by its description. What it says of it stands in the catalogue of words: see `words.ts`. */
import { type AnyField, choicesOf, type Fields, type NumberShape, type Unit } from './describe.ts';

export interface FormField {
  /** Which sort of field holds it; `other`: it has a form of its own. */
  readonly as: 'text' | 'longText' | 'number' | 'length' | 'flag' | 'choice' | 'flagOrNone' | 'date' | 'other';
  /** It may not be left empty (text), or may be (anything else: null). */
  readonly required: boolean;
  readonly unit: Unit;
  readonly min: number;
  readonly max: number;
  /** The least value itself will not do. */
  readonly above: boolean;
  readonly whole: boolean;
  readonly decimals: number;
  readonly choices: readonly (string | number)[];
}

export function formFieldOf(field: AnyField): FormField {
  const bare = field.shape.as === 'orNone' ? field.shape.of.shape : field.shape;
  const { bounds, unit, whole, decimals } = bare.as === 'number' ? bare : noNumber;
  return {
    as: sortOf(field),
    required: field.shape.as === 'text' ? !field.shape.blank : field.shape.as !== 'orNone' && !field.optional,
    unit,
    min: bounds.min,
    max: bounds.max,
    above: bounds.above ?? false,
    whole,
    decimals,
    choices: choicesOf(field),
  };
}

/** The form of a kind: its fields in order, but for those that are set in a way of their own. */
export function formOf(fields: Fields): readonly (readonly [name: string, field: FormField])[] {
  const all = Object.entries(fields).map(([name, field]) => [name, formFieldOf(field)] as const);
  return all.filter(([, { as }]) => as !== 'other');
}

const noNumber: Pick<NumberShape, 'bounds' | 'unit' | 'whole' | 'decimals'> = {
  bounds: { min: 0, max: 0 },
  unit: '',
  whole: false,
  decimals: 0,
};

function sortOf({ shape, long }: AnyField): FormField['as'] {
  const bare = shape.as === 'orNone' ? shape.of.shape : shape;
  switch (bare.as) {
    case 'text':
      return long ? 'longText' : 'text';
    case 'number':
      return bare.unit === 'm' ? 'length' : 'number';
    case 'flag':
      return shape.as === 'orNone' ? 'flagOrNone' : 'flag';
    case 'choice':
      return 'choice';
    case 'date':
      return 'date';
    default:
      return 'other';
  }
}

/** Least and largest value of a figure, for a form that shows it in a unit `per` times as large. */
export function boundsOf(field: AnyField, per = 1): { readonly min: number; readonly max: number } {
  const { min, max, above } = formFieldOf(field);
  return { min: (above ? min + Number.EPSILON : min) / per, max: max / per };
}

/** The same of a length. */
export function lengthBoundsOf(field: AnyField): { readonly minM: number; readonly maxM: number } {
  const { min, max } = boundsOf(field);
  return { minM: min, maxM: max };
}
