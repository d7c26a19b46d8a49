import { useState } from 'react';
import type { TieFix } from '../../../core/geometry/tie.ts';
import { bestTiePosts } from '../../../core/locate/bestTiePosts.ts';
import type { CrossingSource } from '../../../core/locate/crossingSource.ts';
import { expectedPlace, labelOf, offsetOf, type SolvedPoint, solvePoint } from '../../../core/locate/ties.ts';
import { tiesInWords } from '../../../core/locate/tieWords.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { formatTape } from '../../../core/model/formatUnits.ts';
import { put } from '../../../core/model/project.ts';
import { newBuriedPoint } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint, BuriedRole } from '../../../core/model/recordThings.ts';
import type { GatewayShape } from '../../../core/registers/types.ts';
import { latitudeText, longitudeText } from '../../../core/sheets/placeText.ts';
import { useOpenFile } from '../../state/appState.ts';
import { light } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { SelectField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { postMapId, TieEntry, usePostsNear } from './TieEntry.tsx';

export interface PointProps {
  readonly source: CrossingSource;
  readonly role: BuriedRole;
  /** Null: nothing of it is written down yet. */
  readonly point: BuriedPoint | null;
  readonly rank: number;
  /** Called with the id of a point that comes into being. */
  readonly onMade: (id: string) => void;
}

/** One buried point: its tapes, what they come to, and the other ways to measure it. */
export function PointDetails({ source, role, point: known, rank, onMade }: PointProps) {
  const units = useUnits();
  const { figures, shape, placed } = source;
  const [freshId] = useState(() => newId('buriedPoint'));
  const point = known ?? newBuriedPoint(freshId, figures.crossing.id, role, rank);
  const solved = solvePoint(point, source);
  const near = solved.xy ?? expectedPlace(role, source);
  const where = `${labelOf(point)} of the crossing at ${figures.gateway.name}`;
  const set = (label: string, patch: Partial<BuriedPoint>) =>
    void commit(`${label}: ${where}`, (before) => put(before, { ...point, ...patch })).then((done) => {
      if (done && !known) onMade(point.id);
    });
  return (
    <div className="point">
      <p role="status">{tiesInWords(solved, units)}</p>
      {solved.xy ? <PointFigures solved={solved} shape={shape} placed={placed} /> : null}
      {solved.mirror && solved.fix ? (
        <SideChoice solved={solved} shape={shape} onSide={(side) => set('Choose the side', { side })} />
      ) : null}
      <TieEntry ties={point.ties} near={near} onChange={(ties, label) => set(label, { ties })} />
      {point.ties.length < 2 ? <Suggestion near={near} /> : null}
      <OtherWays point={point} set={set} placed={placed} />
      {role === 'point' ? (
        <TextField label="Name" value={point.name} onCommit={(name) => set('Name', { name })} />
      ) : null}
      {known ? (
        <button
          type="button"
          onClick={() => void commit(`Delete ${where}`, deleteThings([{ kind: 'buriedPoint', id: known.id }]))}
        >
          Delete what was measured here
        </button>
      ) : null}
    </div>
  );
}

function PointFigures({
  solved,
  shape,
  placed,
}: {
  readonly solved: SolvedPoint;
  readonly shape: GatewayShape;
  readonly placed: boolean;
}) {
  const units = useUnits();
  const { survey } = useOpenFile();
  const { alongM, leftM } = offsetOf(solved.xy!, shape);
  const [lon, lat] = survey.plane.toLonLat(solved.xy!);
  const { fix } = solved;
  const residuals =
    fix && solved.ties.length > 2
      ? solved.ties.map(({ name }, i) => `${name} ${formatTape(fix.residualsM[i]!, units)}`)
      : [];
  return (
    <>
      <dl className="plan-figures">
        <div>
          <dt>Along the opening</dt>
          <dd>{formatTape(alongM, units)}</dd>
        </div>
        <div>
          <dt>Off it</dt>
          <dd>
            {formatTape(Math.abs(leftM), units)} {leftM < 0 ? 'right' : 'left'}
          </dd>
        </div>
        <div>
          <dt>Known to</dt>
          <dd>{solved.seM === null ? 'not known' : formatTape(solved.seM, units)}</dd>
        </div>
      </dl>
      <p className="field-hint">
        {placed ? `${latitudeText(lat)}, ${longitudeText(lon)}. ` : ''}
        {residuals.length > 0 ? `Each tape is off by: ${residuals.join(', ')}.` : ''}
      </p>
    </>
  );
}

/** Two tapes leave a point and its mirror: the user says which it is. */
function SideChoice({
  solved,
  shape,
  onSide,
}: {
  readonly solved: SolvedPoint;
  readonly shape: GatewayShape;
  readonly onSide: (side: 'left' | 'right' | null) => void;
}) {
  const units = useUnits();
  const [first, second] = [
    solved.ties[0]!.name,
    solved.ties.find(({ name }) => name !== solved.ties[0]!.name)?.name ?? '',
  ];
  const words = ({ point }: TieFix) => {
    const { alongM, leftM } = offsetOf(point, shape);
    const side = leftM < 0 ? 'right' : 'left';
    return `${formatTape(Math.abs(leftM), units)} ${side} of the opening, ${formatTape(alongM, units)} along it`;
  };
  const fixes = [solved.fix!, solved.mirror!];
  return (
    <SelectField<'left' | 'right' | 'nearer'>
      label="Which of the two it is"
      value={solved.point.side ?? 'nearer'}
      choices={[
        { value: 'nearer', label: 'Not said: the one nearer to where it was drawn' },
        ...fixes.flatMap((fix) =>
          fix.side === 'on the line' ? [] : [{ value: fix.side, label: `${capital(fix.side)}: ${words(fix)}` }],
        ),
      ]}
      hint={`Left and right as seen from ${first} to ${second}. The map shows the other one hollow.`}
      onCommit={(side) => onSide(side === 'nearer' ? null : side)}
    />
  );
}

function capital(word: string): string {
  return `${word[0]!.toUpperCase()}${word.slice(1)}`;
}

/** The posts that would fix the point best, before the trench is closed. */
function Suggestion({ near }: { readonly near: readonly [number, number] }) {
  const units = useUnits();
  const posts = usePostsNear(near);
  const wanted = posts.map((post) => ({ id: post.key, at: post.xy }));
  const best = [
    ...bestTiePosts(wanted, near, { count: 2, most: 1 }),
    ...bestTiePosts(wanted, near, { count: 3, most: 1 }),
  ];
  if (best.length === 0) return null;
  const nameOf = (key: string) => posts.find((post) => post.key === key)!;
  return (
    <div className="suggestion">
      <p>
        <strong>Best posts to tape from, before the trench is closed</strong>
      </p>
      <ul>
        {best.map((choice) => {
          const chosen = choice.posts.map(({ id }) => nameOf(id));
          return (
            <li key={choice.posts.map(({ id }) => id).join()}>
              <button
                type="button"
                className="plain"
                onPointerEnter={() => light(chosen.map(postMapId))}
                onPointerLeave={() => light([])}
                onFocus={() => light(chosen.map(postMapId))}
                onBlur={() => light([])}
              >
                {chosen.map(({ name }) => name).join(', ')}
              </button>{' '}
              to {formatTape(choice.error.sePositionM, units)}
              {choice.mirrorM === null ? ', and it checks itself' : ''}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

/** Tape along and square off the opening, and GPS: for when there is no second post. */
function OtherWays({
  point,
  set,
  placed,
}: {
  readonly point: BuriedPoint;
  readonly set: (label: string, patch: Partial<BuriedPoint>) => void;
  readonly placed: boolean;
}) {
  const [open, setOpen] = useState(point.offset !== null || point.gps !== null);
  const { offset, gps } = point;
  if (!open) {
    return (
      <button type="button" className="plain" onClick={() => setOpen(true)}>
        Measured another way
      </button>
    );
  }
  const setOffset = (patch: Partial<NonNullable<BuriedPoint['offset']>>) =>
    set('Measure along and off the opening', { offset: { alongM: 0, leftM: 0, ...offset, ...patch } });
  return (
    <>
      <div className="field-pair">
        <LengthField
          label="Along the opening"
          valueM={offset?.alongM ?? null}
          minM={-1000}
          maxM={1000}
          optional
          hint="From the start post."
          onCommitM={(alongM) => (alongM === null ? set('Forget the offset', { offset: null }) : setOffset({ alongM }))}
        />
        <LengthField
          label="Square off it"
          valueM={offset?.leftM ?? null}
          minM={-1000}
          maxM={1000}
          optional
          hint="Left above 0, right below."
          onCommitM={(leftM) => (leftM === null ? set('Forget the offset', { offset: null }) : setOffset({ leftM }))}
        />
      </div>
      {placed ? <GpsFields gps={gps} onGps={(next) => set('Write the GPS position', { gps: next })} /> : null}
    </>
  );
}

/** A receiver in the hand is off by a few metres (common practice, no source). */
const usualGpsSeM = 5;

function GpsFields({
  gps,
  onGps,
}: {
  readonly gps: BuriedPoint['gps'];
  readonly onGps: (gps: BuriedPoint['gps']) => void;
}) {
  const read = (text: string) => {
    if (text.trim() === '') return onGps(null);
    const [lat, lon] = text.split(/[\s,;]+/).map(Number);
    if (lat === undefined || lon === undefined || !(Math.abs(lat) <= 90 && Math.abs(lon) <= 180)) return;
    onGps({ lonLat: [lon, lat], seM: gps?.seM ?? usualGpsSeM });
  };
  return (
    <div className="field-pair">
      <TextField
        label="GPS: latitude, longitude"
        value={gps ? `${gps.lonLat[1]}, ${gps.lonLat[0]}` : ''}
        hint="Decimal degrees, WGS 84."
        onCommit={read}
      />
      <LengthField
        label="Sure to"
        valueM={gps?.seM ?? null}
        minM={0.01}
        maxM={10_000}
        optional
        onCommitM={(seM) => {
          if (gps && seM !== null) onGps({ ...gps, seM });
        }}
      />
    </div>
  );
}
