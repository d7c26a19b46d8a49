import { useMemo } from 'react';
import { simplifiedPath } from '../../../core/exchange/intake/simplifiedPath.ts';
import { middleOf } from '../../../core/exchange/preview/bounds.ts';
import type { Preview, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { CheckField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Treatment } from './treatment.ts';

/** How lines are tidied on the way in; a tolerance shows at once what it does. */
export function LineTreatment({
  preview,
  treatment,
  onChange,
}: {
  readonly preview: Preview;
  readonly treatment: Treatment;
  readonly onChange: (treatment: Treatment) => void;
}) {
  const lines = useMemo(() => linesOf(preview), [preview]);
  const { simplifyM } = treatment;
  const counts = useMemo(() => countsOf(lines, simplifyM, preview.bounds), [lines, simplifyM, preview.bounds]);
  if (lines.length === 0) return null;
  return (
    <>
      <div className="field-pair">
        <LengthField
          label="Simplify lines to within"
          hint={
            simplifyM > 0
              ? `${figure(counts.before)} points become ${figure(counts.after)}.`
              : `${figure(counts.before)} points; 0 keeps them all.`
          }
          valueM={simplifyM}
          maxM={100}
          onCommitM={(toleranceM) => onChange({ ...treatment, simplifyM: toleranceM ?? 0 })}
        />
        <LengthField
          label="Move ends onto a fence within"
          hint="Ends of new fences go to a post, end or fence that near; 0 leaves them."
          valueM={treatment.snapEndsM}
          maxM={50}
          onCommitM={(snapEndsM) => onChange({ ...treatment, snapEndsM: snapEndsM ?? 0 })}
        />
      </div>
      {lines.some(({ heightsM }) => heightsM) ? (
        <CheckField
          label="Keep the heights, for lengths over the ground"
          value={treatment.keepHeights}
          onCommit={(keepHeights) => onChange({ ...treatment, keepHeights })}
        />
      ) : null}
    </>
  );
}

function linesOf({ features }: Preview): PreviewFeature[] {
  return features.filter(({ ours, shape }) => !ours && (shape === 'line' || shape === 'outline'));
}

function countsOf(lines: readonly PreviewFeature[], toleranceM: number, bounds: Preview['bounds']) {
  const origin = bounds ? middleOf(bounds) : ([0, 0] as const);
  let [before, after] = [0, 0];
  for (const { path } of lines) {
    before += path.length;
    after += simplifiedPath(path, toleranceM, origin).length;
  }
  return { before, after };
}

function figure(count: number): string {
  return count.toLocaleString('en');
}
