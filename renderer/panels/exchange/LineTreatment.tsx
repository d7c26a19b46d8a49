import { useEffect, useMemo, useState } from 'react';
import type { Preview, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useWords } from '../../state/useFigures.ts';
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
  const words = useWords().window.exchange.importing;
  const lines = useMemo(() => linesOf(preview), [preview]);
  const { simplifyM } = treatment;
  const counts = useCounts(room, simplifyM);
  if (lines.length === 0) return null;
  return (
    <>
      <div className="field-pair">
        <LengthField
          label={words.simplify}
          hint={countsInWords(counts, simplifyM, words)}
          valueM={simplifyM}
          maxM={100}
          onCommitM={(toleranceM) => onChange({ ...treatment, simplifyM: toleranceM ?? 0 })}
        />
        <LengthField
          label={words.joinEnds}
          hint={words.joinEndsHint}
          valueM={treatment.snapEndsM}
          maxM={50}
          onCommitM={(snapEndsM) => onChange({ ...treatment, snapEndsM: snapEndsM ?? 0 })}
        />
      </div>
      {lines.some(({ heightsM }) => heightsM) ? (
        <CheckField
          label={words.keepHeights}
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

function countsInWords(
  counts: LineCounts | null | undefined,
  simplifyM: number,
  words: Texts['window']['exchange']['importing'],
): string {
  if (counts === undefined) return words.counting;
  if (counts === null) return words.notCounted;
  return simplifyM > 0 ? words.simplified(counts) : words.allPoints({ points: counts.before });
}
