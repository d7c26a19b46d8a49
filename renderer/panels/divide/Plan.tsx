import { acceptPlan } from '../../../core/model/edits/acceptPlan.ts';
import { fixed, formatLength } from '../../../core/model/formatUnits.ts';
import { changeInWords } from '../../../core/registers/sentences.ts';
import { candidateMapId } from '../../map/mapTypes.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { light } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';

/** What the plan suggests beside what is drawn, and the button that takes it. */
export function Plan() {
  const plan = useApp((state) => state.backroom?.plan ?? null);
  const { project } = useOpenFile();
  const units = useUnits();
  if (!plan) return null;
  const { missing, surplus } = plan;
  const settled = missing.length === 0 && surplus.length === 0;
  const ids = [...missing.map(candidateMapId), ...surplus];
  const names = surplus.map((id) => project.switch.get(id)?.name ?? id);
  return (
    <section className="plan" aria-label="The plan" onPointerEnter={() => light(ids)} onPointerLeave={() => light([])}>
      <h2>The plan</h2>
      {settled ? (
        <p>The switches as drawn are the plan: no cheaper set keeps every section within the limit.</p>
      ) : (
        <ul className="plan-steps">
          {missing.length > 0 ? (
            <li>
              Add {missing.length} {missing.length === 1 ? 'switch' : 'switches'}: hollow signs on the map.
            </li>
          ) : null}
          {surplus.length > 0 ? (
            <li>Leave out {names.join(', ')}: the plan does without. Pin a switch to keep it.</li>
          ) : null}
        </ul>
      )}
      <dl className="plan-figures">
        <div>
          <dt>Sections</dt>
          <dd>{plan.sections.length}</dd>
        </div>
        <div>
          <dt>Longest</dt>
          <dd>{formatLength(plan.longestSectionM, units)}</dd>
        </div>
        <div>
          <dt title="In switches at a gateway">Cost, relative</dt>
          <dd>{fixed(plan.cost, 1)}</dd>
        </div>
      </dl>
      <p className="field-hint">
        {plan.optimal
          ? 'Proven: no set of switches costs less within these limits.'
          : `Not proven cheapest. No plan can cost less than ${fixed(plan.costBound, 1)}: this one is at most ${fixed(plan.cost - plan.costBound, 1)} above.`}
      </p>
      {plan.tooLong.map((run) => (
        <p key={`${run.lineId}-${run.at.join()}`} className="field-problem">
          A run of {project.fenceLine.get(run.lineId)?.name ?? 'a fence'} is {formatLength(run.lengthM, units)} long and
          has no place for a switch. Mark a strainer on it, or add a place.
        </p>
      ))}
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
          onClick={() => void commit('Take the plan', acceptPlan({ missing, surplus }, newId))}
        >
          Take the plan
        </button>
      )}
    </section>
  );
}
