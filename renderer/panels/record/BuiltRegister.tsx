import { useState } from 'react';
import { buildableKinds, builtMarkId } from '../../../core/model/recordDefaults.ts';
import type { BuildableThing, BuiltMark } from '../../../core/model/recordThings.ts';
import type { BuiltDifference } from '../../../core/record/differences.ts';
import { markBuilt } from '../../../core/record/edits/markBuilt.ts';
import { nameOf } from '../../../core/record/places.ts';
import { dateText, today } from '../../../core/words/dates.ts';
import { formatLength } from '../../../core/words/numbers/write.ts';
import { counted } from '../../../core/words/text.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { TextField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { DateField } from './DateField.tsx';
import { useRecord } from './useRecord.ts';

interface Row {
  readonly thing: BuildableThing;
  readonly name: string;
  readonly mark: BuiltMark | null;
}

const kindWords: Record<BuildableThing['kind'], string> = {
  fenceLine: 'fence',
  gateway: 'gateway',
  crossing: 'crossing',
  switch: 'switch',
  leadOut: 'lead-out',
  energiser: 'energiser',
  earthField: 'earth stakes',
};

/** What is built and what is still planned, and what was built otherwise than planned. */
export function BuiltRegister() {
  const { project } = useOpenFile();
  const { differences } = useRecord();
  const rows = buildableKinds.flatMap((kind) =>
    [...(project[kind].values() as Iterable<BuildableThing>)].map((thing): Row => {
      return { thing, name: nameOf(thing, project), mark: project.builtMark.get(builtMarkId(kind, thing.id)) ?? null };
    }),
  );
  return (
    <>
      <MarkChosen rows={rows} />
      <Differences differences={differences} />
      <Register<Row>
        caption="Planned and built"
        rows={rows}
        idOf={({ thing }) => (thing.kind === 'crossing' ? thing.gatewayId : thing.id)}
        empty="Nothing is drawn that could be built."
        columns={[
          { title: 'What', cell: ({ thing }) => kindWords[thing.kind], sortBy: ({ thing }) => thing.kind },
          { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
          { title: 'State', cell: ({ thing }) => thing.status, sortBy: ({ thing }) => thing.status },
          {
            title: 'Built on',
            cell: ({ mark }) => (mark?.date ? dateText(mark.date) : '-'),
            sortBy: ({ mark }) => mark?.date ?? '',
          },
          { title: 'By', cell: ({ mark }) => mark?.by || '-', sortBy: ({ mark }) => mark?.by ?? '' },
        ]}
      />
    </>
  );
}

/** Marks what is chosen, or everything that is still planned, in one step of undo. */
function MarkChosen({ rows }: { readonly rows: readonly Row[] }) {
  const { survey } = useOpenFile();
  const chosen = useApp((state) => state.chosen);
  const [date, setDate] = useState<string | null>(today);
  const [by, setBy] = useState('');
  const planned = rows.filter(({ thing }) => thing.status === 'planned');
  const picked = planned.filter(({ thing }) => chosen.includes(thing.kind === 'crossing' ? thing.gatewayId : thing.id));
  const mark = (which: readonly Row[]) =>
    void commit(
      `Mark ${counted(which.length, 'thing')} built`,
      markBuilt(
        which.map(({ thing: { kind, id } }) => ({ kind, id })),
        { date, by },
        survey,
      ),
    );
  return (
    <section className="block" aria-label="Mark built">
      <div className="field-pair">
        <DateField label="Built on" optional value={date} onCommit={setDate} />
        <TextField label="By" value={by} onCommit={setBy} />
      </div>
      <p className="buttons">
        <button type="button" className="main" disabled={picked.length === 0} onClick={() => mark(picked)}>
          Mark what is chosen built ({picked.length})
        </button>
        <button type="button" disabled={planned.length === 0} onClick={() => mark(planned)}>
          Mark all {planned.length} planned built
        </button>
      </p>
      <p className="field-hint">
        The plan is kept beside each: what is changed afterwards shows as a difference from it.
      </p>
    </section>
  );
}

function Differences({ differences }: { readonly differences: readonly BuiltDifference[] }) {
  const units = useUnits();
  return (
    <section className="block" aria-label="Built otherwise than planned">
      <h2>Built otherwise than planned</h2>
      <Register<BuiltDifference>
        caption="Differences from the plan"
        rows={differences}
        idOf={({ thing }) => (thing.kind === 'crossing' ? thing.gatewayId : thing.id)}
        empty="Everything that was marked built stands as it was planned."
        columns={[
          { title: 'What', cell: ({ name }) => name, sortBy: ({ name }) => name },
          {
            title: 'Moved',
            cell: ({ movedM }) => (movedM === 0 ? '-' : formatLength(movedM, units)),
            sortBy: ({ movedM }) => movedM,
            figures: true,
          },
          {
            title: 'Planned, now',
            cell: ({ changes }) =>
              changes.map(({ field, before, after }) => `${field} ${before}, now ${after}`).join('; ') || '-',
          },
        ]}
      />
    </section>
  );
}
