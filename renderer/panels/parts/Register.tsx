import { type KeyboardEvent, type ReactNode, useMemo, useRef, useState } from 'react';
import type { MapId } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { choose, point } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';

export interface Column<Row> {
  readonly title: string;
  readonly cell: (row: Row) => ReactNode;
  /** What the column sorts by; without it, it doesn't. */
  readonly sortBy?: (row: Row) => string | number;
  readonly figures?: boolean;
}

interface RegisterProps<Row> {
  readonly caption: string;
  readonly rows: readonly Row[];
  readonly idOf: (row: Row) => MapId;
  readonly columns: readonly Column<Row>[];
  /** Said in place of the table when there are no rows. */
  readonly empty: ReactNode;
}

const atOnce = 100;
const natural = new Intl.Collator('en', { numeric: true });

/**
 * A register: one row a thing. Pointing at a row lights the thing up on the map, choosing it chooses it there, and the
 * other way round. Arrow keys walk the rows, Enter chooses and goes there.
 */
export function Register<Row>({ caption, rows, idOf, columns, empty }: RegisterProps<Row>) {
  const [sort, setSort] = useState<{ column: number; down: boolean } | null>(null);
  const [shown, setShown] = useState(atOnce);
  const chosen = useApp((state) => state.chosen);
  const pointed = useApp((state) => state.pointed);
  const body = useRef<HTMLTableSectionElement>(null);
  const sorted = useMemo(() => sortRows(rows, columns, sort), [rows, columns, sort]);
  if (rows.length === 0) return <p className="register-empty">{empty}</p>;

  const chosenIndex = sorted.findIndex((row) => chosen.includes(idOf(row)));
  const visible = sorted.slice(0, Math.max(shown, chosenIndex + 1));
  const walk = (event: KeyboardEvent<HTMLTableRowElement>, row: Row) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step !== undefined) {
      event.preventDefault();
      const all = Array.from(body.current?.rows ?? []);
      all[all.indexOf(event.currentTarget) + step]?.focus();
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      choose([idOf(row)], event.shiftKey);
      mapView.zoomTo(idOf(row));
    }
  };
  return (
    <div className="register">
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column, index) => (
              <th
                key={column.title}
                scope="col"
                className={column.figures ? 'amount' : undefined}
                aria-sort={sort?.column === index ? (sort.down ? 'descending' : 'ascending') : undefined}
              >
                {column.sortBy ? (
                  <button type="button" className="sort" onClick={() => setSort(nextSort(sort, index))}>
                    {column.title}
                    <span aria-hidden="true">{sort?.column === index ? (sort.down ? ' ▾' : ' ▴') : ''}</span>
                  </button>
                ) : (
                  column.title
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body}>
          {visible.map((row, index) => {
            const id = idOf(row);
            const isChosen = chosen.includes(id);
            return (
              <tr
                key={id}
                tabIndex={isChosen || (chosenIndex < 0 && index === 0) ? 0 : -1}
                aria-selected={isChosen}
                className={pointed === id ? 'pointed' : undefined}
                onPointerEnter={() => point(id)}
                onPointerLeave={() => point(null)}
                onFocus={() => point(id)}
                onBlur={() => point(null)}
                onClick={(event) => choose([id], event.shiftKey || event.ctrlKey || event.metaKey)}
                onDoubleClick={() => mapView.zoomTo(id)}
                onKeyDown={(event) => walk(event, row)}
              >
                {columns.map((column) => (
                  <td key={column.title} className={column.figures ? 'amount' : undefined}>
                    {column.cell(row)}
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      {visible.length < sorted.length ? (
        <button type="button" onClick={() => setShown(visible.length + 5 * atOnce)}>
          Show more ({sorted.length - visible.length} left)
        </button>
      ) : null}
    </div>
  );
}

function nextSort(sort: { column: number; down: boolean } | null, column: number) {
  if (sort?.column !== column) return { column, down: false };
  return sort.down ? null : { column, down: true };
}

function sortRows<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  sort: { column: number; down: boolean } | null,
): readonly Row[] {
  const by = sort ? columns[sort.column]?.sortBy : undefined;
  if (!by || !sort) return rows;
  const sorted = [...rows].sort((a, b) => {
    const [x, y] = [by(a), by(b)];
    return typeof x === 'number' && typeof y === 'number' ? x - y : natural.compare(String(x), String(y));
  });
  return sort.down ? sorted.reverse() : sorted;
}
