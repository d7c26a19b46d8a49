import { useId, useMemo, useState } from 'react';
import { standingInShort } from '../../../core/locate/certaintyWords.ts';
import { type CrossingRow, crossingsCalled, crossingsNear } from '../../../core/locate/crossingSearch.ts';
import { leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import { formatLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { useUnits } from '../../state/useUnits.ts';
import { CertaintyTag } from '../parts/CertaintyTag.tsx';
import { Register } from '../parts/Register.tsx';
import { Within } from '../parts/Within.tsx';
import { isLeftCalled, LeftRegister, LeftView } from './LeftView.tsx';
import { StakeOutView } from './StakeOutView.tsx';
import { typedPlace } from './typedPlace.ts';
import { useCrossingRows, useSought } from './useCrossingRows.ts';

interface ShownRow {
  readonly row: CrossingRow;
  readonly distanceM: number | null;
}

/** The register of crossings in the ground and planned, searched by name or by a place, and how to find the chosen one. */
export function CrossingsView() {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const rows = useCrossingRows();
  const sought = useSought();
  const left = leftInGround(project, survey).find(({ thing }) => thing.id === sought);
  const [text, setText] = useState('');
  const id = useId();
  const { shown, said, place } = useMemo(() => search(text, rows, project, survey), [text, rows, project, survey]);
  return (
    <>
      <div className="field">
        <label htmlFor={id}>Gateway, fence, or coordinates</label>
        <input
          id={id}
          type="search"
          autoComplete="off"
          value={text}
          maxLength={200}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && place) mapView.goTo(place);
          }}
        />
        <p className="field-hint" role="status">
          {said}
        </p>
      </div>
      {left && !left.crossing ? <LeftView left={left} /> : sought ? <StakeOutView soughtId={sought} /> : null}
      <Register<ShownRow>
        caption="Crossings in the ground and planned"
        rows={shown}
        idOf={({ row }) => row.gatewayId}
        empty={rows.length === 0 ? 'No buried crossing yet. Draw gives each live gateway one.' : 'None has that name.'}
        columns={[
          { title: 'Gateway', cell: ({ row }) => row.name, sortBy: ({ row }) => row.name },
          ...(place
            ? [
                {
                  title: 'Away',
                  figures: true,
                  cell: ({ distanceM }: ShownRow) => formatLength(distanceM ?? 0, units),
                  sortBy: ({ distanceM }: ShownRow) => distanceM ?? 0,
                },
              ]
            : [{ title: 'Fence', cell: ({ row }: ShownRow) => row.line, sortBy: ({ row }: ShownRow) => row.line }]),
          {
            title: 'How sure',
            cell: ({ row }) => <CertaintyTag crossing={row.crossing} />,
            sortBy: ({ row: { crossing } }) => standingInShort(crossing),
          },
          {
            title: 'Within',
            figures: true,
            cell: ({ row: { crossing } }) => (crossing.inGround ? <Within {...crossing.certainty} /> : '–'),
            sortBy: ({ row: { crossing } }) => (crossing.inGround ? crossing.certainty.withinM : 1e9),
          },
        ]}
      />
      <LeftRegister words={place ? '' : text} />
    </>
  );
}

function search(
  text: string,
  rows: readonly CrossingRow[],
  project: Parameters<typeof typedPlace>[1],
  survey: Parameters<typeof typedPlace>[2],
) {
  const all = (list: readonly CrossingRow[]): ShownRow[] => list.map((row) => ({ row, distanceM: null }));
  if (text.trim() === '') {
    return { shown: all(rows), said: 'Choose one here or on the map, or type where you stand.', place: null };
  }
  const called = crossingsCalled(rows, text);
  const left = leftInGround(project, survey).filter(({ thing }) => isLeftCalled(thing, text)).length;
  const found = called.length + left;
  if (found > 0) return { shown: all(called), said: `${found} found.`, place: null };
  const read = typedPlace(text, project, survey);
  if ('problem' in read) return { shown: [], said: `No gateway or fence is called that. ${read.problem}`, place: null };
  const near = crossingsNear(rows, survey.plane.toXy(read.lonLat));
  return { shown: near, said: 'Nearest first. Enter shows the place on the map.', place: read.lonLat };
}
