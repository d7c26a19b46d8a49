import { useState } from 'react';
import type { Xy } from '../../../core/geometry/types.ts';
import { lengthBoundsOf } from '../../../core/kinds/form.ts';
import { pointGps, pointOffset } from '../../../core/kinds/trench.ts';
import { bestTiePosts } from '../../../core/locate/bestTiePosts.ts';
import { postSide, sideOfOpening } from '../../../core/locate/compass.ts';
import type { CrossingSource } from '../../../core/locate/crossingSource.ts';
import {
  expectedPlace,
  labelOf,
  offsetOf,
  type PossiblePlace,
  type SolvedPoint,
  solvePoint,
} from '../../../core/locate/ties.ts';
import {
  ambiguousInWords,
  doNotMeetInWords,
  placeNames,
  tiesInWords,
  whichInWords,
} from '../../../core/locate/tieWords.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { newBuriedPoint } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint, BuriedRole } from '../../../core/model/recordThings.ts';
import { type RecordPoint, recordPoint } from '../../../core/record/edits/recordPoint.ts';
import type { GatewayShape } from '../../../core/shapes/types.ts';
import { latitudeText, longitudeText } from '../../../core/sheets/placeText.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { capital } from '../../../core/words/text.ts';
import type { Figures } from '../../../core/words/types.ts';
import { light } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
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
  const f = useFigures();
  const { figures, shape } = source;
  const [freshId] = useState(() => newId('buriedPoint'));
  const point = known ?? newBuriedPoint(freshId, figures.crossing.id, role, rank);
  const solved = solvePoint(point, source);
  const near = solved.places[0]?.xy ?? expectedPlace(role, source);
  const where = `${f.say(labelOf(point, shape))} of the crossing at ${figures.gateway.name}`;
  const set = (label: string, to: RecordPoint['to']) => {
    const { id, crossingId } = point;
    void commit(`${label}: ${where}`, recordPoint({ id, crossingId, role, rank, to }), { recording: true }).then(
      (done) => {
        if (done && !known) onMade(id);
      },
    );
  };
  const setSide = (side: BuriedPoint['side']) => set('Say the side', { side });
  return (
    <div className="point">
      {solved.basis === 'ambiguous' ? <SideNotSaid solved={solved} shape={shape} onSide={setSide} /> : null}
      {solved.basis === 'contradictory' ? <DoNotMeet solved={solved} /> : null}
      {solved.basis === 'measured' || solved.basis === 'none' ? (
        <p role="status">{f.say(tiesInWords(solved))}</p>
      ) : null}
      {solved.places.length === 1 ? <PointFigures place={solved.places[0]!} solved={solved} source={source} /> : null}
      {point.side !== null ? <SideSaid point={point} source={source} onSide={setSide} /> : null}
      <TieEntry ties={point.ties} near={near} onChange={(ties, label) => set(label, { ties })} />
      {point.ties.length < 2 ? <Suggestion near={near} /> : null}
      <OtherWays point={point} set={set} source={source} />
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
  place,
  solved,
  source: { shape, placed, plane },
}: {
  readonly place: PossiblePlace;
  readonly solved: SolvedPoint;
  readonly source: CrossingSource;
}) {
  const f = useFigures();
  const { units } = f;
  const { compass } = f.words.things;
  const { alongM, leftM } = offsetOf(place.xy, shape);
  const [lon, lat] = plane.toLonLat(place.xy);
  const residuals =
    place.fix && solved.ties.length > 2
      ? solved.ties.map(({ name }, i) => `${f.say(name)} ${formatTape(place.fix!.residualsM[i]!, units)}`)
      : [];
  return (
    <>
      <dl className="plan-figures">
        <div>
          <dt>From the {compass[postSide(shape, 'start')]} post</dt>
          <dd>{formatTape(alongM, units)}</dd>
        </div>
        <div>
          <dt>Off it</dt>
          <dd>
            {formatTape(Math.abs(leftM), units)} {compass[sideOfOpening(shape, leftM)]}
          </dd>
        </div>
        <div>
          <dt>Within</dt>
          <dd>{formatTape(place.withinM, units)}</dd>
        </div>
      </dl>
      <p className="field-hint">
        {placed ? `${latitudeText(lat)}, ${longitudeText(lon)}. ` : ''}
        {residuals.length > 0 ? `Each tape is off by: ${residuals.join(', ')}.` : ''}
      </p>
    </>
  );
}

