import { counted, listed } from '../../../core/words/text.ts';
import '../../styles/standing.css';
import { acceptPlan } from '../../../core/model/edits/acceptPlan.ts';
import { overLimitInWords } from '../../../core/survey/overLimit.ts';
import { changeInWords, proofInWords, settledInWords } from '../../../core/survey/sentences.ts';
import type { DividePlan } from '../../../core/survey/types.ts';
import { fixed, formatLength } from '../../../core/words/numbers/write.ts';
import { candidateMapId } from '../../map/mapTypes.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { choose, light } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useStanding } from '../../state/useStanding.ts';
import { useUnits } from '../../state/useUnits.ts';
import { analysis } from '../../work/analysis.ts';
import { NotWorkedOut } from '../parts/WorkedOut.tsx';

/** Names before a list is cut short. */
const mostNames = 12;

/** What the plan suggests beside what is drawn, how sure it is, and the button that takes it. */
export function Plan() {
  const plan = useApp((state) => state.analysis?.plan ?? null);
  const standing = useStanding('plan');
  if (!plan && standing === 'current') return null;
  const ids = plan ? [...plan.missing.map(candidateMapId), ...plan.surplus] : [];
  return (
    <section
      className={plan && standing === 'working' ? 'plan stale' : 'plan'}
      aria-label="The plan"
      aria-busy={standing === 'working'}
      onPointerEnter={() => light(ids)}
      onPointerLeave={() => light([])}
    >
      <h2>The plan</h2>
      {standing === 'failed' ? <NotWorkedOut part="plan" what="the plan" /> : null}
      {standing !== 'failed' && plan ? <Found plan={plan} isCurrent={standing === 'current'} /> : null}
      {standing === 'working' && !plan ? <BeforeTheFirst /> : null}
    </section>
  );
}

function BeforeTheFirst() {
  const isStopped = useApp((state) => state.analysis?.planStopped === true);
  return isStopped ? (
    <>
      <p>Stopped before there was a plan.</p>
      <GoOn />
    </>
  ) : (
    <p>Working out the plan…</p>
  );
}

function Found({ plan, isCurrent }: { readonly plan: DividePlan; readonly isCurrent: boolean }) {
  const { project } = useOpenFile();
  const units = useUnits();
  const isStopped = useApp((state) => state.analysis?.planStopped === true);
  const { missing, surplus } = plan;
  const settled = missing.length === 0 && surplus.length === 0;
  const names = surplus.flatMap((id) => project.switch.get(id)?.name ?? []);
  return (
    <>
      {settled ? (
        <p>{settledInWords(plan)}</p>
      ) : (
        <ul className="plan-steps">
          {missing.length > 0 ? (
            <li>Add {counted(missing.length, 'switch', 'switches')}: hollow signs on the map.</li>
          ) : null}
          {names.length > 0 ? (
            <li>Leave out {listed(names, mostNames)}: the plan does without. Pin a switch to keep it.</li>
          ) : null}
        </ul>
      )}
      <dl className="plan-figures">
        <div>
          <dt>Sections</dt>
          <dd>{fixed(plan.sections.length, 0)}</dd>
        </div>
        <div>
          <dt>Longest</dt>
          <dd>{formatLength(plan.longestSectionM, units)}</dd>
        </div>
        <div>
          <dt title="In switches at a gateway">Cost, relative</dt>
          <dd>
            {fixed(plan.cost, 1)}
            {plan.optimal ? null : <small>at least {fixed(plan.costBound, 1)}</small>}
          </dd>
        </div>
      </dl>
      <p className="field-hint">
        {isCurrent
          ? proofInWords(plan, isStopped)
          : isStopped
            ? 'This was the plan before the last change; the new one was stopped before there was an answer.'
            : 'This was the plan before the last change; it is being worked out again…'}
      </p>
      {isStopped ? <GoOn /> : null}
      {isCurrent && !plan.complete && !isStopped ? <Search /> : null}
      <OverLimit plan={plan} />
      {plan.changes.length > 0 ? (
        <details>
          <summary>What a change would mean</summary>
          <ul className="plan-steps">
            {plan.changes.map((change) => (
              <li key={change.kind === 'keep' ? change.switchId : change.candidateKey}>
                {changeInWords(change, units)}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      {settled ? null : (
        <button
          type="button"
          className="main"
          disabled={!isCurrent}
          onClick={() => void commit('Use the switches of the plan', acceptPlan({ missing, surplus }, newId))}
        >
          Use these switches
        </button>
      )}
    </>
  );
}

/** A better plan is being looked for: how far that is, and the way to stop it. */
function Search() {
  const fraction = useApp((state) => state.analysis?.planning ?? 0);
  return (
    <p className="working">
      <progress value={fraction} aria-label="Looking for a better plan" />
      <button type="button" onClick={() => analysis.stopPlan()}>
        Stop
      </button>
    </p>
  );
}

function GoOn() {
  return (
    <p className="buttons">
      <button type="button" onClick={() => analysis.goOnPlan()}>
        Go on looking
      </button>
    </p>
  );
}

/** Shown before the rest is asked for. */
const mostAtOnce = 3;

/** What is over a limit whatever switches are set: equal stretches in one line. */
function OverLimit({ plan }: { readonly plan: DividePlan }) {
  const { project } = useOpenFile();
  if (plan.overLimit.length === 0) return null;
  const lines = overLimitInWords(project, plan.overLimit);
  const list = (some: typeof lines) => (
    <ul className="over-limit">
      {some.map(({ text, lineIds }) => (
        <li key={text} onPointerEnter={() => light(lineIds)} onPointerLeave={() => light([])}>
          <span>{text}</span>
          {lineIds[0] === undefined ? null : (
            <button
              type="button"
              onClick={() => {
                choose(lineIds);
                mapView.zoomTo(lineIds[0]!);
              }}
            >
              Show
            </button>
          )}
        </li>
      ))}
    </ul>
  );
  return (
    <div className="worked-out">
      <p className="field-problem">Over the limits whatever switches are set:</p>
      {list(lines.slice(0, mostAtOnce))}
      {lines.length > mostAtOnce ? (
        <details>
          <summary>And {lines.length - mostAtOnce} more</summary>
          {list(lines.slice(mostAtOnce))}
        </details>
      ) : null}
      <p className="field-hint">
        Mark a strainer there, add a place for a switch, allow one where it is ruled out, or raise the limit.
      </p>
    </div>
  );
}
