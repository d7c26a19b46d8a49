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
import type { Crossing, Gateway, LineEnd } from '../../../core/model/things.ts';
import { recordCrossing } from '../../../core/record/edits/recordCrossing.ts';
import type { GatewayShape } from '../../../core/shapes/types.ts';
import type { Texts } from '../../../core/words/message.ts';
import { capital } from '../../../core/words/text.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { CableField } from '../draw/CableField.tsx';
import { Caution } from '../parts/Caution.tsx';
import { SelectField, TextField } from '../parts/fields.tsx';
import { DescribedField, KindField } from '../parts/KindField.tsx';
import { BuiltBlock } from './BuiltBlock.tsx';
import { DateField } from './DateField.tsx';
import { Photos } from './Photos.tsx';
import { PointDetails } from './PointDetails.tsx';
import { TrackField } from './TrackField.tsx';

const parts = ['points', 'depths', 'trench', 'photos', 'built'] as const;

/** What Undo calls an edit of a crossing's record. */
type Step = (at: { readonly gateway: string }) => string;

/** All that is recorded of the crossing at a gateway. */
export function CrossingRecordDetails({ gateway }: { readonly gateway: Gateway }) {
  const { project, survey } = useOpenFile();
  const words = useWords().window.record.crossing;
  const [open, setOpen] = useState<(typeof parts)[number]>('points');
  const source = crossingSource(project, survey, gateway.id);
  if (!source) {
    return <p className="register-empty">{words.none({ gateway: gateway.name })}</p>;
  }
  const built = crossingAsBuilt(source);
  const { crossing } = built.figures;
  const record = built.record ?? newCrossingRecord(crossing.id);
  const at = { gateway: gateway.name };
  const set = (step: Step, to: Partial<Omit<CrossingRecord, 'kind' | 'id' | 'crossingId'>>) =>
    void commit(step(at), recordCrossing(crossing.id, to), { recording: true });
  return (
    <>
      <nav className="register-choice" aria-label={words.parts.title}>
        {parts.map((name) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => setOpen(name)}>
            {words.parts[name]}
          </button>
        ))}
      </nav>
      {open === 'points' ? <Points source={source} built={built} record={record} set={set} /> : null}
      {open === 'depths' ? <Depths built={built} record={record} set={set} /> : null}
      {open === 'trench' ? (
        <Trench crossing={crossing} shape={built.shape} record={record} set={set} gateway={gateway} />
      ) : null}
      {open === 'photos' ? <Photos of={{ kind: 'crossing', id: crossing.id }} what={words.named(at)} /> : null}
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
  readonly set: (step: Step, to: Partial<Omit<CrossingRecord, 'kind' | 'id' | 'crossingId'>>) => void;
}

