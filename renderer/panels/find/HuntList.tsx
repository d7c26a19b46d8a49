import { readingInWords } from '../../../core/locate/hunt/huntWords.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { dateText } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';

/** Earlier searches and what they came to. */
export function HuntList() {
  const { project } = useOpenFile();
  const past = [...project.faultHunt.values()].filter(({ end }) => end !== null).reverse();
  if (past.length === 0) return null;
  return (
    <section className="block" aria-label="Earlier searches">
      <h2>Earlier searches</h2>
      {past.map((hunt) => (
        <PastHunt key={hunt.id} hunt={hunt} />
      ))}
    </section>
  );
}

function PastHunt({ hunt }: { readonly hunt: FaultHunt }) {
  const { end, readings, by, startedAt } = hunt;
  return (
    <details className="legs">
      <summary>
        {dateText(startedAt)}: {outcomeInWords(hunt)}
      </summary>
      {end?.cause ? <p>{end.cause}</p> : null}
      {by ? <p>Searched by {by}.</p> : null}
      <ol className="hunt-readings">
        {readings.map((reading, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a record that does not change
          <li key={index} className={reading.setAside ? 'set-aside' : undefined}>
            {readingInWords(reading)}
            {reading.setAside ? ' (set aside)' : ''}
          </li>
        ))}
      </ol>
      <button type="button" onClick={() => void commit(`Delete ${hunt.name}`, deleteThings([hunt]))}>
        Delete
      </button>
    </details>
  );
}

function outcomeInWords({ end }: FaultHunt): string {
  if (!end || end.outcome === 'givenUp') return 'given up';
  const where = end.section ? `section ${end.section}${end.place ? ` (${end.place})` : ''}` : end.place;
  return `${where}${end.confirmed ? '' : ', not made sure of'}`;
}
