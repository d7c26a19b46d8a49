import '../../styles/standing.css';
import { acceptPlan } from '../../../core/model/edits/acceptPlan.ts';
import { overLimitInWords } from '../../../core/survey/overLimit.ts';
import { changeInWords, proofInWords, settledInWords } from '../../../core/survey/sentences.ts';
import type { DividePlan } from '../../../core/survey/types.ts';
import { candidateMapId } from '../../map/mapTypes.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { choose, light } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { useStanding } from '../../state/useStanding.ts';
import { analysis } from '../../work/analysis.ts';
import { NotWorkedOut } from '../parts/WorkedOut.tsx';

/** What the plan suggests beside what is drawn, how sure it is, and the button that takes it. */
export function Plan() {
  const plan = useApp((state) => state.analysis?.plan ?? null);
  const standing = useStanding('plan');
  const words = useWords().window.divide.plan;
  if (!plan && standing === 'current') return null;
  const ids = plan ? [...plan.missing.map(candidateMapId), ...plan.surplus] : [];
  return (
    <section
      className={plan && standing === 'working' ? 'plan stale' : 'plan'}
      aria-label={words.title}
      aria-busy={standing === 'working'}
      onPointerEnter={() => light(ids)}
      onPointerLeave={() => light([])}
    >
      <h2>{words.title}</h2>
      {standing === 'failed' ? <NotWorkedOut part="plan" what={words.what} /> : null}
      {standing !== 'failed' && plan ? <Found plan={plan} isCurrent={standing === 'current'} /> : null}
      {standing === 'working' && !plan ? <BeforeTheFirst /> : null}
    </section>
  );
}

function BeforeTheFirst() {
  const words = useWords().window.divide.plan;
  const isStopped = useApp((state) => state.analysis?.planStopped === true);
  return isStopped ? (
    <>
      <p>{words.stoppedBefore}</p>
      <GoOn />
    </>
  ) : (
    <p>{words.working}</p>
  );
}

function Found({ plan, isCurrent }: { readonly plan: DividePlan; readonly isCurrent: boolean }) {
  const { project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.divide.plan;
  const isStopped = useApp((state) => state.analysis?.planStopped === true);
  const { missing, surplus } = plan;
  const settled = missing.length === 0 && surplus.length === 0;
  const names = surplus.flatMap((id) => project.switch.get(id)?.name ?? []);
  return (
    <>
      {settled ? (
        <p>{f.say(settledInWords(plan))}</p>
      ) : (
        <ul className="plan-steps">
          {missing.length > 0 ? <li>{words.add({ count: missing.length })}</li> : null}
          {names.length > 0 ? <li>{words.leaveOut({ names })}</li> : null}
        </ul>
      )}
      <dl className="plan-figures">
        <div>
          <dt>{words.sections}</dt>
          <dd>{f.number(plan.sections.length, 0)}</dd>
        </div>
        <div>
          <dt>{words.longest}</dt>
          <dd>{f.length(plan.longestSectionM)}</dd>
        </div>
        <div>
          <dt title={words.costHint}>{words.cost}</dt>
          <dd>
            {f.number(plan.cost, 1)}
            {plan.optimal ? null : <small>{words.atLeast({ cost: plan.costBound })}</small>}
          </dd>
        </div>
      </dl>
      <p className="field-hint">
        {isCurrent ? f.say(proofInWords(plan, isStopped)) : isStopped ? words.stopped : words.again}
      </p>
      {isStopped ? <GoOn /> : null}
      {isCurrent && !plan.complete && !isStopped ? <Search /> : null}
      <OverLimit plan={plan} />
      {plan.changes.length > 0 ? (
        <details>
          <summary>{words.changes}</summary>
          <ul className="plan-steps">
            {plan.changes.map((change) => (
              <li key={change.kind === 'keep' ? change.switchId : change.candidateKey}>
                {f.say(changeInWords(change))}
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
          onClick={() => void commit(words.useStep, acceptPlan({ missing, surplus }, newId))}
        >
          {words.use}
        </button>
      )}
    </>
  );
}

/** A better plan is being looked for: how far that is, and the way to stop it. */
function Search() {
  const words = useWords().window.divide.plan;
  const fraction = useApp((state) => state.analysis?.planning ?? 0);
  return (
    <p className="working">
      <progress value={fraction} aria-label={words.looking} />
      <button type="button" onClick={() => analysis.stopPlan()}>
        {words.stop}
      </button>
    </p>
  );
}

function GoOn() {
  const words = useWords().window.divide.plan;
  return (
    <p className="buttons">
      <button type="button" onClick={() => analysis.goOnPlan()}>
        {words.goOn}
      </button>
    </p>
  );
}

/** Shown before the rest is asked for. */
const mostAtOnce = 3;

/** What is over a limit whatever switches are set: equal stretches in one line. */
function OverLimit({ plan }: { readonly plan: DividePlan }) {
  const { project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.divide.plan;
  if (plan.overLimit.length === 0) return null;
  const lines = overLimitInWords(project, plan.overLimit, f);
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
              {words.show}
            </button>
          )}
        </li>
      ))}
    </ul>
  );
  return (
    <div className="worked-out">
      <p className="field-problem">{words.overLimit}</p>
      {list(lines.slice(0, mostAtOnce))}
      {lines.length > mostAtOnce ? (
        <details>
          <summary>{words.more({ count: lines.length - mostAtOnce })}</summary>
          {list(lines.slice(mostAtOnce))}
        </details>
      ) : null}
      <p className="field-hint">{words.overLimitRemedy}</p>
    </div>
  );
}
