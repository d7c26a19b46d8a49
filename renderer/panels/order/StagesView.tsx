import { useState } from 'react';
import type { Stage } from '../../../core/model/things.ts';
import { addStage, deleteStage, moveStage, putInStage } from '../../../core/quantities/edits/changeStages.ts';
import { stageOfThing, stagesOf } from '../../../core/quantities/order/stages.ts';
import { formatMoney } from '../../../core/words/numbers/write.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose, light } from '../../state/choose.ts';
import { findThing } from '../../state/findThing.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { TextField } from '../parts/fields.tsx';
import { useHabits } from './useHabits.ts';

/** The job split into stages: what is in each, and what it costs. */
export function StagesView({ worked }: { readonly worked: WorkedOrder }) {
  const { project } = useOpenFile();
  const { stages: words } = useWords().window.order;
  const [name, setName] = useState('');
  const stages = stagesOf(project);
  const add = () => {
    const wanted = name.trim() || (stages.length === 0 ? words.first : words.next({ number: stages.length + 1 }));
    setName('');
    void commit(words.added({ name: wanted }), (before) => addStage(wanted)(before, newId));
  };
  return (
    <>
      <p className="field-hint">{words.hint}</p>
      {stages.map((stage, i) => (
        <StageBlock key={stage.id} stage={stage} worked={worked} place={i + 1} of={stages.length} />
      ))}
      <InNoStage worked={worked} />
      <PutChosen />
      <form
        className="inline-form"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <label htmlFor="new-stage">{words.new}</label>
        <input
          id="new-stage"
          type="text"
          maxLength={200}
          placeholder={words.newExample}
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
        <button type="submit">{words.add}</button>
      </form>
    </>
  );
}

function StageBlock({
  stage,
  worked,
  place,
  of,
}: {
  readonly stage: Stage;
  readonly worked: WorkedOrder;
  readonly place: number;
  readonly of: number;
}) {
  const { project } = useOpenFile();
  const habits = useHabits();
  const { stages: words, takeOut } = useWords().window.order;
  const part = worked.order.parts.find((each) => each.stage?.id === stage.id);
  const marked = [...project.stageMark.values()]
    .filter(({ stageId }) => stageId === stage.id)
    .map(({ thingId }) => thingId);
  return (
    <section
      className="stage"
      aria-label={stage.name}
      onPointerEnter={() => light(marked)}
      onPointerLeave={() => light([])}
    >
      <TextField
        label={words.next({ number: place })}
        required
        value={stage.name}
        onCommit={(to) => change(words.renamed({ name: stage.name }), 'stage', stage.id, { name: to })}
      />
      <p>
        {marked.length === 0 ? words.nothing : words.holds({ count: marked.length })}{' '}
        {part && marked.length > 0 ? (
          <>
            {words.costs({
              goods: formatMoney(part.materials.net, habits),
              work: formatMoney(part.work.net, habits),
            })}{' '}
            <strong>{formatMoney(part.total.gross, habits)}</strong>
            {part.total.tax > 0 ? ` ${words.withTax}` : '.'}
          </>
        ) : null}
      </p>
      <p className="buttons">
        {marked.length > 0 ? (
          <button type="button" onClick={() => choose(marked)}>
            {words.select}
          </button>
        ) : null}
        {place === 1 ? null : (
          <button
            type="button"
            onClick={() => void commit(words.movedEarlier({ name: stage.name }), moveStage(stage.id, -1))}
          >
            {words.earlier}
          </button>
        )}
        {place === of ? null : (
          <button
            type="button"
            onClick={() => void commit(words.movedLater({ name: stage.name }), moveStage(stage.id, 1))}
          >
            {words.later}
          </button>
        )}
        <button type="button" onClick={() => void commit(words.takenOut({ name: stage.name }), deleteStage(stage.id))}>
          {takeOut}
        </button>
      </p>
    </section>
  );
}

function InNoStage({ worked }: { readonly worked: WorkedOrder }) {
  const { project } = useOpenFile();
  const habits = useHabits();
  const { stages: words } = useWords().window.order;
  const part = worked.order.parts.find(({ stage }) => stage === null);
  if (project.stage.size === 0 || !part) return null;
  return (
    <p>
      {words.rest} <strong>{formatMoney(part.total.gross, habits)}</strong>.
    </p>
  );
}

/** Puts what is chosen, in the inspector or on the map, into a stage. */
function PutChosen() {
  const { project } = useOpenFile();
  const { stages: words } = useWords().window.order;
  const chosen = useApp((state) => state.chosen);
  const stages = stagesOf(project);
  const things = chosen.filter((id) => findThing(project, id) !== null);
  if (stages.length === 0) {
    return <p className="register-empty">{words.none}</p>;
  }
  if (things.length === 0) {
    return <p className="field-hint">{words.selectSome}</p>;
  }
  const stageOf = stageOfThing(project);
  const now = new Set(things.map((id) => stageOf(id)?.name ?? words.noStage));
  const put = (stage: Stage | null) =>
    void commit(
      stage ? words.putIn({ count: things.length, stage: stage.name }) : words.putOut({ count: things.length }),
      putInStage(things, stage?.id ?? null),
    );
  return (
    <section className="block put-chosen" aria-label={words.putSection}>
      <p>{words.put({ count: things.length, now: [...now] })}</p>
      <p className="buttons">
        {stages.map((stage) => (
          <button key={stage.id} type="button" onClick={() => put(stage)}>
            {stage.name}
          </button>
        ))}
        <button type="button" onClick={() => put(null)}>
          {words.toNone}
        </button>
      </p>
    </section>
  );
}
