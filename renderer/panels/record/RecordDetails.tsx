import type { ReactNode } from 'react';
import { buildableKinds } from '../../../core/model/recordDefaults.ts';
import type { BuildableThing } from '../../../core/model/recordThings.ts';
import type { Kind, Thing } from '../../../core/model/things.ts';
import { BuiltBlock } from './BuiltBlock.tsx';
import { CrossingRecordDetails } from './CrossingRecordDetails.tsx';
import { ReadingRecord } from './ReadingRecord.tsx';

/** What Record shows of the chosen thing; `others` where it has nothing of its own to say. */
export function RecordDetails({ thing, others }: { readonly thing: Thing; readonly others: ReactNode }) {
  if (thing.kind === 'gateway') return <CrossingRecordDetails key={thing.id} gateway={thing} />;
  if (thing.kind === 'reading') {
    return (
      <>
        {others}
        <ReadingRecord reading={thing} />
      </>
    );
  }
  if (!isBuildable(thing)) return others;
  return (
    <>
      <BuiltBlock thing={thing} />
      {others}
    </>
  );
}

function isBuildable(thing: Thing): thing is BuildableThing {
  return (buildableKinds as readonly Kind[]).includes(thing.kind);
}