/** Tapes that fit two places: nothing else matters as much as which of them it is, so it is asked first and loudest. */
function SideNotSaid({
  solved,
  shape,
  onSide,
}: {
  readonly solved: SolvedPoint;
  readonly shape: GatewayShape;
  readonly onSide: (side: 'left' | 'right') => void;
}) {
  const f = useFigures();
  const { places } = solved;
  const names = placeNames(places).map(f.say);
  return (
    <div className="side-not-said" role="alert">
      <p>
        <strong>{f.say(whichInWords(places))}</strong>
      </p>
      <p>{f.say(ambiguousInWords(solved))} Until it is said, whoever digs has to keep clear of both.</p>
      <p className="buttons">
        {places.map((place, i) => {
          const side = place.fix?.side;
          if (!side || side === 'onLine') return null;
          return (
            <button key={names[i]} type="button" className="side-choice" onClick={() => onSide(side)}>
              {capital(names[i]!)}: {offsetInWords(place.xy, shape, f)}
            </button>
          );
        })}
      </p>
      <p className="field-hint">The map shows both. A third tape from a post off their line tells them apart too.</p>
    </div>
  );
}

/** "0.28 m north of the opening, 0.40 m along it from the west post" */
function offsetInWords(xy: Xy, shape: GatewayShape, { units, words: { things } }: Figures): string {
  const { alongM, leftM } = offsetOf(xy, shape);
  const off = `${formatTape(Math.abs(leftM), units)} ${things.compass[sideOfOpening(shape, leftM)]} of the opening`;
  return `${off}, ${formatTape(alongM, units)} along it from the ${things.compass[postSide(shape, 'start')]} post`;
}

/** Tapes that can't all be right, as they were read. */
function DoNotMeet({ solved }: { readonly solved: SolvedPoint }) {
  const f = useFigures();
  return (
    <div className="side-not-said" role="alert">
      <p>
        <strong>These tapes do not meet</strong>
      </p>
      <p>{f.say(doNotMeetInWords(solved))}</p>
    </div>
  );
}

/** The side that was said, as a compass word, to be changed or taken back. */
function SideSaid({
  point,
  source,
  onSide,
}: {
  readonly point: BuriedPoint;
  readonly source: CrossingSource;
  readonly onSide: (side: BuriedPoint['side']) => void;
}) {
  const f = useFigures();
  const { places } = solvePoint({ ...point, side: null }, source);
  if (places.length < 2) return null;
  const names = placeNames(places).map(f.say);
  return (
    <SelectField<'left' | 'right' | 'open'>
      label="On which side of the line of the posts it lies"
      value={point.side ?? 'open'}
      choices={[
        ...places.flatMap(({ xy, fix }, i) =>
          !fix || fix.side === 'onLine'
            ? []
            : [{ value: fix.side, label: `${capital(names[i]!)}: ${offsetInWords(xy, source.shape, f)}` }],
        ),
        { value: 'open', label: 'Not said: it can be at both' },
      ]}
      onCommit={(side) => onSide(side === 'open' ? null : side)}
    />
  );
}

/** The posts that would fix the point best, before the trench is closed. */
function Suggestion({ near }: { readonly near: readonly [number, number] }) {
  const f = useFigures();
  const { units } = f;
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
                {chosen.map(({ name }) => f.say(name)).join(', ')}
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
  source: { shape, placed },
}: {
  readonly point: BuriedPoint;
  readonly set: (label: string, to: RecordPoint['to']) => void;
  readonly source: CrossingSource;
}) {
  const [open, setOpen] = useState(point.offset !== null || point.gps !== null);
  const { offset, gps } = point;
  const { compass } = useWords().things;
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
          {...lengthBoundsOf(pointOffset.alongM)}
          optional
          hint={`From the ${compass[postSide(shape, 'start')]} post towards the ${compass[postSide(shape, 'end')]} one.`}
          onCommitM={(alongM) => (alongM === null ? set('Forget the offset', { offset: null }) : setOffset({ alongM }))}
        />
        <LengthField
          label="Square off it"
          valueM={offset?.leftM ?? null}
          {...lengthBoundsOf(pointOffset.alongM)}
          optional
          hint={`Above 0 to the ${compass[sideOfOpening(shape, 1)]}, below to the ${compass[sideOfOpening(shape, -1)]}.`}
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
        {...lengthBoundsOf(pointGps.seM)}
        optional
        onCommitM={(seM) => {
          if (gps && seM !== null) onGps({ ...gps, seM });
        }}
      />
    </div>
  );
}
