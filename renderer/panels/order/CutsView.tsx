import type { CSSProperties } from 'react';
import { boundsOf, lengthBoundsOf } from '../../../core/kinds/form.ts';
import { rollOnHand } from '../../../core/kinds/order.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { RollOnHand } from '../../../core/model/things.ts';
import type { CutList, CutRoll } from '../../../core/quantities/cutting/cutLists.ts';
import { cutListProof, cutListSentence } from '../../../core/quantities/formatOrder.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { light } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';

/** Which piece of pipe and cable comes off which roll, with the rolls that are on hand. */
export function CutsView({ worked }: { readonly worked: WorkedOrder }) {
  const { order: words } = useWords().window;
  const { parts } = worked.order;
  const lists = parts.flatMap(({ stage, cutLists }) => cutLists.map((list) => ({ list, stage })));
  return (
    <>
      {lists.length === 0 ? (
        <p className="register-empty">{words.cuts.nothing}</p>
      ) : (
        <p className="field-hint">{words.cuts.hint}</p>
      )}
      {lists.map(({ list, stage }) => (
        <CutListBlock
          key={`${stage?.id ?? ''} ${list.key}`}
          list={list}
          stage={parts.length > 1 ? (stage?.name ?? words.inNoStage) : null}
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
  const f = useFigures();
  const { cuts: words } = f.words.window.order;
  const name = f.say(list.name);
  const title = stage === null ? name : words.title({ list: name, stage });
  return (
    <section className="block" aria-label={title}>
      <h3>{title}</h3>
      <p>
        {cutListSentence(list, f)} <span className="field-hint">{f.say(cutListProof(list))}</span>
      </p>
      {[...list.tooLong, ...list.without].map((cut) => (
        <p key={`${cut.thingIds.join(' ')} ${cut.lengthM}`} className="field-problem">
          {words[list.tooLong.includes(cut) ? 'tooLong' : 'without']({
            piece: f.say(cut.label),
            length: f.tape(cut.lengthM),
          })}
        </p>
      ))}
      <ol className="rolls">
        {list.rolls.map((roll) => (
          <RollStrip key={roll.number} roll={roll} />
        ))}
      </ol>
    </section>
  );
}

/** A roll as a strip: its pieces in their lengths, and what is left. */
function RollStrip({ roll }: { readonly roll: CutRoll }) {
  const f = useFigures();
  const { cuts: words } = f.words.window.order;
  const name = f.words.order.cutList.roll({ number: roll.number });
  const from = roll.bought ? words.bought : f.say(roll.from.name);
  return (
    <li>
      <p className="roll-head">
        <strong>{words.roll({ name, length: f.tape(roll.lengthM), from })}</strong>
        <span>{words.left({ length: f.tape(roll.leftM) })}</span>
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
            <span>{f.say(cut.label)}</span>
            <span>{f.tape(cut.lengthM)}</span>
          </li>
        ))}
      </ul>
    </li>
  );
}

function RollsOnHand({ worked }: { readonly worked: WorkedOrder }) {
  const { project } = useOpenFile();
  const f = useFigures();
  const { cuts: words } = f.words.window.order;
  const measures = worked.takeOff.quantities
    .filter(({ cut }) => cut)
    .map(({ key, name }) => ({ value: key, label: f.say(name) }));
  const rolls = [...project.rollOnHand.values()];
  const [first] = measures;
  const add = (measure: string) =>
    void commit(words.rollAdded, addThing({ kind: 'rollOnHand', measure, lengthM: 50, count: 1, note: '' }, newId));
  return (
    <section className="block" aria-labelledby="rolls-on-hand">
      <h3 id="rolls-on-hand">{words.onHand}</h3>
      <p className="field-hint">{words.onHandHint}</p>
      {rolls.map((roll) => (
        <RollFields key={roll.id} roll={roll} measures={measures} />
      ))}
      {first ? (
        <p className="buttons">
          <button type="button" onClick={() => add(first.value)}>
            {words.addRoll}
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
  const { cuts: words, takeOut } = useWords().window.order;
  const set = (patch: Partial<Omit<RollOnHand, 'kind' | 'id'>>) =>
    change(words.rollChanged, 'rollOnHand', roll.id, patch);
  const known = measures.some(({ value }) => value === roll.measure);
  const choices = known ? measures : [...measures, { value: roll.measure, label: roll.measure }];
  return (
    <div className="roll-fields">
      <SelectField label={words.of} value={roll.measure} choices={choices} onCommit={(measure) => set({ measure })} />
      <div className="field-pair">
        <LengthField
          label={words.length}
          valueM={roll.lengthM}
          {...lengthBoundsOf(rollOnHand.fields.lengthM)}
          onCommitM={(lengthM) => {
            if (lengthM !== null) set({ lengthM });
          }}
        />
        <NumberField
          label={words.howMany}
          unit={words.rolls}
          decimals={0}
          {...boundsOf(rollOnHand.fields.count)}
          value={roll.count}
          onCommit={(count) => {
            if (count !== null) set({ count: Math.round(count) });
          }}
        />
        <button type="button" onClick={() => void commit(words.rollOut, deleteThings([roll]))}>
          {takeOut}
        </button>
      </div>
    </div>
  );
}
