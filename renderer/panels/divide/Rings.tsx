import { useMemo } from 'react';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import type { Project } from '../../../core/model/project.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { type RingAdvice, ringAdvice } from '../../../core/survey/ringAdvice.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { light } from '../../state/choose.ts';
import { commit } from '../../state/session.ts';

/** Rings: which switch should normally stand open, so that each section is fed one way, and what that does. */
export function Rings() {
  const { project, survey } = useOpenFile();
  const advice = useMemo(() => ringAdvice(survey), [survey]);
  const volts = useMemo(() => {
    if (!advice) return null;
    const power = powerOf(project, survey);
    const [now, opened] = [estimateOf(power).weakest, estimateOf(power, openThen(power.normallyOpen, advice)).weakest];
    return now && opened ? { now: formatVoltage(now.volts), opened: formatVoltage(opened.volts) } : null;
  }, [project, survey, advice]);
  if (!advice) return null;
  const names = (ids: readonly string[]) => ids.map((id) => project.switch.get(id)?.name ?? id).join(', ');
  const { ringSwitchIds, openIds, settled } = advice;
  const one = openIds.length === 1;
  return (
    <section className="plan" aria-label="Rings" onPointerEnter={() => light(openIds)} onPointerLeave={() => light([])}>
      <h2>Rings</h2>
      {settled ? (
        <p>
          {names(openIds)} {one ? 'stands' : 'stand'} open, so every section is fed one way. Closed,{' '}
          {one ? 'it brings' : 'they bring'} current from the other side while the first is worked on.
        </p>
      ) : (
        <>
          <p>
            {names(ringSwitchIds)} lie in rings: opening one alone cuts nothing off. With {names(openIds)} standing open
            every section is fed one way, the shortest, and a fault is found switch by switch.
          </p>
          {volts ? (
            <p>
              Weakest place: {volts.now} now, {volts.opened} then (estimates).
            </p>
          ) : null}
          <button type="button" onClick={() => void commit(`Stand ${names(openIds)} open`, standAs(advice))}>
            Stand {names(openIds)} open
          </button>
        </>
      )}
    </section>
  );
}

/** The advised switches open, the other ring switches closed. */
function standAs({ ringSwitchIds, openIds }: RingAdvice) {
  return (before: Project): Project =>
    [...new Set([...ringSwitchIds, ...openIds])].reduce((project, id) => {
      const normally = openIds.includes(id) ? ('open' as const) : ('closed' as const);
      return changeThing({ kind: 'switch', id, to: { normally } })(project);
    }, before);
}

function openThen(normallyOpen: ReadonlySet<string>, { ringSwitchIds, openIds }: RingAdvice): ReadonlySet<string> {
  const kept = [...normallyOpen].filter((id) => !ringSwitchIds.includes(id));
  return new Set([...kept, ...openIds]);
}
