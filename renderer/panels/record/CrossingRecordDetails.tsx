import { useState } from 'react';
import { cablesNamed } from '../../../core/electrical/conductors/otherCables.ts';
import { orNone } from '../../../core/kinds/fields.ts';
import { measuredDepth } from '../../../core/kinds/trench.ts';
import { postSide, sideOfOpening } from '../../../core/locate/compass.ts';
import { type CrossingAsBuilt, crossingAsBuilt } from '../../../core/locate/crossingAsBuilt.ts';
import { type CrossingSource, crossingSource } from '../../../core/locate/crossingSource.ts';
import { depthOf } from '../../../core/locate/depth.ts';
import { depthInWords, leftOutInWords } from '../../../core/locate/depthWords.ts';
import { footLabel, labelOf } from '../../../core/locate/ties.ts';
import { largestOf } from '../../../core/model/extremes.ts';
import { newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint, BuriedRole, CrossingRecord } from '../../../core/model/recordThings.ts';
import type { Crossing, Gateway } from '../../../core/model/things.ts';
import { recordCrossing } from '../../../core/record/edits/recordCrossing.ts';
import type { GatewayShape } from '../../../core/shapes/types.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { capital, counted } from '../../../core/words/text.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { useUnits } from '../../state/useUnits.ts';
import { CableField } from '../draw/CableField.tsx';
import { Caution } from '../parts/Caution.tsx';
import { SelectField, TextField } from '../parts/fields.tsx';
import { DescribedField, KindField } from '../parts/KindField.tsx';
import { BuiltBlock } from './BuiltBlock.tsx';
import { DateField } from './DateField.tsx';
import { Photos } from './Photos.tsx';
import { PointDetails } from './PointDetails.tsx';
import { TrackField } from './TrackField.tsx';

const parts = [
  { name: 'points', label: 'Where it lies' },
  { name: 'depths', label: 'Depths' },
  { name: 'trench', label: 'Trench and cable' },
  { name: 'photos', label: 'Photos' },
  { name: 'built', label: 'Built' },
] as const;

/** All that is recorded of the crossing at a gateway. */
export function CrossingRecordDetails({ gateway }: { readonly gateway: Gateway }) {
  const { project, survey } = useOpenFile();
  const [open, setOpen] = useState<(typeof parts)[number]['name']>('points');
  const source = crossingSource(project, survey, gateway.id);
  if (!source) {
    return <p className="register-empty">No buried crossing is drawn at {gateway.name}, so there is none to record.</p>;
  }
  const built = crossingAsBuilt(source);
  const { crossing } = built.figures;
  const record = built.record ?? newCrossingRecord(crossing.id);
  const what = `the crossing at ${gateway.name}`;
  const set = (label: string, to: Partial<Omit<CrossingRecord, 'kind' | 'id' | 'crossingId'>>) =>
    void commit(`${label}: ${what}`, recordCrossing(crossing.id, to), { recording: true });
  return (
    <>
      <nav className="register-choice" aria-label="Parts of the record">
        {parts.map(({ name, label }) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => setOpen(name)}>
            {label}
          </button>
        ))}
      </nav>
      {open === 'points' ? <Points source={source} built={built} record={record} set={set} /> : null}
      {open === 'depths' ? <Depths built={built} record={record} set={set} /> : null}
      {open === 'trench' ? (
        <Trench crossing={crossing} shape={built.shape} record={record} set={set} what={what} />
      ) : null}
      {open === 'photos' ? <Photos of={{ kind: 'crossing', id: crossing.id }} what={what} /> : null}
      {open === 'built' ? (
        <>
          <BuiltBlock thing={crossing} />
          <BuiltBlock thing={gateway} />
        </>
      ) : null}
    </>
  );
}

interface PartProps {
  readonly built: CrossingAsBuilt;
  readonly record: CrossingRecord;
  readonly set: (label: string, to: Partial<Omit<CrossingRecord, 'kind' | 'id' | 'crossingId'>>) => void;
}

