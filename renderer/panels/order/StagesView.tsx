import { useState } from 'react';
import type { Stage } from '../../../core/model/things.ts';
import { addStage, deleteStage, moveStage, putInStage } from '../../../core/quantities/edits/changeStages.ts';
import { stageOfThing, stagesOf } from '../../../core/quantities/order/stages.ts';
import { formatMoney } from '../../../core/words/numbers/write.ts';
import { counted } from '../../../core/words/text.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose, light } from '../../state/choose.ts';
import { findThing } from '../../state/findThing.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { TextField } from '../parts/fields.tsx';
import { useHabits } from './useHabits.ts';

/** The job split into stages: what is in each, and what it costs. */
export function StagesView({ worked }: { readonly worked: WorkedOrder }) {
  const { project } = useOpenFile();
  const [name, setName] = useState('');
  const stages = stagesOf(project);
  const add = () => {
    const wanted = name.trim() || (stages.length === 0 ? 'First stage' : `Stage ${stages.length + 1}`);
    setName('');
    void commit(`Add stage ${wanted}`, (before) => addStage(wanted)(before, newId));
  };
  return (
    <>
      <p className="field-hint">
        A gateway goes with its fence, a switch with its gateway, unless they have a stage of their own. A post that two
        fences share is put in with the first. What a stage leaves over is there for the next.
      </p>
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
        <label htmlFor="new-stage">New stage</label>
        <input
          id="new-stage"
          type="text"
          maxLength={200}
          placeholder="This spring"
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
        <button type="submit">Add</button>
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
        label={`Stage ${place}`}
        required
        value={stage.name}
        onCommit={(to) => change(`Rename stage ${stage.name}`, 'stage', stage.id, { name: to })}
      />
      <p>
        {marked.length === 0
          ? 'Nothing is in it yet.'
          : `${counted(marked.length, 'thing')}, with all that hangs on ${marked.length === 1 ? 'it' : 'them'}. `}
        {part && marked.length > 0 ? (
          <>
            Goods {formatMoney(part.materials.net, habits)}, work {formatMoney(part.work.net, habits)}:{' '}
            <strong>{formatMoney(part.total.gross, habits)}</strong>
            {part.total.tax > 0 ? ' with tax' : ''}.
          </>
        ) : null}
      </p>
      <p className="buttons">
        {marked.length > 0 ? (
          <button type="button" onClick={() => choose(marked)}>
            Choose what is in it
          </button>
        ) : null}
        {place === 1 ? null : (
          <button type="button" onClick={() => void commit(`Do ${stage.name} earlier`, moveStage(stage.id, -1))}>
            Earlier
          </button>
        )}
        {place === of ? null : (
          <button type="button" onClick={() => void commit(`Do ${stage.name} later`, moveStage(stage.id, 1))}>
            Later
          </button>
        )}
        <button type="button" onClick={() => void commit(`Take out stage ${stage.name}`, deleteStage(stage.id))}>
          Take out
        </button>
      </p>
    </section>
  );
}

function InNoStage({ worked }: { readonly worked: WorkedOrder }) {
  const { project } = useOpenFile();
  const habits = useHabits();
  const part = worked.order.parts.find(({ stage }) => stage === null);
  if (project.stage.size === 0 || !part) return null;
  return (
    <p>
      In no stage: <strong>{formatMoney(part.total.gross, habits)}</strong>.
    </p>
  );
}

/** Puts what is chosen, in the inspector or on the map, into a stage. */
function PutChosen() {
  const { project } = useOpenFile();
  const chosen = useApp((state) => state.chosen);
  const stages = stagesOf(project);
  const things = chosen.filter((id) => findThing(project, id) !== null);
  if (stages.length === 0) {
    return <p className="register-empty">No stages: the whole job is ordered at once. Add one to split it.</p>;
  }
  if (things.length === 0) {
    return (
      <p className="field-hint">To put things into a stage, choose them on the map (drag a box, or hold Shift).</p>
    );
  }
  const stageOf = stageOfThing(project);
  const now = new Set(things.map((id) => stageOf(id)?.name ?? 'no stage'));
  const put = (stage: Stage | null) =>
    void commit(
      stage ? `Put ${things.length} things into ${stage.name}` : `Take ${things.length} things out of their stage`,
      putInStage(things, stage?.id ?? null),
    );
  return (
    <section className="block put-chosen" aria-label="Put what is chosen into a stage">
      <p>
        Chosen: {counted(things.length, 'thing')}, now in {[...now].join(', ')}. Put{' '}
        {things.length === 1 ? 'it' : 'them'} into:
      </p>
      <p className="buttons">
        {stages.map((stage) => (
          <button key={stage.id} type="button" onClick={() => put(stage)}>
            {stage.name}
          </button>
        ))}
        <button type="button" onClick={() => put(null)}>
          No stage
        </button>
      </p>
    </section>
  );
}
