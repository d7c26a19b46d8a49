import { joinLines, whyNotJoinLines } from '../../../core/model/edits/joinLines.ts';
import type { Thing } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { figuresOf } from '../../state/useFigures.ts';

/** What can be done with several things at once. */
export function SeveralLines({ things }: { readonly things: readonly Thing[] }) {
  const { project } = useOpenFile();
  const f = figuresOf(project);
  const [first, second] = things;
  if (things.length !== 2 || first?.kind !== 'fenceLine' || second?.kind !== 'fenceLine') {
    return <p className="field-hint">Choose two fence lines to join them into one, or one thing to see its details.</p>;
  }
  const pair = { lineId: first.id, otherId: second.id };
  const refusal = whyNotJoinLines(pair)(project);
  return (
    <>
      <button
        type="button"
        className="main"
        disabled={refusal !== null}
        onClick={() => void commit(`Join ${first.name} and ${second.name}`, joinLines(pair), { choose: [first.id] })}
      >
        Join {first.name} and {second.name} into one line
      </button>
      {refusal ? <p className="field-hint">{f.say(refusal.message)}</p> : null}
    </>
  );
}
