import { useEffect, useMemo, useState } from 'react';
import type { Preview, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import type { ReadingRoom } from '../../work/reading.ts';
import type { LineCounts } from '../../work/readingMessages.ts';
import { CheckField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import type { Treatment } from './treatment.ts';

/** How lines are tidied on the way in; a tolerance shows at once what it does. */
export function LineTreatment({
  preview,
  room,
  treatment,
  onChange,
}: {
  readonly preview: Preview;
  readonly room: ReadingRoom;
  readonly treatment: Treatment;
  readonly onChange: (treatment: Treatment) => void;
}) {
  const lines = useMemo(() => linesOf(preview), [preview]);
  const { simplifyM } = treatment;
  const counts = useCounts(room, simplifyM);
  if (lines.length === 0) return null;
  return (
    <>
      <div className="field-pair">
        <LengthField
          label="Simplify lines to within"
          hint={countsInWords(counts, simplifyM)}
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

/** Counted beside the window; undefined while that is being done, null where it could not be. */
function useCounts(room: ReadingRoom, simplifyM: number): LineCounts | null | undefined {
  const [counted, setCounted] = useState<{ readonly simplifyM: number; readonly counts: LineCounts | null }>();
  useEffect(() => {
    let isWanted = true;
    void room.count(simplifyM).then((counts) => {
      if (isWanted) setCounted({ simplifyM, counts });
    });
    return () => {
      isWanted = false;
    };
  }, [room, simplifyM]);
  return counted?.simplifyM === simplifyM ? counted.counts : undefined;
}

function countsInWords(counts: LineCounts | null | undefined, simplifyM: number): string {
  if (counts === undefined) return 'Counting the points …';
  if (counts === null) return 'The points could not be counted.';
  if (simplifyM > 0) return `${figure(counts.before)} points become ${figure(counts.after)}.`;
  return `${figure(counts.before)} points; 0 keeps them all.`;
}

function figure(count: number): string {
  return fixed(count, 0);
}
