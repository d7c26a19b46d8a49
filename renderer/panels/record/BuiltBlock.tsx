import { builtMarkId } from '../../../core/model/recordDefaults.ts';
import type { BuildableThing } from '../../../core/model/recordThings.ts';
import { differenceOf } from '../../../core/record/differences.ts';
import { markBuilt, markPlanned } from '../../../core/record/edits/markBuilt.ts';
import { nameOf } from '../../../core/record/places.ts';
import { today } from '../../../core/words/dates.ts';
import { formatLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { TextField } from '../parts/fields.tsx';
import { DateField } from './DateField.tsx';

/** Whether a thing is built, since when and by whom, and how it differs from what was planned. */
export function BuiltBlock({ thing }: { readonly thing: BuildableThing }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const mark = project.builtMark.get(builtMarkId(thing.kind, thing.id));
  const name = nameOf(thing, project);
  const ref = [{ kind: thing.kind, id: thing.id }];
  const set = (words: { date: string | null; by: string }) =>
    void commit(`Mark ${name} built`, markBuilt(ref, words, survey));
  const difference = mark ? differenceOf(mark, project, survey) : null;
  return (
    <section className="block" aria-label={`Built: ${name}`}>
      <h3>{name}</h3>
      {thing.status === 'planned' ? (
        <>
          <p>
            Planned. When it is marked built, the plan is kept beside it; from then on its own figures are the real
            ones.
          </p>
          <button type="button" className="main" onClick={() => set({ date: today(), by: '' })}>
            Mark it built today
          </button>
        </>
      ) : (
        <>
          <div className="field-pair">
            <DateField
              label="Built on"
              optional
              value={mark?.date ?? null}
              onCommit={(date) => set({ date, by: mark?.by ?? '' })}
            />
            <TextField label="By" value={mark?.by ?? ''} onCommit={(by) => set({ date: mark?.date ?? null, by })} />
          </div>
          {mark ? (
            <TextField
              label="Note"
              long
              value={mark.note}
              onCommit={(note) => change(`Note on ${name}`, 'builtMark', mark.id, { note })}
            />
          ) : null}
          {difference ? (
            <p>
              {difference.movedM > 0
                ? `Stands ${formatLength(difference.movedM, units)} from where it was planned. `
                : ''}
              {difference.changes.map(({ field, before, after }) => `${field} ${before}, now ${after}`).join('; ') ||
                (difference.movedM > 0 ? '' : 'Built as planned.')}
            </p>
          ) : (
            <p className="field-hint">Drawn as built: there is no plan to compare it with.</p>
          )}
          <button type="button" onClick={() => void commit(`Mark ${name} planned`, markPlanned(ref))}>
            It is only planned
          </button>
        </>
      )}
    </section>
  );
}
