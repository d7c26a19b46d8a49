import { useState } from 'react';
import { buildableKinds, builtMarkId } from '../../../core/model/recordDefaults.ts';
import type { BuildableThing, BuiltMark } from '../../../core/model/recordThings.ts';
import type { BuiltDifference } from '../../../core/record/differences.ts';
import { markBuilt } from '../../../core/record/edits/markBuilt.ts';
import { nameOf } from '../../../core/record/places.ts';
import { dateText, today } from '../../../core/words/dates.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { TextField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { DateField } from './DateField.tsx';
import { useRecord } from './useRecord.ts';

interface Row {
  readonly thing: BuildableThing;
  readonly name: string;
  readonly mark: BuiltMark | null;
}

/** What is built and what is still planned, and what was built otherwise than planned. */
export function BuiltRegister() {
  const { project } = useOpenFile();
  const { differences } = useRecord();
  const f = useFigures();
  const { built, fields } = f.words.window.record;
  const rows = buildableKinds.flatMap((kind) =>
    [...(project[kind].values() as Iterable<BuildableThing>)].map((thing): Row => {
      const mark = project.builtMark.get(builtMarkId(kind, thing.id)) ?? null;
      return { thing, name: f.say(nameOf(thing, project)), mark };
    }),
  );
  return (
    <>
      <MarkChosen rows={rows} />
      <Differences differences={differences} />
      <Register<Row>
        caption={built.title}
        rows={rows}
        idOf={({ thing }) => (thing.kind === 'crossing' ? thing.gatewayId : thing.id)}
        empty={built.empty}
        columns={[
          { title: built.what, cell: ({ thing }) => built.kinds[thing.kind], sortBy: ({ thing }) => thing.kind },
          { title: built.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
          { title: built.state, cell: ({ thing }) => built.states[thing.status], sortBy: ({ thing }) => thing.status },
          {
            title: built.builtOn,
            cell: ({ mark }) => (mark?.date ? dateText(mark.date) : '-'),
            sortBy: ({ mark }) => mark?.date ?? '',
          },
          { title: fields.by, cell: ({ mark }) => mark?.by || '-', sortBy: ({ mark }) => mark?.by ?? '' },
        ]}
      />
    </>
  );
}

/** Marks what is chosen, or everything that is still planned, in one step of undo. */
function MarkChosen({ rows }: { readonly rows: readonly Row[] }) {
  const { survey } = useOpenFile();
  const { built, fields } = useFigures().words.window.record;
  const chosen = useApp((state) => state.chosen);
  const [date, setDate] = useState<string | null>(today);
  const [by, setBy] = useState('');
  const planned = rows.filter(({ thing }) => thing.status === 'planned');
  const picked = planned.filter(({ thing }) => chosen.includes(thing.kind === 'crossing' ? thing.gatewayId : thing.id));
  const mark = (which: readonly Row[]) =>
    void commit(
      built.markMany({ count: which.length }),
      markBuilt(
        which.map(({ thing: { kind, id } }) => ({ kind, id })),
        { date, by },
        survey,
      ),
    );
  return (
    <section className="block" aria-label={built.markBuilt}>
      <div className="field-pair">
        <DateField label={built.builtOn} optional value={date} onCommit={setDate} />
        <TextField label={fields.by} value={by} onCommit={setBy} />
      </div>
      <p className="buttons">
        <button type="button" className="main" disabled={picked.length === 0} onClick={() => mark(picked)}>
          {built.markSelected({ count: picked.length })}
        </button>
        <button type="button" disabled={planned.length === 0} onClick={() => mark(planned)}>
          {built.markAll({ count: planned.length })}
        </button>
      </p>
      <p className="field-hint">{built.markHint}</p>
    </section>
  );
}

function Differences({ differences }: { readonly differences: readonly BuiltDifference[] }) {
  const f = useFigures();
  const { built } = f.words.window.record;
  return (
    <section className="block" aria-label={built.otherwise}>
      <h2>{built.otherwise}</h2>
      <Register<BuiltDifference>
        caption={built.differences}
        rows={differences}
        idOf={({ thing }) => (thing.kind === 'crossing' ? thing.gatewayId : thing.id)}
        empty={built.noDifferences}
        columns={[
          { title: built.what, cell: ({ name }) => f.say(name), sortBy: ({ name }) => f.say(name) },
          {
            title: built.howFar,
            cell: ({ movedM }) => (movedM === 0 ? '-' : f.length(movedM)),
            sortBy: ({ movedM }) => movedM,
            figures: true,
          },
          {
            title: built.plannedNow,
            cell: (difference) => f.words.record.allChanged(difference) || '-',
          },
        ]}
      />
    </section>
  );
}
