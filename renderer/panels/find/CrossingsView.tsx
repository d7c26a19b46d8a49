import { useId, useMemo, useState } from 'react';
import { standingInShort } from '../../../core/locate/certaintyWords.ts';
import { type CrossingRow, crossingsCalled, crossingsNear } from '../../../core/locate/crossingSearch.ts';
import { leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures } from '../../state/useFigures.ts';
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
  const f = useFigures();
  const words = f.words.window.find.crossings;
  const rows = useCrossingRows();
  const sought = useSought();
  const left = leftInGround(project, survey).find(({ thing }) => thing.id === sought);
  const [text, setText] = useState('');
  const id = useId();
  const { shown, said, place } = useMemo(
    () => search(text, rows, project, survey, words),
    [text, rows, project, survey, words],
  );
  return (
    <>
      <div className="field">
        <label htmlFor={id}>{words.searchFor}</label>
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
        caption={words.caption}
        rows={shown}
        idOf={({ row }) => row.gatewayId}
        empty={rows.length === 0 ? words.none : words.noneFound}
        columns={[
          { title: words.gateway, cell: ({ row }) => row.name, sortBy: ({ row }) => row.name },
          ...(place
            ? [
                {
                  title: words.away,
                  figures: true,
                  cell: ({ distanceM }: ShownRow) => f.length(distanceM ?? 0),
                  sortBy: ({ distanceM }: ShownRow) => distanceM ?? 0,
                },
              ]
            : [{ title: words.fence, cell: ({ row }: ShownRow) => row.line, sortBy: ({ row }: ShownRow) => row.line }]),
          {
            title: words.howSure,
            cell: ({ row }) => <CertaintyTag crossing={row.crossing} />,
            sortBy: ({ row: { crossing } }) => f.say(standingInShort(crossing)),
          },
          {
            title: words.within,
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
  words: Texts['window']['find']['crossings'],
) {
  const all = (list: readonly CrossingRow[]): ShownRow[] => list.map((row) => ({ row, distanceM: null }));
  if (text.trim() === '') {
    return { shown: all(rows), said: words.choose, place: null };
  }
  const called = crossingsCalled(rows, text);
  const left = leftInGround(project, survey).filter(({ thing }) => isLeftCalled(thing, text)).length;
  const found = called.length + left;
  if (found > 0) return { shown: all(called), said: words.found({ count: found }), place: null };
  const read = typedPlace(text, project, survey);
  if ('problem' in read) return { shown: [], said: words.noSuchName({ problem: read.problem }), place: null };
  const near = crossingsNear(rows, survey.plane.toXy(read.lonLat));
  return { shown: near, said: words.nearestFirst, place: read.lonLat };
}
