import { builtMarkId } from '../../../core/model/recordDefaults.ts';
import type { BuildableThing } from '../../../core/model/recordThings.ts';
import { differenceOf } from '../../../core/record/differences.ts';
import { markBuilt, markPlanned } from '../../../core/record/edits/markBuilt.ts';
import { nameOf } from '../../../core/record/places.ts';
import { today } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { TextField } from '../parts/fields.tsx';
import { DateField } from './DateField.tsx';

/** Whether a thing is built, since when and by whom, and how it differs from what was planned. */
export function BuiltBlock({ thing }: { readonly thing: BuildableThing }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { built, fields } = f.words.window.record;
  const mark = project.builtMark.get(builtMarkId(thing.kind, thing.id));
  const name = f.say(nameOf(thing, project));
  const ref = [{ kind: thing.kind, id: thing.id }];
  const set = (when: { date: string | null; by: string }) =>
    void commit(built.mark({ name }), markBuilt(ref, when, survey));
  const difference = mark ? differenceOf(mark, project, survey) : null;
  return (
    <section className="block" aria-label={built.of({ name })}>
      <h3>{name}</h3>
      {thing.status === 'planned' ? (
        <>
          <p>{built.planned}</p>
          <button type="button" className="main" onClick={() => set({ date: today(), by: '' })}>
            {built.markToday}
          </button>
        </>
      ) : (
        <>
          <div className="field-pair">
            <DateField
              label={built.builtOn}
              optional
              value={mark?.date ?? null}
              onCommit={(date) => set({ date, by: mark?.by ?? '' })}
            />
            <TextField
              label={fields.by}
              value={mark?.by ?? ''}
              onCommit={(by) => set({ date: mark?.date ?? null, by })}
            />
          </div>
          {mark ? (
            <TextField
              label={fields.note}
              long
              value={mark.note}
              onCommit={(note) => change(built.changeNote({ name }), 'builtMark', mark.id, { note })}
            />
          ) : null}
          {difference ? (
            <p>
              {difference.movedM > 0 ? `${built.moved(difference)} ` : ''}
              {f.words.record.allChanged(difference) || (difference.movedM > 0 ? '' : built.asPlanned)}
            </p>
          ) : (
            <p className="field-hint">{built.noPlan}</p>
          )}
          <button type="button" onClick={() => void commit(built.markPlanned({ name }), markPlanned(ref))}>
            {built.onlyPlanned}
          </button>
        </>
      )}
    </section>
  );
}
