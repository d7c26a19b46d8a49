import { useState } from 'react';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { lengthBoundsOf } from '../../../core/kinds/form.ts';
import { tieFields } from '../../../core/kinds/trench.ts';
import { type FixedPost, fixedPosts, postOfTie, tieFromKey } from '../../../core/locate/tieFrom.ts';
import { postThen } from '../../../core/locate/tieWords.ts';
import { usualTapeSeM } from '../../../core/model/recordDefaults.ts';
import type { TapeTie } from '../../../core/model/recordThings.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { light, say } from '../../state/choose.ts';
import { useFigures } from '../../state/useFigures.ts';
import { useUnits } from '../../state/useUnits.ts';
import { LengthField } from '../parts/LengthField.tsx';

/** Posts further off than this are not offered: no tape reaches so far (common practice, no source). */
const offeredM = 60;

/** Posts near a place, the nearest first. */
export function usePostsNear(at: Xy): readonly FixedPost[] {
  const { project, survey } = useOpenFile();
  return fixedPosts(project, survey)
    .filter(({ xy }) => xyDistanceM(xy, at) <= offeredM)
    .sort((a, b) => xyDistanceM(a.xy, at) - xyDistanceM(b.xy, at));
}

/** The thing on the map that a post belongs to. */
export function postMapId({ from }: FixedPost): string {
  return from.on === 'post' ? from.postId : from.gatewayId;
}

/** The tapes of one point: those that there are, and room for one more. */
export function TieEntry({
  ties,
  near,
  onChange,
}: {
  readonly ties: readonly TapeTie[];
  readonly near: Xy;
  readonly onChange: (ties: readonly TapeTie[], label: string) => void;
}) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const units = useUnits();
  const posts = usePostsNear(near);
  const stood = ties.map((tie) => postOfTie(tie, project, survey));
  const set = (i: number, tie: TapeTie) => onChange(ties.with(i, tie), 'Change a tie');
  return (
    <>
      <ul className="ties">
        {ties.map((tie, i) => (
          <li key={tieFromKey(tie.from)}>
            <p className="tie-post">
              <strong>{f.say(postThen(stood[i]!))}</strong>
              <button
                type="button"
                aria-label={`Remove the tie from ${tie.postName}`}
                onClick={() => onChange(ties.toSpliced(i, 1), 'Remove a tie')}
              >
                Remove
              </button>
            </p>
            {stood[i]!.gone || stood[i]!.movedM > 0 ? (
              <p className="field-hint">
                This tape counts from where the post stood. If you tape it anew, remove this one first.
              </p>
            ) : null}
            <div className="field-pair">
              <LengthField
                label="Tape"
                valueM={tie.distanceM}
                {...lengthBoundsOf(tieFields.distanceM)}
                onCommitM={(distanceM) => {
                  if (distanceM !== null) set(i, { ...tie, distanceM });
                }}
              />
              <LengthField
                label="Sure to"
                valueM={tie.seM}
                {...lengthBoundsOf(tieFields.seM)}
                onCommitM={(seM) => {
                  if (seM !== null) set(i, { ...tie, seM });
                }}
              />
            </div>
          </li>
        ))}
      </ul>
      <NewTie
        posts={posts.filter(({ key }) => !ties.some(({ from }) => tieFromKey(from) === key))}
        near={near}
        onAdd={(tie) => onChange([...ties, tie], `Tie from ${tie.postName}, ${formatTape(tie.distanceM, units)}`)}
      />
    </>
  );
}

function NewTie({
  posts,
  near,
  onAdd,
}: {
  readonly posts: readonly FixedPost[];
  readonly near: Xy;
  readonly onAdd: (tie: TapeTie) => void;
}) {
  const f = useFigures();
  const units = useUnits();
  const [key, setKey] = useState<string | null>(null);
  const post = posts.find((each) => each.key === key) ?? posts[0];
  if (!post) {
    return (
      <p className="field-hint">
        No further post within reach of a tape. Mark one in Draw: a corner of a shed will do.
      </p>
    );
  }
  const add = (distanceM: number | null) => {
    if (distanceM === null) return;
    const farM = xyDistanceM(post.xy, near);
    if (distanceM > 10 * Math.max(1, farM))
      say(`${f.say(post.name)} is drawn ${formatTape(farM, units)} away: check the tape.`, 'refused');
    onAdd({ from: post.from, postName: f.say(post.name), postAt: post.at, distanceM, seM: usualTapeSeM });
    setKey(null);
  };
  return (
    <div className="new-tie">
      <div className="field">
        <label htmlFor="tie-post">Tape from</label>
        <select
          id="tie-post"
          value={post.key}
          onChange={(event) => setKey(event.target.value)}
          onFocus={() => light([postMapId(post)])}
          onBlur={() => light([])}
        >
          {posts.map((each) => (
            <option key={each.key} value={each.key}>
              {f.say(each.name)} ({formatTape(xyDistanceM(each.xy, near), units)} as drawn)
            </option>
          ))}
        </select>
      </div>
      <LengthField
        key={post.key}
        label="Tape reads"
        valueM={null}
        optional
        {...lengthBoundsOf(tieFields.distanceM)}
        hint="Enter adds it."
        onCommitM={add}
      />
    </div>
  );
}
