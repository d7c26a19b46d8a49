import { formatGrid, formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import { fitAffine } from '../../../core/geometry/fitAffine.ts';
import { fitSimilarity } from '../../../core/geometry/fitSimilarity.ts';
import type { PictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import { isLikelyScale } from '../../../core/geometry/picture/pictureScale.ts';
import { suspectPoint } from '../../../core/geometry/picture/suspectPoint.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import type { ByPoints, Underlay } from '../../../core/model/underlayThings.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { SelectField } from '../parts/fields.tsx';
import { formatPixel } from './formatPixel.ts';
import { PlaceField } from './PlaceField.tsx';
import {
  changePoints,
  endPlacing,
  isSamePoint,
  offerForDegrees,
  onPlacing,
  settleUnlikely,
  startPlacing,
  usePlacing,
} from './placing.ts';
import { usePictureMap } from './usePictureMap.ts';

/** How a picture lies, how well, and the ways to place it better. */
export function PlacingDetails({ underlay }: { readonly underlay: Underlay }) {
  const placing = usePlacing((state) => (state.placing?.underlayId === underlay.id ? state.placing : null));
  const asking = usePlacing((state) => (state.asking?.underlayId === underlay.id ? state.asking : null));
  const map = usePictureMap(underlay);
  const said = useWords().window.background.placing;
  const { placement } = underlay;
  if (!placement || !map) return null;
  const waiting = placing !== null && placing.way !== 'distance' && placing.marked.length === 1;
  return (
    <section className="block" aria-label={said.ofPicture}>
      <h3>{said.title}</h3>
      {asking ? <Unlikely metresPerPixel={asking.metresPerPixel} /> : null}
      {placement.by === 'eye' ? <p>{said.byEye}</p> : null}
      {placement.by === 'coordinates' ? <p>{said.byCoordinates(placement)}</p> : null}
      {placement.by === 'distance' ? <p>{said.byDistance(placement)}</p> : null}
      {placement.by === 'points' ? <Points underlay={underlay} placement={placement} map={map} /> : null}
      <ScaleWarning metresPerPixel={map.metresPerPixel} />
      {waiting ? (
        <PlaceField label={said.whereReally} onPlace={(at) => onPlacing({ place: at })} onDegrees={offerForDegrees} />
      ) : null}
      <p className="buttons">
        {placing ? (
          <button type="button" className="main" onClick={endPlacing}>
            {said.done}
          </button>
        ) : (
          <>
            <button type="button" className="main" onClick={() => startPlacing(underlay.id, 'points')}>
              {placement.by === 'points' ? said.addPoint : said.byPoints}
            </button>
            <button type="button" onClick={() => startPlacing(underlay.id, 'distance')}>
              {said.knownDistance}
            </button>
            <button type="button" onClick={() => startPlacing(underlay.id, 'move')}>
              {said.move}
            </button>
          </>
        )}
      </p>
    </section>
  );
}

function ScaleWarning({ metresPerPixel }: { readonly metresPerPixel: number }) {
  const f = useFigures();
  if (isLikelyScale(metresPerPixel)) return null;
  return (
    <p className="field-problem" role="alert">
      {f.words.window.background.placing.oddScale({ pixel: formatPixel(metresPerPixel, f) })}
    </p>
  );
}

/** A placement that was kept back because of the scale it gives. */
function Unlikely({ metresPerPixel }: { readonly metresPerPixel: number }) {
  const f = useFigures();
  const said = f.words.window.background.placing;
  return (
    <div className="doubtful" role="alert">
      <p>
        <strong>{said.notDone}</strong> {said.oddScaleToBe({ pixel: formatPixel(metresPerPixel, f) })}
      </p>
      <p className="buttons">
        <button type="button" className="main" onClick={() => settleUnlikely(false)}>
          {said.leave}
        </button>
        <button type="button" onClick={() => settleUnlikely(true)}>
          {said.doIt}
        </button>
      </p>
    </div>
  );
}

function Points({
  underlay,
  placement,
  map,
}: {
  readonly underlay: Underlay;
  readonly placement: ByPoints;
  readonly map: PictureMap;
}) {
  const f = useFigures();
  const { units } = f;
  const said = f.words.window.background.placing;
  const { project } = useOpenFile();
  const property = propertyOf(project);
  const plane = workingPlane(property);
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const placeInWords = (at: LonLat) =>
    property.placed ? formatPlace(at, system, f) : formatGrid(plane.toXy(at), units);
  const { points, fit } = placement;
  const known = points.map(({ pixel, at }) => ({ pixel, map: plane.toXy(at) }));
  const suspect = fit === 'affine' ? suspectPoint(known, fitAffine, 3) : suspectPoint(known, fitSimilarity, 2);
  return (
    <>
      <SelectField<ByPoints['fit']>
        label={said.fit.label}
        value={fit}
        choices={[
          { value: 'similarity', label: said.fit.similarity },
          { value: 'affine', label: said.fit.affine },
        ]}
        hint={said.fit.hint}
        onCommit={(next) => changePoints(underlay, () => ({ fit: next }))}
      />
      {map.refused ? <p className="field-problem">{f.say(map.refused)}</p> : null}
      {map.quality ? (
        <p className="details-fact">
          {(map.quality.sigma0M === null ? said.rmsUnchecked : said.rms)({
            rmsM: map.quality.rmsM,
            points: points.length,
          })}
        </p>
      ) : null}
      <table className="points">
        <thead>
          <tr>
            <th scope="col">{said.point}</th>
            <th scope="col">{said.place}</th>
            <th scope="col" className="amount">
              {said.offBy}
            </th>
            <th scope="col">
              <span className="visually-hidden">{said.actions}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((point, i) => (
            // Points have no names of their own; their order is what is shown.
            <tr key={`${point.pixel[0]} ${point.pixel[1]} ${point.at[0]}`} className={suspect === i ? 'suspect' : ''}>
              <th scope="row">
                {i + 1}
                {suspect === i ? <strong> {said.suspect}</strong> : null}
              </th>
              <td>{placeInWords(point.at)}</td>
              <td className="amount">{map.quality ? f.tape(map.quality.residuals[i]!.lengthM) : ''}</td>
              <td>
                <button
                  type="button"
                  aria-label={said.takePointOut({ number: i + 1 })}
                  onClick={() =>
                    changePoints(underlay, (before) => ({
                      points: before.points.filter((other) => !isSamePoint(other, point)),
                    }))
                  }
                >
                  {said.takeOut}
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
