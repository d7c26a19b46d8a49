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
import { capital } from '../../../core/words/text.ts';
import type { Figures } from '../../../core/words/types.ts';
import { light } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { SelectField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { postMapId, type Step, TieEntry, usePostsNear } from './TieEntry.tsx';

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
  const words = f.words.window.record.point;
  const { edits } = words;
  const { figures, shape } = source;
  const [freshId] = useState(() => newId('buriedPoint'));
  const point = known ?? newBuriedPoint(freshId, figures.crossing.id, role, rank);
  const solved = solvePoint(point, source);
  const near = solved.places[0]?.xy ?? expectedPlace(role, source);
  const where = words.ofCrossing({ point: f.say(labelOf(point, shape)), gateway: figures.gateway.name });
  const set = (step: Step, to: RecordPoint['to']) => {
    const { id, crossingId } = point;
    void commit(step({ where }), recordPoint({ id, crossingId, role, rank, to }), { recording: true }).then((done) => {
      if (done && !known) onMade(id);
    });
  };
  const setSide = (side: BuriedPoint['side']) => set(edits.side, { side });
  return (
    <div className="point">
      {solved.basis === 'ambiguous' ? <SideNotSaid solved={solved} shape={shape} onSide={setSide} /> : null}
      {solved.basis === 'contradictory' ? <DoNotMeet solved={solved} /> : null}
      {solved.basis === 'measured' || solved.basis === 'none' ? (
        <p role="status">{f.say(tiesInWords(solved))}</p>
      ) : null}
      {solved.places.length === 1 ? <PointFigures place={solved.places[0]!} solved={solved} source={source} /> : null}
      {point.side !== null ? <SideSaid point={point} source={source} onSide={setSide} /> : null}
      <TieEntry ties={point.ties} near={near} onChange={(ties, step) => set(step, { ties })} />
      {point.ties.length < 2 ? <Suggestion near={near} /> : null}
      <OtherWays point={point} set={set} source={source} />
      {role === 'point' ? (
        <TextField label={words.name} value={point.name} onCommit={(name) => set(edits.name, { name })} />
      ) : null}
      {known ? (
        <button
          type="button"
          onClick={() => void commit(edits.delete({ where }), deleteThings([{ kind: 'buriedPoint', id: known.id }]))}
        >
          {words.delete}
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
  const words = f.words.window.record.point;
  const { alongM, leftM } = offsetOf(place.xy, shape);
  const [lon, lat] = plane.toLonLat(place.xy);
  const residuals =
    place.fix && solved.ties.length > 2
      ? solved.ties.map(({ name }, i) => ({ post: f.say(name), offM: place.fix!.residualsM[i]! }))
      : [];
  return (
    <>
      <dl className="plan-figures">
        <div>
          <dt>{words.fromPost({ side: postSide(shape, 'start') })}</dt>
          <dd>{f.tape(alongM)}</dd>
        </div>
        <div>
          <dt>{words.offIt}</dt>
          <dd>{words.off({ offM: Math.abs(leftM), side: sideOfOpening(shape, leftM) })}</dd>
        </div>
        <div>
          <dt>{words.within}</dt>
          <dd>{f.tape(place.withinM)}</dd>
        </div>
      </dl>
      <p className="field-hint">
        {placed ? `${words.place({ place: `${latitudeText(lat)}, ${longitudeText(lon)}` })} ` : ''}
        {residuals.length > 0 ? words.residuals({ tapes: residuals }) : ''}
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
  const words = f.words.window.record.point;
  const { places } = solved;
  const names = placeNames(places).map(f.say);
  return (
    <div className="side-not-said" role="alert">
      <p>
        <strong>{f.say(whichInWords(places))}</strong>
      </p>
      <p>
        {f.say(ambiguousInWords(solved))} {words.untilSaid}
      </p>
      <p className="buttons">
        {places.map((place, i) => {
          const side = place.fix?.side;
          if (!side || side === 'onLine') return null;
          return (
            <button key={names[i]} type="button" className="side-choice" onClick={() => onSide(side)}>
              {words.placeAt({ name: capital(names[i]!), offset: offsetInWords(place.xy, shape, f) })}
            </button>
          );
        })}
      </p>
      <p className="field-hint">{words.mapShowsBoth}</p>
    </div>
  );
}

/** "0.28 m north of the opening, 0.40 m along it from the west post" */
function offsetInWords(xy: Xy, shape: GatewayShape, f: Figures): string {
  const { alongM, leftM } = offsetOf(xy, shape);
  const [side, post] = [sideOfOpening(shape, leftM), postSide(shape, 'start')];
  return f.words.window.record.point.offset({ offM: Math.abs(leftM), side, alongM, post });
}

/** Tapes that can't all be right, as they were read. */
function DoNotMeet({ solved }: { readonly solved: SolvedPoint }) {
  const f = useFigures();
  return (
    <div className="side-not-said" role="alert">
      <p>
        <strong>{f.words.window.record.point.doNotMeet}</strong>
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
  const words = f.words.window.record.point;
  const { places } = solvePoint({ ...point, side: null }, source);
  if (places.length < 2) return null;
  const names = placeNames(places).map(f.say);
  return (
    <SelectField<'left' | 'right' | 'open'>
      label={words.whichSide}
      value={point.side ?? 'open'}
      choices={[
        ...places.flatMap(({ xy, fix }, i) =>
          !fix || fix.side === 'onLine'
            ? []
            : [
                {
                  value: fix.side,
                  label: words.placeAt({ name: capital(names[i]!), offset: offsetInWords(xy, source.shape, f) }),
                },
              ],
        ),
        { value: 'open', label: words.notSaid },
      ]}
      onCommit={(side) => onSide(side === 'open' ? null : side)}
    />
  );
}

/** The posts that would fix the point best, before the trench is closed. */
function Suggestion({ near }: { readonly near: readonly [number, number] }) {
  const f = useFigures();
  const words = f.words.window.record.point;
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
        <strong>{words.bestPosts}</strong>
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
              {words.sureTo({ sePositionM: choice.error.sePositionM, checked: choice.mirrorM === null })}
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
  readonly set: (step: Step, to: RecordPoint['to']) => void;
  readonly source: CrossingSource;
}) {
  const [open, setOpen] = useState(point.offset !== null || point.gps !== null);
  const { offset, gps } = point;
  const words = useWords().window.record.point;
  const { edits } = words;
  if (!open) {
    return (
      <button type="button" className="plain" onClick={() => setOpen(true)}>
        {words.anotherWay}
      </button>
    );
  }
  const setOffset = (patch: Partial<NonNullable<BuriedPoint['offset']>>) =>
    set(edits.offset, { offset: { alongM: 0, leftM: 0, ...offset, ...patch } });
  return (
    <>
      <div className="field-pair">
        <LengthField
          label={words.along}
          valueM={offset?.alongM ?? null}
          {...lengthBoundsOf(pointOffset.alongM)}
          optional
          hint={words.alongHint({ from: postSide(shape, 'start'), to: postSide(shape, 'end') })}
          onCommitM={(alongM) => (alongM === null ? set(edits.forgetOffset, { offset: null }) : setOffset({ alongM }))}
        />
        <LengthField
          label={words.square}
          valueM={offset?.leftM ?? null}
          {...lengthBoundsOf(pointOffset.alongM)}
          optional
          hint={words.squareHint({ above: sideOfOpening(shape, 1), below: sideOfOpening(shape, -1) })}
          onCommitM={(leftM) => (leftM === null ? set(edits.forgetOffset, { offset: null }) : setOffset({ leftM }))}
        />
      </div>
      {placed ? <GpsFields gps={gps} onGps={(next) => set(edits.gps, { gps: next })} /> : null}
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
  const words = useWords().window.record.point;
  const read = (text: string) => {
    if (text.trim() === '') return onGps(null);
    const [lat, lon] = text.split(/[\s,;]+/).map(Number);
    if (lat === undefined || lon === undefined || !(Math.abs(lat) <= 90 && Math.abs(lon) <= 180)) return;
    onGps({ lonLat: [lon, lat], seM: gps?.seM ?? usualGpsSeM });
  };
  return (
    <div className="field-pair">
      <TextField
        label={words.gps}
        value={gps ? `${gps.lonLat[1]}, ${gps.lonLat[0]}` : ''}
        hint={words.gpsHint}
        onCommit={read}
      />
      <LengthField
        label={words.error}
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
