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
import { formatBearing, formatTape } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { useUnits } from '../../state/useUnits.ts';
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
  const units = useUnits();
  const { placement } = underlay;
  if (!placement || !map) return null;
  const waiting = placing !== null && placing.way !== 'distance' && placing.marked.length === 1;
  return (
    <section className="block" aria-label="Place of the picture">
      <h3>Place</h3>
      {asking ? <Unlikely metresPerPixel={asking.metresPerPixel} /> : null}
      {placement.by === 'eye' ? <p>Laid by eye: nothing measured on it counts yet.</p> : null}
      {placement.by === 'coordinates' ? <p>Placed by its own coordinates, {placement.system}.</p> : null}
      {placement.by === 'distance' ? (
        <p>
          Scaled by a distance of {formatTape(placement.distanceM, units)}, which runs at{' '}
          {formatBearing(placement.bearingDeg)}. Move it where it belongs, or place it by points.
        </p>
      ) : null}
      {placement.by === 'points' ? <Points underlay={underlay} placement={placement} map={map} /> : null}
      <ScaleWarning metresPerPixel={map.metresPerPixel} />
      {waiting ? (
        <PlaceField
          label="Where that place really is"
          onPlace={(at) => onPlacing({ place: at })}
          onDegrees={offerForDegrees}
        />
      ) : null}
      <p className="buttons">
        {placing ? (
          <button type="button" className="main" onClick={endPlacing}>
            Done placing
          </button>
        ) : (
          <>
            <button type="button" className="main" onClick={() => startPlacing(underlay.id, 'points')}>
              {placement.by === 'points' ? 'Add a point' : 'Place by points'}
            </button>
            <button type="button" onClick={() => startPlacing(underlay.id, 'distance')}>
              Known distance
            </button>
            <button type="button" onClick={() => startPlacing(underlay.id, 'move')}>
              Move
            </button>
          </>
        )}
      </p>
    </section>
  );
}

function ScaleWarning({ metresPerPixel }: { readonly metresPerPixel: number }) {
  const units = useUnits();
  if (isLikelyScale(metresPerPixel)) return null;
  return (
    <p className="field-problem" role="alert">
      One pixel of this picture is {formatPixel(metresPerPixel, units)} of ground, which no picture of a property has.
      Check the figures that it was placed by.
    </p>
  );
}

/** A placement that was kept back because of the scale it gives. */
function Unlikely({ metresPerPixel }: { readonly metresPerPixel: number }) {
  const units = useUnits();
  return (
    <div className="doubtful" role="alert">
      <p>
        <strong>Not done yet.</strong> With it one pixel would be {formatPixel(metresPerPixel, units)} of ground, which
        no picture of a property has. Check the coordinates and their units.
      </p>
      <p className="buttons">
        <button type="button" className="main" onClick={() => settleUnlikely(false)}>
          Leave it as it is
        </button>
        <button type="button" onClick={() => settleUnlikely(true)}>
          Do it all the same
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
  const units = useUnits();
  const { project } = useOpenFile();
  const property = propertyOf(project);
  const plane = workingPlane(property);
  const f = useFigures();
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const placeInWords = (at: LonLat) =>
    property.placed ? formatPlace(at, system, f) : formatGrid(plane.toXy(at), units);
  const { points, fit } = placement;
  const known = points.map(({ pixel, at }) => ({ pixel, map: plane.toXy(at) }));
  const suspect = fit === 'affine' ? suspectPoint(known, fitAffine, 3) : suspectPoint(known, fitSimilarity, 2);
  return (
    <>
      <SelectField<ByPoints['fit']>
        label="Fit"
        value={fit}
        choices={[
          { value: 'similarity', label: 'Turn and scale (two points or more)' },
          { value: 'affine', label: 'Stretch too (three points or more)' },
        ]}
        hint="A scan or a photo from straight above needs turning and scaling; a stretched copy needs the other."
        onCommit={(next) => changePoints(underlay, () => ({ fit: next }))}
      />
      {map.refused ? <p className="field-problem">{f.say(map.refused)}</p> : null}
      {map.quality ? (
        <p className="details-fact">
          <span className="figure-value">{formatTape(map.quality.rmsM, units)}</span> RMS over {points.length} points
          {map.quality.sigma0M === null ? '. With no point to spare nothing checks it: add another.' : ''}
        </p>
      ) : null}
      <table className="points">
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col">Place</th>
            <th scope="col" className="amount">
              Off by
            </th>
            <th scope="col">
              <span className="visually-hidden">What to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {points.map((point, i) => (
            // Points have no names of their own; their order is what is shown.
            <tr key={`${point.pixel[0]} ${point.pixel[1]} ${point.at[0]}`} className={suspect === i ? 'suspect' : ''}>
              <th scope="row">
                {i + 1}
                {suspect === i ? <strong> Look at this one: the others agree without it.</strong> : null}
              </th>
              <td>{placeInWords(point.at)}</td>
              <td className="amount">{map.quality ? formatTape(map.quality.residuals[i]!.lengthM, units) : ''}</td>
              <td>
                <button
                  type="button"
                  aria-label={`Take point ${i + 1} out`}
                  onClick={() =>
                    changePoints(underlay, (before) => ({
                      points: before.points.filter((other) => !isSamePoint(other, point)),
                    }))
                  }
                >
                  Take out
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