function Points({ source, built, record, set }: PartProps & { readonly source: CrossingSource }) {
  const f = useFigures();
  const words = f.words.window.record.crossing;
  const { figures, shape, points, placed } = source;
  const one = (role: BuriedRole) => points.find((point) => point.role === role) ?? null;
  const more = points.filter(({ role }) => role === 'point');
  const nextRank = 1 + Math.max(0, largestOf(points.map(({ rank }) => rank)));
  const choices = [
    { key: 'startFoot', role: 'startFoot', point: one('startFoot'), label: capital(f.say(footLabel(shape, 'start'))) },
    { key: 'bend', role: 'bend', point: one('bend'), label: words.bend },
    ...more.map((point) => ({ key: point.id, role: 'point', point, label: f.say(labelOf(point, shape)) }) as const),
    { key: 'new', role: 'point', point: null, label: words.furtherPoint },
    { key: 'endFoot', role: 'endFoot', point: one('endFoot'), label: capital(f.say(footLabel(shape, 'end'))) },
  ] as const;
  const [key, setKey] = useState<string>('startFoot');
  const chosen = choices.find((choice) => choice.key === key) ?? choices[0];
  return (
    <section className="block" aria-label={words.parts.points}>
      <SelectField
        label={words.point}
        value={chosen.key}
        choices={choices.map(({ key: value, label, point }) => ({
          value,
          label: point ? toldOf(point, label, built, f.words) : label,
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
        label={words.runs}
        value={record.route}
        choices={[
          { value: 'arc', label: words.routes.arc },
          { value: 'points', label: words.routes.points },
        ]}
        onCommit={(route) => set(words.edits.route, { route })}
      />
      {record.route === 'arc' ? <MeasuredBow built={built} /> : null}
      {placed ? <TrackField figures={figures} shape={shape} /> : null}
    </section>
  );
}

/** A point in the list, with what is known of one that something was measured of. */
function toldOf({ id, ties }: BuriedPoint, label: string, { points }: CrossingAsBuilt, { window }: Texts): string {
  const { told } = window.record.crossing;
  const basis = points.find(({ point }) => point.id === id)?.basis;
  if (basis === 'ambiguous') return told.sideNotSaid({ point: label });
  if (basis === 'contradictory') return told.doNotMeet({ point: label });
  return ties.length === 0 ? label : told.ties({ point: label, count: ties.length });
}

/** The bow as taped from the middle of the opening: it is the crossing's own. */
function MeasuredBow({ built: { figures, shape, points } }: { readonly built: CrossingAsBuilt }) {
  const { crossing, gateway } = figures;
  const { window, things } = useWords();
  const { compass } = things;
  const words = window.record.crossing;
  const at = { gateway: gateway.name };
  if (points.some(({ point, places }) => point.role === 'bend' && places.length > 0)) {
    return <p className="field-hint">{words.throughBend}</p>;
  }
  return (
    <div className="field-pair">
      <KindField
        thing={crossing}
        field="bowM"
        step={words.edits.bow(at)}
        options={{ recording: true }}
        label={words.bow}
        placeholderM={figures.bowM}
        hint={figures.bowAssumed ? words.bowAssumed : words.bowFrom}
      />
      <SelectField
        label={words.bowSide}
        value={crossing.bowSide}
        choices={[
          { value: 'left', label: compass[sideOfOpening(shape, 1)] },
          { value: 'right', label: compass[sideOfOpening(shape, -1)] },
        ]}
        onCommit={(bowSide) =>
          change(words.edits.bowSide(at), 'crossing', crossing.id, { bowSide }, { recording: true })
        }
      />
    </div>
  );
}

function Depths({ built, record, set }: PartProps) {
  const f = useFigures();
  const said = f.words.kinds.crossingRecord.depths.fields;
  const words = f.words.window.record.crossing;
  const { depths } = record;
  const known = depthOf(built);
  const leftOut = leftOutInWords(known, built.lengthM);
  const [alongM, setAlongM] = useState<number | null>(null);
  const add = (depthM: number | null) => {
    if (depthM === null) return;
    const at =
      alongM ?? (depths.length === 0 ? 0 : Math.min(built.lengthM, (depths.at(-1)?.alongM ?? 0) + built.lengthM / 2));
    set(words.edits.measureDepth, { depths: [...depths, { alongM: at, depthM }].sort((a, b) => a.alongM - b.alongM) });
    setAlongM(null);
  };
  return (
    <section className="block" aria-label={words.parts.depths}>
      <p className="field-hint">
        {words.depthsHint({
          lengthM: built.lengthM,
          depthM: built.figures.crossing.depthM,
          side: postSide(built.shape, 'start'),
          known: f.say(depthInWords(known)),
        })}
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
              onCommit={(next) => set(words.edits.moveDepth, { depths: depths.with(i, { ...depth, alongM: next }) })}
            />
            <DescribedField
              words={said.depthM}
              field={measuredDepth.depthM}
              value={depth.depthM}
              onCommit={(next) => set(words.edits.changeDepth, { depths: depths.with(i, { ...depth, depthM: next }) })}
            />
            <button
              type="button"
              aria-label={words.removeDepth(depth)}
              onClick={() => set(words.edits.removeDepth, { depths: depths.toSpliced(i, 1) })}
            >
              {words.remove}
            </button>
          </li>
        ))}
      </ul>
      <div className="field-pair new-tie">
        <DescribedField<number | null>
          words={said.alongM}
          field={orNone(measuredDepth.alongM)}
          label={words.alongTrench}
          value={alongM}
          hint={depths.length === 0 ? words.emptyAtStart : words.emptyHalfOn}
          onCommit={setAlongM}
        />
        <DescribedField<number | null>
          key={depths.length}
          words={said.depthM}
          field={orNone(measuredDepth.depthM)}
          label={words.depthThere}
          value={null}
          hint={words.enterAdds}
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
  gateway,
}: Omit<PartProps, 'built'> & {
  readonly crossing: Crossing;
  readonly shape: GatewayShape;
  readonly gateway: Gateway;
}) {
  const words = useWords().window.record.crossing;
  const { edits } = words;
  const at = { gateway: gateway.name };
  const setCrossing = (step: Step, patch: Partial<Crossing>) =>
    change(step(at), 'crossing', crossing.id, patch, { recording: true });
  const riserStep =
    (end: LineEnd): Step =>
    (crossing) =>
      edits.riser({ ...crossing, side: postSide(shape, end) });
  const joints = record.jointsUnderground;
  const text = (key: keyof typeof words.texts, long = false) => (
    <TextField
      label={words.texts[key]}
      value={record[key]}
      long={long}
      onCommit={(value) => set(edits.texts[key], { [key]: value })}
    />
  );
  return (
    <section className="block" aria-label={words.parts.trench}>
      <KindField thing={crossing} field="pipeBoreMm" step={edits.pipeBore(at)} options={{ recording: true }} />
      <CableField
        label={words.liveCable}
        cableId={crossing.cableId}
        inGround={false}
        onCommit={(cableId) => setCrossing(edits.cable, { cableId })}
      />
      <KindField
        thing={record}
        field="jointsUnderground"
        onCommit={(jointsUnderground) => set(edits.joints, { jointsUnderground })}
      />
      {joints !== null && joints > 0 ? (
        <>
          <Caution>{words.jointCaution}</Caution>
          {text('jointsNote')}
        </>
      ) : null}
      <KindField thing={crossing} field="sealed" step={edits.seals(at)} options={{ recording: true }} />
      <div className="field-pair">
        <TextField
          label={words.riserOn({ side: postSide(shape, 'start') })}
          value={record.risers.start}
          onCommit={(start) => set(riserStep('start'), { risers: { ...record.risers, start } })}
        />
        <TextField
          label={words.riserOn({ side: postSide(shape, 'end') })}
          value={record.risers.end}
          onCommit={(end) => set(riserStep('end'), { risers: { ...record.risers, end } })}
        />
      </div>
      {text('alsoInTrench')}
      <AlsoInTrench note={record.alsoInTrench} />
      {text('soil')}
      <div className="field-pair">
        {text('recordedBy')}
        <DateField
          label={words.recordedOn}
          value={record.recordedOn}
          optional
          onCommit={(recordedOn) => set(edits.date, { recordedOn })}
        />
      </div>
      {text('note', true)}
    </section>
  );
}

/** What may not lie in one conduit with the live cable, said louder where the note names such a cable. */
function AlsoInTrench({ note }: { readonly note: string }) {
  const words = useWords().window.record.crossing;
  const { oneConduit } = useWords().power.conductors;
  const named = cablesNamed(note);
  if (!named) return <p className="field-hint">{oneConduit}</p>;
  return (
    <Caution>
      {words.otherCable({ cables: named.words, conduit: named.conduit })} {oneConduit}
    </Caution>
  );
}
