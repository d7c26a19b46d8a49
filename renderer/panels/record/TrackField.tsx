import { useRef, useState } from 'react';
import { readGpx } from '../../../core/exchange/gpx/readGpx.ts';
import type { PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { leastOf } from '../../../core/model/extremes.ts';
import { trackAsTrench } from '../../../core/record/edits/trackAsTrench.ts';
import type { CrossingFigures, GatewayShape } from '../../../core/shapes/types.ts';
import { roughUnit } from '../../../core/words/numbers/units.ts';
import { useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { LengthField } from '../parts/LengthField.tsx';

/** Takes a GPS track that was walked along the open trench as its path. */
export function TrackField({ figures, shape }: { readonly figures: CrossingFigures; readonly shape: GatewayShape }) {
  const units = useUnits();
  const { survey } = useOpenFile();
  const input = useRef<HTMLInputElement>(null);
  const [seM, setSeM] = useState(5);
  const take = async (file: File) => {
    const read = readGpx(await file.text());
    if (!read.ok) return say(`${read.message} ${read.remedy}`, 'refused');
    const away = ({ path }: PreviewFeature) =>
      leastOf(path.map((at) => xyDistanceM(survey.plane.toXy(at), shape.centre)));
    const [nearest] = read.preview.features.filter(({ shape: is }) => is === 'line').sort((a, b) => away(a) - away(b));
    if (!nearest) return say(`${file.name} holds no track.`, 'refused');
    const track = { crossingId: figures.crossing.id, path: nearest.path, seM };
    void commit(`Take a track as the trench at ${figures.gateway.name}`, trackAsTrench(track, survey, newId), {
      recording: true,
    });
  };
  return (
    <div className="field-pair">
      <LengthField
        label="Receiver sure to"
        valueM={seM}
        minM={0.01}
        maxM={100}
        hint={`In the hand, some ${roughUnit(units)}: then tapes are far better.`}
        onCommitM={(next) => {
          if (next !== null) setSeM(next);
        }}
      />
      <div className="field">
        <button type="button" onClick={() => input.current?.click()}>
          Bring a GPS track
        </button>
        <p className="field-hint">A GPX file walked along the open trench.</p>
        <input
          ref={input}
          type="file"
          hidden
          accept=".gpx,application/gpx+xml"
          aria-label="GPS track of the trench"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void take(file);
          }}
        />
      </div>
    </div>
  );
}
