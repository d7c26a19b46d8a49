import { joinLines, whyNotJoinLines } from '../../../core/model/edits/joinLines.ts';
import type { Thing } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';

/** What can be done with several things at once. */
export function SeveralLines({ things }: { readonly things: readonly Thing[] }) {
  const { project } = useOpenFile();
  const f = useFigures();
  const { several, steps } = f.words.window.draw.details;
  const [first, second] = things;
  if (things.length !== 2 || first?.kind !== 'fenceLine' || second?.kind !== 'fenceLine') {
    return <p className="field-hint">{several.hint}</p>;
  }
  const pair = { lineId: first.id, otherId: second.id };
  const names = { name: first.name, other: second.name };
  const refusal = whyNotJoinLines(pair)(project);
  return (
    <>
      <button
        type="button"
        className="main"
        disabled={refusal !== null}
        onClick={() => void commit(steps.join(names), joinLines(pair), { choose: [first.id] })}
      >
        {several.join(names)}
      </button>
      {refusal ? <p className="field-hint">{f.say(refusal.message)}</p> : null}
    </>
  );
}
