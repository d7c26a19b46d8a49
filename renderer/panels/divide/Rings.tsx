import { useMemo } from 'react';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import type { Project } from '../../../core/model/project.ts';
import { estimateOf } from '../../../core/survey/power/estimateOf.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { type RingAdvice, ringAdvice } from '../../../core/survey/ringAdvice.ts';
import { useOpenFile } from '../../state/appState.ts';
import { light } from '../../state/choose.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';

/** Rings: which switch should normally stand open, so that each section is fed one way, and what that does. */
export function Rings() {
  const { project, survey } = useOpenFile();
  const words = useWords().window.divide.rings;
  const advice = useMemo(() => ringAdvice(survey), [survey]);
  const volts = useMemo(() => {
    if (!advice) return null;
    const power = powerOf(project, survey);
    const [now, opened] = [estimateOf(power).weakest, estimateOf(power, openThen(power.normallyOpen, advice)).weakest];
    return now && opened ? { nowV: now.volts, thenV: opened.volts } : null;
  }, [project, survey, advice]);
  if (!advice) return null;
  const names = (ids: readonly string[]) => ids.map((id) => project.switch.get(id)?.name ?? id);
  const { ringSwitchIds, openIds, settled } = advice;
  const leaveOff = words.leaveOff({ names: names(openIds) });
  return (
    <section
      className="plan"
      aria-label={words.title}
      onPointerEnter={() => light(openIds)}
      onPointerLeave={() => light([])}
    >
      <h2>{words.title}</h2>
      {settled ? (
        <p>{words.settled({ names: names(openIds) })}</p>
      ) : (
        <>
          <p>{words.advice({ inRings: names(ringSwitchIds), off: names(openIds) })}</p>
          {volts ? <p>{words.weakest(volts)}</p> : null}
          <button type="button" onClick={() => void commit(leaveOff, standAs(advice))}>
            {leaveOff}
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
