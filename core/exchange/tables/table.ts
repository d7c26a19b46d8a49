import type { Geometry } from 'geojson';
import type { Cell } from '../csv/writeCsv.ts';

/** A register as a plain table, for formats that hold tables. */
export interface Table {
  /** Letters, digits and underscores; the same in every language: "fence_lines". */
  readonly name: string;
  /** For people: "Fence lines". */
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

export interface Column {
  /** With its unit: "length_m". */
  readonly name: string;
  readonly type: 'text' | 'number' | 'whole';
}

export interface Row {
  readonly id: string;
  /** One to a column. */
  readonly cells: readonly Cell[];
  readonly geometry: Geometry | null;
}

/** A column's name, type and what it says of an item. */
export type ColumnOf<T> = readonly [name: string, type: Column['type'], of: (item: T) => Cell];

/** A table with a row for each item; its first column is the id. */
export function tableOf<T extends { readonly id: string }>(
  name: string,
  title: string,
  items: Iterable<T>,
  geometry: (item: T) => Geometry | null,
  columns: readonly ColumnOf<T>[],
): Table {
  const all: readonly ColumnOf<T>[] = [['id', 'text', ({ id }) => id], ...columns];
  return {
    name,
    title,
    columns: all.map(([columnName, type]) => ({ name: columnName, type })),
    rows: Array.from(items, (item) => ({
      id: item.id,
      cells: all.map(([, , of]) => of(item)),
      geometry: geometry(item),
    })),
  };
}

export function yesNo(flag: boolean | null): string | null {
  return flag === null ? null : flag ? 'yes' : 'no';
}

/** To the millimetre, or the thousandth of any other unit. */
export function rounded(value: number | null): number | null {
  return value === null || !Number.isFinite(value) ? null : Math.round(value * 1000) / 1000;
}
