import type { CSSProperties } from 'react';
import { boundsOf, lengthBoundsOf } from '../../../core/kinds/form.ts';
import { rollOnHand } from '../../../core/kinds/order.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { RollOnHand } from '../../../core/model/things.ts';
import type { CutList, CutRoll } from '../../../core/quantities/cutting/cutLists.ts';
import { cutListProof, cutListSentence } from '../../../core/quantities/formatOrder.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { light } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';

/** Which piece of pipe and cable comes off which roll, with the rolls that are on hand. */
export function CutsView({ worked }: { readonly worked: WorkedOrder }) {
  const { parts } = worked.order;
  const lists = parts.flatMap(({ stage, cutLists }) => cutLists.map((list) => ({ list, stage })));
  return (
    <>
      {lists.length === 0 ? (
        <p className="register-empty">No crossing or lead-out is planned, so nothing is cut.</p>
      ) : (
        <p className="field-hint">
          Pieces that lie in the ground are never joined. Lengths are estimates from the drawing: check the trench
          before you cut.
        </p>
      )}
      {lists.map(({ list, stage }) => (
        <CutListBlock
          key={`${stage?.id ?? ''} ${list.key}`}
          list={list}
          stage={parts.length > 1 ? (stage?.name ?? 'In no stage') : null}
        />
      ))}
      {lists.length > 0 ? (
        <p className="buttons">
          <CommandButton id="cutListsCsv" />
        </p>
      ) : null}
      <RollsOnHand worked={worked} />
    </>
  );
}

function CutListBlock({ list, stage }: { readonly list: CutList; readonly stage: string | null }) {
  const units = useUnits();
  const title = stage === null ? list.name : `${list.name} (${stage})`;
  return (
    <section className="block" aria-label={title}>
      <h3>{title}</h3>
      <p>
        {cutListSentence(list, units)} <span className="field-hint">{cutListProof(list)}</span>
      </p>
      {[...list.tooLong, ...list.without].map((cut) => (
        <p key={`${cut.label} ${cut.lengthM}`} className="field-problem">
          {cut.label}, {formatTape(cut.lengthM, units)}:{' '}
          {list.tooLong.includes(cut) ? 'longer than every roll' : 'no roll is left for it'}.
        </p>
      ))}
      <ol className="rolls">
        {list.rolls.map((roll) => (
          <RollStrip key={roll.name} roll={roll} />
        ))}
      </ol>
    </section>
  );
}

/** A roll as a strip: its pieces in their lengths, and what is left. */
function RollStrip({ roll }: { readonly roll: CutRoll }) {
  const units = useUnits();
  const from = roll.bought ? 'bought' : roll.from.name;
  return (
    <li>
      <p className="roll-head">
        <strong>
          {roll.name}: {formatTape(roll.lengthM, units)}, {from}
        </strong>
        <span>{formatTape(roll.leftM, units)} left</span>
      </p>
      <div className="roll-strip" aria-hidden="true">
        {roll.cuts.map((cut, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a piece is told by its place on the roll
          <span key={i} style={{ '--length': cut.lengthM } as CSSProperties} />
        ))}
        <span className="left" style={{ '--length': roll.leftM } as CSSProperties} />
      </div>
      <ul className="cuts">
        {roll.cuts.map((cut, i) => (
          <li
            // biome-ignore lint/suspicious/noArrayIndexKey: a piece is told by its place on the roll
            key={i}
            onPointerEnter={() => light(cut.thingIds)}
            onPointerLeave={() => light([])}
          >
            <span>{cut.label}</span>
            <span>{formatTape(cut.lengthM, units)}</span>
          </li>
        ))}
      </ul>
    </li>
  );
}

function RollsOnHand({ worked }: { readonly worked: WorkedOrder }) {
  const { project } = useOpenFile();
  const measures = worked.takeOff.quantities
    .filter(({ cut }) => cut)
    .map(({ key, name }) => ({ value: key, label: name }));
  const rolls = [...project.rollOnHand.values()];
  const [first] = measures;
  const add = (measure: string) =>
    void commit(
      'Add a roll on hand',
      addThing({ kind: 'rollOnHand', measure, lengthM: 50, count: 1, note: '' }, newId),
    );
  return (
    <section className="block" aria-labelledby="rolls-on-hand">
      <h3 id="rolls-on-hand">Rolls on hand</h3>
      <p className="field-hint">They are cut before anything is bought. Part rolls count too.</p>
      {rolls.map((roll) => (
        <RollFields key={roll.id} roll={roll} measures={measures} />
      ))}
      {first ? (
        <p className="buttons">
          <button type="button" onClick={() => add(first.value)}>
            Add a roll
          </button>
        </p>
      ) : null}
    </section>
  );
}

function RollFields({
  roll,
  measures,
}: {
  readonly roll: RollOnHand;
  readonly measures: readonly { readonly value: string; readonly label: string }[];
}) {
  const set = (patch: Partial<Omit<RollOnHand, 'kind' | 'id'>>) =>
    change('Change a roll on hand', 'rollOnHand', roll.id, patch);
  const known = measures.some(({ value }) => value === roll.measure);
  const choices = known ? measures : [...measures, { value: roll.measure, label: roll.measure }];
  return (
    <div className="roll-fields">
      <SelectField label="Of" value={roll.measure} choices={choices} onCommit={(measure) => set({ measure })} />
      <div className="field-pair">
        <LengthField
          label="Length"
          valueM={roll.lengthM}
          {...lengthBoundsOf(rollOnHand.fields.lengthM)}
          onCommitM={(lengthM) => {
            if (lengthM !== null) set({ lengthM });
          }}
        />
        <NumberField
          label="How many"
          unit="rolls"
          decimals={0}
          {...boundsOf(rollOnHand.fields.count)}
          value={roll.count}
          onCommit={(count) => {
            if (count !== null) set({ count: Math.round(count) });
          }}
        />
        <button type="button" onClick={() => void commit('Take out a roll on hand', deleteThings([roll]))}>
          Take out
        </button>
      </div>
    </div>
  );
}
