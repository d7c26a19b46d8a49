import { useState } from 'react';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { lengthBoundsOf } from '../../../core/kinds/form.ts';
import { tieFields } from '../../../core/kinds/trench.ts';
import { type FixedPost, fixedPosts, postOfTie, tieFromKey } from '../../../core/locate/tieFrom.ts';
import { postThen } from '../../../core/locate/tieWords.ts';
import { usualTapeSeM } from '../../../core/model/recordDefaults.ts';
import type { TapeTie } from '../../../core/model/recordThings.ts';
import { useOpenFile } from '../../state/appState.ts';
import { light, say } from '../../state/choose.ts';
import { useFigures } from '../../state/useFigures.ts';
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

/** What Undo calls an edit of a point. */
export type Step = (edited: { readonly where: string }) => string;

/** The tapes of one point: those that there are, and room for one more. */
export function TieEntry({
  ties,
  near,
  onChange,
}: {
  readonly ties: readonly TapeTie[];
  readonly near: Xy;
  readonly onChange: (ties: readonly TapeTie[], step: Step) => void;
}) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { ties: words, edits, error } = f.words.window.record.point;
  const posts = usePostsNear(near);
  const stood = ties.map((tie) => postOfTie(tie, project, survey));
  const set = (i: number, tie: TapeTie) => onChange(ties.with(i, tie), edits.changeTie);
  return (
    <>
      <ul className="ties">
        {ties.map((tie, i) => (
          <li key={tieFromKey(tie.from)}>
            <p className="tie-post">
              <strong>{f.say(postThen(stood[i]!))}</strong>
              <button
                type="button"
                aria-label={words.removeFrom({ post: tie.postName })}
                onClick={() => onChange(ties.toSpliced(i, 1), edits.removeTie)}
              >
                {words.remove}
              </button>
            </p>
            {stood[i]!.gone || stood[i]!.movedM > 0 ? <p className="field-hint">{words.postMoved}</p> : null}
            <div className="field-pair">
              <LengthField
                label={words.tape}
                valueM={tie.distanceM}
                {...lengthBoundsOf(tieFields.distanceM)}
                onCommitM={(distanceM) => {
                  if (distanceM !== null) set(i, { ...tie, distanceM });
                }}
              />
              <LengthField
                label={error}
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
        onAdd={(tie) =>
          onChange([...ties, tie], ({ where }) => edits.tie({ where, post: tie.postName, distanceM: tie.distanceM }))
        }
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
  const words = f.words.window.record.point.ties;
  const [key, setKey] = useState<string | null>(null);
  const post = posts.find((each) => each.key === key) ?? posts[0];
  if (!post) {
    return <p className="field-hint">{words.noPost}</p>;
  }
  const add = (distanceM: number | null) => {
    if (distanceM === null) return;
    const farM = xyDistanceM(post.xy, near);
    if (distanceM > 10 * Math.max(1, farM)) say(words.checkTape({ post: f.say(post.name), awayM: farM }), 'refused');
    onAdd({ from: post.from, postName: f.say(post.name), postAt: post.at, distanceM, seM: usualTapeSeM });
    setKey(null);
  };
  return (
    <div className="new-tie">
      <div className="field">
        <label htmlFor="tie-post">{words.tapeFrom}</label>
        <select
          id="tie-post"
          value={post.key}
          onChange={(event) => setKey(event.target.value)}
          onFocus={() => light([postMapId(post)])}
          onBlur={() => light([])}
        >
          {posts.map((each) => (
            <option key={each.key} value={each.key}>
              {words.asDrawn({ post: f.say(each.name), awayM: xyDistanceM(each.xy, near) })}
            </option>
          ))}
        </select>
      </div>
      <LengthField
        key={post.key}
        label={words.reads}
        valueM={null}
        optional
        {...lengthBoundsOf(tieFields.distanceM)}
        hint={words.enterAdds}
        onCommitM={add}
      />
    </div>
  );
}
