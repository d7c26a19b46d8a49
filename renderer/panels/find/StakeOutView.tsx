import { useEffect, useMemo } from 'react';
import { formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import { pointAtStation } from '../../../core/geometry/polyline.ts';
import { crossingById } from '../../../core/locate/allCrossings.ts';
import { leavesOpen } from '../../../core/locate/certainty.ts';
import { certaintyInWords } from '../../../core/locate/certaintyWords.ts';
import {
  depthHeading,
  depthInWords,
  depthThereInShort,
  depthThereInWords,
  leftOutInWords,
} from '../../../core/locate/depthWords.ts';
import { leftHeading } from '../../../core/locate/inGround/leftWords.ts';
import { type StakeOut, type StakePoint, stakeOut } from '../../../core/locate/stakeOut.ts';
import { fixedPosts } from '../../../core/locate/tieFrom.ts';
import { placeNames } from '../../../core/locate/tieWords.ts';
import { propertyOf } from '../../../core/model/project.ts';
import { pointLetter, stakeSketch } from '../../../core/sheets/find/stakeSketch.ts';
import { pointSureInWords, stepOffset, stepsHeading, tapesInWords } from '../../../core/sheets/find/stakeWords.ts';
import { useOpenFile } from '../../state/appState.ts';
import { choose } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { CertaintyTag } from '../parts/CertaintyTag.tsx';
import { CrossingPhotos } from './CrossingPhotos.tsx';
import { setDig, useFind } from './findState.ts';
import { LeftFields, LeftWords } from './LeftView.tsx';
import { measureText } from './measureText.ts';
import { PrintSheetButton } from './PrintSheetButton.tsx';
import { SketchView } from './SketchView.tsx';

/** 15 CSS pixels. */
const letterPt = 11.25;

/** How to find one crossing on the ground: which post, how far, which way, how deep, how sure. */
export function StakeOutView({ soughtId }: { readonly soughtId: string }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.find;
  const sought = useMemo(() => crossingById(project, survey, soughtId), [project, survey, soughtId]);
  const stake = useMemo(
    () => sought && stakeOut(sought.crossing, fixedPosts(project, survey)),
    [sought, project, survey],
  );
  const wanted = useFind((state) => state.pointKey);
  useEffect(() => mapView.zoomTo(soughtId), [soughtId]);
  if (!stake || !sought) return null;
  const { left } = sought;
  const { gateway, crossing } = stake.crossing.figures;
  const key = stake.points.some((point) => point.key === wanted) ? wanted : null;
  const look = { survey, f, measure: measureText, sizePt: letterPt };
  const called = left
    ? {
        title: leftHeading(left),
        toFind: words.stakeOut.toFindLeft({ name: left.name }),
        plan: words.stakeOut.planOfLeft({ name: left.name }),
      }
    : {
        title: words.stakeOut.crossing({ gateway: gateway.name }),
        toFind: words.stakeOut.toFind({ gateway: gateway.name }),
        plan: words.stakeOut.plan({ gateway: gateway.name }),
      };
  const sure = f.say(certaintyInWords(stake.crossing));
  return (
    <section className="block stake-out" aria-label={called.toFind}>
      <div className="stake-head">
        <h2>{called.title}</h2>
        <CertaintyTag crossing={stake.crossing} />
      </div>
      {left ? <LeftWords thing={left} /> : null}
      {warns(stake) ? <Caution>{sure}</Caution> : <p>{sure}</p>}
      <DepthWords stake={stake} />
      <SketchView
        name={called.plan}
        heightPx={310}
        draw={(widthMm, heightMm) => stakeSketch(stake, key, [0.2, 0.2, widthMm - 0.2, heightMm - 0.2], look).items}
      />
      <Points stake={stake} chosenKey={key} />
      <Caution>{words.stakeOut.caution}</Caution>
      <Steps stake={stake} />
      <Facts stake={stake} />
      <CrossingPhotos crossingId={left?.id ?? crossing.id} name={gateway.name} />
      {left ? <LeftFields thing={left} /> : null}
      <p className="buttons">
        <PrintSheetButton label={words.stakeOut.print} options={{ sheet: 'crossing', gatewayId: soughtId }} />
        <button type="button" onClick={() => mapView.zoomTo(soughtId)}>
          {words.showOnMap}
        </button>
        <button type="button" onClick={() => setDig({ shape: 'point', path: [middleOf(stake)] }, 0.5)}>
          {words.whatElse}
        </button>
        <button type="button" onClick={() => choose([])}>
          {words.close}
        </button>
      </p>
    </section>
  );

  function middleOf({ crossing: { path, lengthM, startFoot, courses, shape } }: StakeOut) {
    if (courses.length > 1) return survey.plane.toLonLat(shape.centre);
    return survey.plane.toLonLat(path.length > 1 ? pointAtStation(path, lengthM / 2).point : startFoot);
  }
}

/** Its tapes leave open where it lies, or it does not lie under its gate. */
function warns({ crossing: { inGround, certainty, movedM } }: StakeOut): boolean {
  return inGround && (leavesOpen(certainty.basis) || movedM > 0);
}

function DepthWords({ stake }: { readonly stake: StakeOut }) {
  const f = useFigures();
  const { sentence } = f.words.window.find.stakeOut;
  const leftOut = leftOutInWords(stake.depth, stake.crossing.lengthM);
  return (
    <>
      <p>{sentence({ said: depthInWords(stake.depth) })}</p>
      {leftOut ? <Caution>{f.say(leftOut)}</Caution> : null}
    </>
  );
}

/** The points in order along the trench; the sketch shows the tapes of the chosen one. */
function Points({ stake, chosenKey }: { readonly stake: StakeOut; readonly chosenKey: string | null }) {
  const f = useFigures();
  return (
    <ol className="stake-points">
      {stake.points.map((point, index) => (
        <li key={point.key} className={point.key === chosenKey ? 'chosen' : undefined}>
          <button
            type="button"
            className="plain"
            aria-pressed={point.key === chosenKey}
            onClick={() => useFind.setState({ pointKey: point.key === chosenKey ? null : point.key })}
          >
            <strong>{pointLetter(index)}</strong> {f.say(point.label)}
          </button>
          <PointWords point={point} />
        </li>
      ))}
    </ol>
  );
}

function PointWords({ point }: { readonly point: StakePoint }) {
  const { project } = useOpenFile();
  const f = useFigures();
  const { placeOf, sentence } = f.words.window.find.stakeOut;
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const { placed } = propertyOf(project);
  const names = placeNames(point.places);
  return (
    <>
      <p className="stake-tapes">{tapesInWords(point, f)}</p>
      <p>
        {sentence({ said: depthThereInWords(point.depth) })} {pointSureInWords(point, f)}
      </p>
      {placed
        ? point.places.map(({ at }, i) => (
            <p key={f.say(names[i]!)} className="field-hint">
              {point.places.length > 1
                ? placeOf({ name: names[i]!, at: formatPlace(at, system, f) })
                : formatPlace(at, system, f)}
            </p>
          ))
        : null}
    </>
  );
}

/** Offsets from the straight line between the posts, for finding the trench with one tape and a stick. */
function Steps({ stake }: { readonly stake: StakeOut }) {
  const f = useFigures();
  const words = f.words.window.find.stakeOut;
  if (stake.steps.length === 0) return null;
  return (
    <details className="legs">
      <summary>{words.steps}</summary>
      <p>{words.layTape(stake.postNames)}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.at}</th>
            <th scope="col">{stepsHeading(stake, f)}</th>
            <th scope="col" className="amount">
              {f.say(depthHeading(stake.depth))}
            </th>
          </tr>
        </thead>
        <tbody>
          {stake.steps.map((step) => (
            <tr key={step.alongM}>
              <td>{f.tape(step.alongM)}</td>
              <td>{stepOffset(step, stake, f)}</td>
              <td className="amount">{f.say(depthThereInShort(step.depth))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

function Facts({ stake: { crossing } }: { readonly stake: StakeOut }) {
  const { record, figures, lengthM } = crossing;
  const words = useFigures().words.window.find.stakeOut;
  const joints = record?.jointsUnderground ?? null;
  const facts = [
    words.trench({ lengthM, boreMm: figures.crossing.pipeBoreMm }),
    figures.crossing.earth ? words.earthCable : '',
    joints === null ? '' : words.joints({ count: joints, note: record?.jointsNote ?? '' }),
    record?.alsoInTrench ? words.also({ what: record.alsoInTrench }) : '',
    record?.recordedBy || record?.recordedOn
      ? words.recorded({ by: record.recordedBy, on: record.recordedOn ?? '' })
      : '',
    record?.note ?? '',
    figures.gateway.note,
    figures.crossing.note,
  ].filter((fact) => fact.trim() !== '');
  return (
    <ul className="stake-facts">
      {facts.map((fact) => (
        <li key={fact}>{fact}</li>
      ))}
    </ul>
  );
}