function Points({ source, built, record, set }: PartProps & { readonly source: CrossingSource }) {
  const f = useFigures();
  const { figures, shape, points, placed } = source;
  const one = (role: BuriedRole) => points.find((point) => point.role === role) ?? null;
  const more = points.filter(({ role }) => role === 'point');
  const nextRank = 1 + Math.max(0, largestOf(points.map(({ rank }) => rank)));
  const choices = [
    { key: 'startFoot', role: 'startFoot', point: one('startFoot'), label: capital(f.say(footLabel(shape, 'start'))) },
    { key: 'bend', role: 'bend', point: one('bend'), label: 'Bend' },
    ...more.map((point) => ({ key: point.id, role: 'point', point, label: f.say(labelOf(point, shape)) }) as const),
    { key: 'new', role: 'point', point: null, label: 'A further point' },
    { key: 'endFoot', role: 'endFoot', point: one('endFoot'), label: capital(f.say(footLabel(shape, 'end'))) },
  ] as const;
  const [key, setKey] = useState<string>('startFoot');
  const chosen = choices.find((choice) => choice.key === key) ?? choices[0];
  return (
    <section className="block" aria-label="Where it lies">
      <SelectField
        label="Point"
        value={chosen.key}
        choices={choices.map(({ key: value, label, point }) => ({
          value,
          label: point ? `${label}${toldOf(point, built)}` : label,
        }))}
        onCommit={setKey}
      />
      <PointDetails
        key={`${figures.crossing.id} ${chosen.key}`}
        source={source}
        role={chosen.role}
        point={chosen.point}
        rank={chosen.role === 'point' ? nextRank : 0}
        onMade={(id) => {
          if (chosen.role === 'point') setKey(id);
        }}
      />
      <SelectField<CrossingRecord['route']>
        label="The trench runs"
        value={record.route}
        choices={[
          { value: 'arc', label: 'in an arc from foot to foot' },
          { value: 'points', label: 'straight from point to point' },
        ]}
        onCommit={(route) => set('Say how the trench runs', { route })}
      />
      {record.route === 'arc' ? <MeasuredBow built={built} /> : null}
      {placed ? <TrackField figures={figures} shape={shape} /> : null}
    </section>
  );
}

/** What the list of points says of one that something was measured of. */
function toldOf({ id, ties }: BuriedPoint, { points }: CrossingAsBuilt): string {
  const basis = points.find(({ point }) => point.id === id)?.basis;
  if (basis === 'ambiguous') return ': side not said';
  if (basis === 'contradictory') return ': tapes do not meet';
  return ties.length === 0 ? '' : `: ${counted(ties.length, 'tie')}`;
}

/** The bow as taped from the middle of the opening: it is the crossing's own. */
function MeasuredBow({ built: { figures, shape, points } }: { readonly built: CrossingAsBuilt }) {
  const { crossing, gateway } = figures;
  const { compass } = useWords().things;
  if (points.some(({ point, places }) => point.role === 'bend' && places.length > 0)) {
    return <p className="field-hint">The arc runs through the bend as it was measured.</p>;
  }
  const set = (label: string, patch: Partial<Crossing>) =>
    change(`${label}: crossing at ${gateway.name}`, 'crossing', crossing.id, patch, { recording: true });
  return (
    <div className="field-pair">
      <KindField
        thing={crossing}
        field="bowM"
        step={`Measure the bow: crossing at ${gateway.name}`}
        options={{ recording: true }}
        label="Curve: most off the straight, as measured"
        placeholderM={figures.bowM}
        hint={figures.bowAssumed ? 'Not measured: a share of the width is assumed.' : 'From the middle of the opening.'}
      />
      <SelectField
        label="It curves to the"
        value={crossing.bowSide}
        choices={[
          { value: 'left', label: compass[sideOfOpening(shape, 1)] },
          { value: 'right', label: compass[sideOfOpening(shape, -1)] },
        ]}
        onCommit={(bowSide) => set('Change the side of the bow', { bowSide })}
      />
    </div>
  );
}

