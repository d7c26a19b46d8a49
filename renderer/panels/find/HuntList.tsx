import { readingInWords } from '../../../core/locate/hunt/huntWords.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';

/** Earlier searches and what they came to. */
export function HuntList() {
  const { project } = useOpenFile();
  const words = useWords().window.find.search.earlier;
  const past = [...project.faultHunt.values()].filter(({ end }) => end !== null).reverse();
  if (past.length === 0) return null;
  return (
    <section className="block" aria-label={words.heading}>
      <h2>{words.heading}</h2>
      {past.map((hunt) => (
        <PastHunt key={hunt.id} hunt={hunt} />
      ))}
    </section>
  );
}

function PastHunt({ hunt }: { readonly hunt: FaultHunt }) {
  const { end, readings, by, startedAt } = hunt;
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
      <ol className="hunt-readings">
        {readings.map((reading, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a record that does not change
          <li key={index} className={reading.setAside ? 'set-aside' : undefined}>
            {reading.setAside ? walk.setAside({ reading: readingInWords(reading) }) : f.say(readingInWords(reading))}
          </li>
        ))}
      </ol>
      <button type="button" onClick={() => void commit(steps.delete({ name: hunt.name }), deleteThings([hunt]))}>
        {words.delete}
      </button>
    </details>
  );
}
