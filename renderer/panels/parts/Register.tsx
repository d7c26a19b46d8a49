import { type KeyboardEvent, memo, type ReactNode, useMemo, useState } from 'react';
import { compareNames } from '../../../core/words/text.ts';
import type { MapId } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { choose, point } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { useWords } from '../../state/useFigures.ts';

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

/** Rows shown at first, and rows that each press of a button adds. */
const [atOnce, moreAtOnce] = [100, 500];

/**
 * A register: one row a thing. Pointing at a row lights the thing up on the map, choosing it chooses it there, and the
 * other way round. Arrow keys walk the rows, Enter chooses and goes there. Of a long one a stretch is shown, which moves
 * to the chosen row.
 */
export function Register<Row>({ caption, rows, idOf, columns, empty }: RegisterProps<Row>) {
  const { register: words } = useWords().window.frame;
  const [sort, setSort] = useState<{ column: number; down: boolean } | null>(null);
  const [stretch, setStretch] = useState({ first: 0, end: atOnce });
  const chosen = useApp((state) => state.chosen);
  const pointed = useApp((state) => state.pointed);
  const sorted = useMemo(() => sortRows(rows, columns, sort), [rows, columns, sort]);
  if (rows.length === 0) return <p className="register-empty">{empty}</p>;

  const chosenIndex = sorted.findIndex((row) => chosen.includes(idOf(row)));
  const wanted = chosenIndex < 0 ? Math.min(stretch.first, sorted.length - 1) : chosenIndex;
  if (wanted < stretch.first || wanted >= stretch.end) {
    const first = Math.max(0, wanted - atOnce / 2);
    setStretch({ first, end: first + atOnce });
  }
  const visible = sorted.slice(stretch.first, stretch.end);
  const left = sorted.length - stretch.end;
  return (
    <div className="register">
      {stretch.first > 0 ? (
        <button
          type="button"
          onClick={() => setStretch({ ...stretch, first: Math.max(0, stretch.first - moreAtOnce) })}
        >
          {words.before({ count: stretch.first })}
        </button>
      ) : null}
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
        <tbody>
          {visible.map((row, index) => {
            const id = idOf(row);
            const isChosen = chosen.includes(id);
            return (
              <RegisterRow
                key={id}
                id={id}
                row={row}
                columns={columns}
                isChosen={isChosen}
                isPointed={pointed === id}
                takesFocus={isChosen || (chosenIndex < 0 && index === 0)}
              />
            );
          })}
        </tbody>
      </table>
      {left > 0 ? (
        <button type="button" onClick={() => setStretch({ ...stretch, end: stretch.end + moreAtOnce })}>
          {words.after({ count: left })}
        </button>
      ) : null}
    </div>
  );
}

interface RegisterRowProps<Row> {
  readonly id: MapId;
  readonly row: Row;
  readonly columns: readonly Column<Row>[];
  readonly isChosen: boolean;
  readonly isPointed: boolean;
  readonly takesFocus: boolean;
}

/** Drawn anew only where something of its own changed: the pointer on the map lights one row after another. */
const RegisterRow = memo(function RegisterRow<Row>(props: RegisterRowProps<Row>) {
  const { id, row, columns, isChosen, isPointed, takesFocus } = props;
  return (
    <tr
      tabIndex={takesFocus ? 0 : -1}
      aria-selected={isChosen}
      className={isPointed ? 'pointed' : undefined}
      onPointerEnter={() => point(id)}
      onPointerLeave={() => point(null)}
      onFocus={() => point(id)}
      onBlur={() => point(null)}
      onClick={(event) => choose([id], event.shiftKey || event.ctrlKey || event.metaKey)}
      onDoubleClick={() => mapView.zoomTo(id)}
      onKeyDown={(event) => walk(event, id)}
    >
      {columns.map((column) => (
        <td key={column.title} className={column.figures ? 'amount' : undefined}>
          {column.cell(row)}
        </td>
      ))}
    </tr>
  );
}) as <Row>(props: RegisterRowProps<Row> & { readonly key: MapId }) => ReactNode;

function walk(event: KeyboardEvent<HTMLTableRowElement>, id: MapId): void {
  const row = event.currentTarget;
  if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    event.preventDefault();
    const next = event.key === 'ArrowDown' ? row.nextElementSibling : row.previousElementSibling;
    if (next instanceof HTMLElement) next.focus();
  } else if (event.key === 'Enter' || event.key === ' ') {
    event.preventDefault();
    choose([id], event.shiftKey);
    mapView.zoomTo(id);
  }
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
    return typeof x === 'number' && typeof y === 'number' ? x - y : compareNames(String(x), String(y));
  });
  return sort.down ? sorted.reverse() : sorted;
}
