import type { AnyField, Fields, Shape } from '../../kinds/describe.ts';
import type { Cell } from '../csv/writeCsv.ts';
import { type Column, type ColumnOf, rounded, yesNo } from './table.ts';

/** What a thing that a field names is called; null: it is not there. */
export type NameOf = (kind: string, id: string) => string | null;

/** The columns of the fields whose descriptions name one, in their order. Other columns may follow a field's. */
export function columnsOf<T extends object>(
  fields: Fields,
  nameOf: NameOf = () => null,
  after: Readonly<Record<string, readonly ColumnOf<T>[] | undefined>> = {},
): ColumnOf<T>[] {
  return Object.entries(fields).flatMap(([name, field]) => {
    const own: ColumnOf<T>[] = field.column === undefined ? [] : [columnOf(name, field, nameOf)];
    return [...own, ...(after[name] ?? [])];
  });
}

function columnOf<T extends object>(name: string, field: AnyField, nameOf: NameOf): ColumnOf<T> {
  const { shape, column } = field;
  const cell = cellOf(shape, nameOf);
  return [
    typeof column === 'string' ? column : withUnderscores(name),
    typeOf(shape),
    (item) => {
      const value = (item as Readonly<Record<string, unknown>>)[name];
      return value === null || value === undefined ? null : cell(value);
    },
  ];
}

function typeOf(shape: Shape): Column['type'] {
  if (shape.as === 'orNone') return typeOf(shape.of.shape);
  if (shape.as === 'number') return shape.whole ? 'whole' : 'number';
  return shape.as === 'choice' && typeof shape.choices[0] === 'number' ? 'whole' : 'text';
}

function cellOf(shape: Shape, nameOf: NameOf): (value: unknown) => Cell {
  switch (shape.as) {
    case 'orNone':
      return cellOf(shape.of.shape, nameOf);
    case 'number':
      return (value) => rounded(value as number);
    case 'flag':
      return (value) => yesNo(value as boolean);
    case 'reference':
      return (value) => nameOf(shape.to, value as string);
    default:
      return (value) => value as string | number;
  }
}

/** "pipeBoreMm" is "pipe_bore_mm". */
function withUnderscores(name: string): string {
  return name.replace(/([a-z0-9])([A-Z])/g, '$1_$2').toLowerCase();
}
