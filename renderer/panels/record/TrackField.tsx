import { useRef, useState } from 'react';
import { readGpx } from '../../../core/exchange/gpx/readGpx.ts';
import type { PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { leastOf } from '../../../core/model/extremes.ts';
import { trackAsTrench } from '../../../core/record/edits/trackAsTrench.ts';
import type { CrossingFigures, GatewayShape } from '../../../core/shapes/types.ts';
import { useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { LengthField } from '../parts/LengthField.tsx';

/** Takes a GPS track that was walked along the open trench as its path. */
export function TrackField({ figures, shape }: { readonly figures: CrossingFigures; readonly shape: GatewayShape }) {
  const f = useFigures();
  const { track: words, edits } = f.words.window.record.crossing;
  const { survey } = useOpenFile();
  const input = useRef<HTMLInputElement>(null);
  const [seM, setSeM] = useState(5);
  const take = async (file: File) => {
    const read = readGpx(await file.text());
    if (!read.ok) return say(`${f.say(read.message)} ${f.say(read.remedy)}`, 'refused');
    const away = ({ path }: PreviewFeature) =>
      leastOf(path.map((at) => xyDistanceM(survey.plane.toXy(at), shape.centre)));
    const [nearest] = read.preview.features.filter(({ shape: is }) => is === 'line').sort((a, b) => away(a) - away(b));
    if (!nearest) return say(words.none({ fileName: file.name }), 'refused');
    const track = { crossingId: figures.crossing.id, path: nearest.path, seM };
    void commit(edits.track({ gateway: figures.gateway.name }), trackAsTrench(track, survey, newId), {
      recording: true,
    });
  };
  return (
    <div className="field-pair">
      <LengthField
        label={words.error}
        valueM={seM}
        minM={0.01}
        maxM={100}
        hint={words.errorHint(null)}
        onCommitM={(next) => {
          if (next !== null) setSeM(next);
        }}
      />
      <div className="field">
        <button type="button" onClick={() => input.current?.click()}>
          {words.bring}
        </button>
        <p className="field-hint">{words.bringHint}</p>
        <input
          ref={input}
          type="file"
          hidden
          accept=".gpx,application/gpx+xml"
          aria-label={words.file}
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
