import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { findingMapId } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { choose, light } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { useStanding } from '../../state/useStanding.ts';
import { NotWorkedOut } from './WorkedOut.tsx';

const signs: Record<Finding['severity'], string> = { error: '✕', warning: '!', notKnown: '?', hint: '→' };
const order: readonly Finding['severity'][] = ['error', 'warning', 'notKnown', 'hint'];
/** Shown before the rest is asked for: what is wrong, or else the first of what remains. */
const mostWrongAtOnce = 3;

/** What the checks have to say, worst first, each with its fix. */
export function Findings({ findings, nothing }: { readonly findings: readonly Finding[]; readonly nothing: string }) {
  const { findings: words } = useWords().window.frame;
  const [all, setAll] = useState(false);
  const standing = useStanding('findings');
  const areThere = useApp((state) => state.analysis?.of.findings !== undefined);
  if (standing === 'failed') return <NotWorkedOut part="findings" what={words.what} />;
  if (!areThere) return <p className="register-empty">{words.checking}</p>;
  if (findings.length === 0) return <p className="findings-none">{nothing}</p>;
  const sorted = [...findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  const wrong = sorted.filter(({ severity }) => severity === 'error').length;
  const atOnce = Math.min(mostWrongAtOnce, Math.max(1, wrong));
  const visible = all ? sorted : sorted.slice(0, atOnce);
  return (
    <section className="findings" aria-label={words.section}>
      <ul>
        {visible.map((finding) => (
          <FindingItem key={finding.id} finding={finding} />
        ))}
      </ul>
      {sorted.length > atOnce ? (
        <button type="button" className="plain" onClick={() => setAll(!all)}>
          {all ? words.fewer : words.more({ counts: countsOf(sorted.slice(atOnce)) })}
        </button>
      ) : null}
    </section>
  );
}

/** How many there are of each sort that there is, the gravest first. */
function countsOf(findings: readonly Finding[]): [Finding['severity'], number][] {
  return order
    .map((severity): [Finding['severity'], number] => [
      severity,
      findings.filter((finding) => finding.severity === severity).length,
    ])
    .filter(([, count]) => count > 0);
}

function FindingItem({ finding }: { readonly finding: Finding }) {
  const [open, setOpen] = useState(false);
  const f = useFigures();
  const { findings: words, common } = f.words.window.frame;
  const name = words.signs[finding.severity];
  const show = () => {
    choose(finding.thingIds);
    mapView.zoomTo(finding.at ? findingMapId(finding) : (finding.thingIds[0] ?? findingMapId(finding)));
  };
  return (
    <li
      className={`finding ${finding.severity}`}
      onPointerEnter={() => light([findingMapId(finding), ...finding.thingIds])}
      onPointerLeave={() => light([])}
    >
      <span className="finding-sign" aria-hidden="true">
        {signs[finding.severity]}
      </span>
      <div>
        <p className={open ? undefined : 'finding-short'}>
          <strong>{words.labelled({ sign: name })} </strong>
          {f.say(finding.message)}
        </p>
        {open ? (
          <>
            <p className="finding-remedy">{f.say(finding.remedy)}</p>
            {finding.source ? (
              <p className="finding-source">{words.source({ source: f.say(finding.source) })}</p>
            ) : null}
          </>
        ) : null}
        <p className="finding-actions">
          {finding.fixes.map((fix) => (
            <button
              key={fix.label.code}
              type="button"
              className="fix"
              onClick={() =>
                void commit(f.say(fix.label), (project) => fix.edit(project, newId), { deleting: fix.deletes ?? false })
              }
            >
              {f.say(fix.label)}
            </button>
          ))}
          {finding.at || finding.thingIds.length > 0 ? (
            <button type="button" onClick={show}>
              {common.show}
            </button>
          ) : null}
          <button type="button" className="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? words.less : words.whatToDo}
          </button>
        </p>
      </div>
    </li>
  );
}