function Depths({ built, record, set }: PartProps) {
  const said = useWords().kinds.crossingRecord.depths.fields;
  const units = useUnits();
  const { depths } = record;
  const known = depthOf(built);
  const f = useFigures();
  const leftOut = leftOutInWords(known, built.lengthM);
  const [alongM, setAlongM] = useState<number | null>(null);
  const add = (depthM: number | null) => {
    if (depthM === null) return;
    const at =
      alongM ?? (depths.length === 0 ? 0 : Math.min(built.lengthM, (depths.at(-1)?.alongM ?? 0) + built.lengthM / 2));
    set('Measure a depth', { depths: [...depths, { alongM: at, depthM }].sort((a, b) => a.alongM - b.alongM) });
    setAlongM(null);
  };
  return (
    <section className="block" aria-label="Depths">
      <p className="field-hint">
        The trench is {formatTape(built.lengthM, units)} long and planned{' '}
        {formatTape(built.figures.crossing.depthM, units)} deep. Measure from the ground to the top of the pipe, along
        the trench from the riser at the {f.words.things.compass[postSide(built.shape, 'start')]} post. So far:{' '}
        {f.say(depthInWords(known))}.
      </p>
      {leftOut ? <Caution>{f.say(leftOut)}</Caution> : null}
      <ul className="ties">
        {depths.map((depth, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: depths have no other name than their order
          <li key={i} className="field-pair">
            <DescribedField
              words={said.alongM}
              field={measuredDepth.alongM}
              value={depth.alongM}
              onCommit={(next) => set('Move a depth', { depths: depths.with(i, { ...depth, alongM: next }) })}
            />
            <DescribedField
              words={said.depthM}
              field={measuredDepth.depthM}
              value={depth.depthM}
              onCommit={(next) => set('Change a depth', { depths: depths.with(i, { ...depth, depthM: next }) })}
            />
            <button
              type="button"
              aria-label={`Remove the depth at ${formatTape(depth.alongM, units)}`}
              onClick={() => set('Remove a depth', { depths: depths.toSpliced(i, 1) })}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <div className="field-pair new-tie">
        <DescribedField<number | null>
          words={said.alongM}
          field={orNone(measuredDepth.alongM)}
          label="Along the trench"
          value={alongM}
          hint={`Empty: ${depths.length === 0 ? 'at the start' : 'half a trench on'}.`}
          onCommit={setAlongM}
        />
        <DescribedField<number | null>
          key={depths.length}
          words={said.depthM}
          field={orNone(measuredDepth.depthM)}
          label="Depth there"
          value={null}
          hint="Enter adds it."
          onCommit={add}
        />
      </div>
    </section>
  );
}

function Trench({
  crossing,
  shape,
  record,
  set,
  what,
}: Omit<PartProps, 'built'> & {
  readonly crossing: Crossing;
  readonly shape: GatewayShape;
  readonly what: string;
}) {
  const setCrossing = (label: string, patch: Partial<Crossing>) =>
    change(`${label}: ${what}`, 'crossing', crossing.id, patch, { recording: true });
  const joints = record.jointsUnderground;
  const { compass } = useWords().things;
  const text = (label: string, key: 'alsoInTrench' | 'soil' | 'recordedBy' | 'note' | 'jointsNote', long = false) => (
    <TextField
      label={label}
      value={record[key]}
      long={long}
      onCommit={(value) => set(`Write ${label.toLowerCase()}`, { [key]: value })}
    />
  );
  return (
    <section className="block" aria-label="Trench and cable">
      <KindField
        thing={crossing}
        field="pipeBoreMm"
        step={`Write the pipe bore: ${what}`}
        options={{ recording: true }}
      />
      <CableField
        label="Live cable"
        cableId={crossing.cableId}
        inGround={false}
        onCommit={(cableId) => setCrossing('Write the cable', { cableId })}
      />
      <KindField
        thing={record}
        field="jointsUnderground"
        onCommit={(jointsUnderground) => set('Count the joints', { jointsUnderground })}
      />
      {joints !== null && joints > 0 ? (
        <>
          <Caution>
            A joint underground is where water gets in and the fence leaks, years later and out of sight. Run one
            unbroken cable instead, if the trench is still open.
          </Caution>
          {text('Where and how they are joined', 'jointsNote')}
        </>
      ) : null}
      <KindField thing={crossing} field="sealed" step={`Note the seals: ${what}`} options={{ recording: true }} />
      <div className="field-pair">
        <TextField
          label={`${capital(compass[postSide(shape, 'start')])} riser is on`}
          value={record.risers.start}
          onCommit={(start) => set('Write the start riser', { risers: { ...record.risers, start } })}
        />
        <TextField
          label={`${capital(compass[postSide(shape, 'end')])} riser is on`}
          value={record.risers.end}
          onCommit={(end) => set('Write the end riser', { risers: { ...record.risers, end } })}
        />
      </div>
      {text('Also in the trench', 'alsoInTrench')}
      <AlsoInTrench note={record.alsoInTrench} />
      {text('Soil', 'soil')}
      <div className="field-pair">
        {text('Recorded by', 'recordedBy')}
        <DateField
          label="Recorded on"
          value={record.recordedOn}
          optional
          onCommit={(recordedOn) => set('Date the record', { recordedOn })}
        />
      </div>
      {text('Notes', 'note', true)}
    </section>
  );
}

/** What may not lie in one conduit with the live cable, said louder where the note names such a cable. */
function AlsoInTrench({ note }: { readonly note: string }) {
  const named = cablesNamed(note);
  const { oneConduit } = useWords().power.conductors;
  if (!named) return <p className="field-hint">{oneConduit}</p>;
  const how = {
    same: 'It lies in one conduit with the live cable, which is forbidden: give the live cable one of its own.',
    own: 'It has a conduit of its own.',
    notSaid: 'Has it a conduit of its own? Write it down: “in its own conduit”.',
  };
  return (
    <Caution>
      Another cable is named here ({named.words.join(', ')}). {how[named.conduit]} {oneConduit}
    </Caution>
  );
}
