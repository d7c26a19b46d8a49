import { readingInWords } from '../../../core/locate/faultSearch/faultSearchWords.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';

/** Earlier searches and what they came to. */
export function FaultSearchList() {
  const { project } = useOpenFile();
  const words = useWords().window.find.search.earlier;
  const past = [...project.faultHunt.values()].filter(({ end }) => end !== null).reverse();
  if (past.length === 0) return null;
  return (
    <section className="block" aria-label={words.heading}>
      <h2>{words.heading}</h2>
      {past.map((search) => (
        <PastFaultSearch key={search.id} search={search} />
      ))}
    </section>
  );
}

function PastFaultSearch({ search }: { readonly search: FaultSearch }) {
  const { end, readings, by, startedAt } = search;
  const f = useFigures();
  const { earlier: words, walk, steps } = f.words.window.find.search;
  const outcome =
    !end || end.outcome === 'givenUp'
      ? words.givenUp
      : words.found({ section: end.section || null, place: end.place, confirmed: end.confirmed });
  return (
    <details className="legs">
      <summary>{words.summary({ day: startedAt, outcome })}</summary>
      {end?.cause ? <p>{end.cause}</p> : null}
      {by ? <p>{words.by({ by })}</p> : null}
      <ol className="fault-search-readings">
        {readings.map((reading, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a record that does not change
          <li key={index} className={reading.setAside ? 'set-aside' : undefined}>
            {reading.setAside ? walk.setAside({ reading: readingInWords(reading) }) : f.say(readingInWords(reading))}
          </li>
        ))}
      </ol>
      <button type="button" onClick={() => void commit(steps.delete({ name: search.name }), deleteThings([search]))}>
        {words.delete}
      </button>
    </details>
  );
}
