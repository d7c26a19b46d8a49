import { useEffect, useId } from 'react';
import { boundsOf } from '../../../core/kinds/form.ts';
import { underlay as described } from '../../../core/kinds/underlay.ts';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import { moveUnderlay, underlaysInOrder } from '../../../core/model/edits/moveUnderlay.ts';
import type { TileFileSource, Underlay } from '../../../core/model/underlayThings.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { CheckField, TextField } from '../parts/fields.tsx';
import { formatPixel } from './formatPixel.ts';
import { PlacingDetails } from './PlacingDetails.tsx';
import { endPlacing } from './placing.ts';
import { openChosenTileFile, useTileFiles } from './tileFileStates.ts';
import { usePictureMap } from './usePictureMap.ts';

export function UnderlayDetails({ underlay }: { readonly underlay: Underlay }) {
  const { id, name, source, shown, note } = underlay;
  const set = (label: string, patch: Partial<Omit<Underlay, 'kind' | 'id'>>) =>
    change(`${label} ${name}`, 'underlay', id, patch);
  useEffect(() => endPlacing, []);
  return (
    <>
      <SourceFact underlay={underlay} />
      {source.from === 'picture' ? <PlacingDetails underlay={underlay} /> : null}
      <div className="field-pair">
        <CheckField label="Shown" value={shown} onCommit={(next) => set(next ? 'Show' : 'Hide', { shown: next })} />
        <OpacityField underlay={underlay} />
      </div>
      <Order underlay={underlay} />
      <TextField label="Name" required value={name} onCommit={(next) => set('Rename', { name: next })} />
      <TextField label="Note" long value={note} onCommit={(next) => set('Change the note of', { note: next })} />
    </>
  );
}

function SourceFact({ underlay }: { readonly underlay: Underlay }) {
  const units = useUnits();
  const map = usePictureMap(underlay);
  const { source } = underlay;
  if (source.from === 'tileFile') return <TileFileFact source={source} />;
  const size = `${fixed(source.widthPx, 0)} × ${fixed(source.heightPx, 0)} pixels`;
  return (
    <p className="details-fact">
      {source.fileName}, {size}
      {map ? `; one pixel is ${formatPixel(map.metresPerPixel, units)}` : ''}. It lies inside the property’s file.
    </p>
  );
}

/** Where an offline map lies; and where it is not shown, why, with the button that has it opened. */
function TileFileFact({ source: { path, fileName } }: { readonly source: TileFileSource }) {
  const state = useTileFiles((states) => states.get(path));
  if (state?.is === 'opening') {
    return (
      <p className="details-fact" role="status">
        Opening {fileName}…
      </p>
    );
  }
  if (state?.is !== 'left-out') {
    return (
      <p className="details-fact">
        Map tiles, read from <span className="path">{path}</span>. The file is not part of the property: keep it there.
      </p>
    );
  }
  const { code, message, remedy } = state.problem;
  const open = () => void openChosenTileFile(path);
  return (
    <section className="block" aria-label="Map file">
      {code === 'ask-first' ? (
        <>
          <p>This map file was named by the project file; open it?</p>
          <p className="path">{path}</p>
          <p>Nothing of it has been read yet. Leave it if you don’t know the map.</p>
        </>
      ) : (
        <p className="field-problem" role="alert">
          {message} {remedy}
        </p>
      )}
      <p className="buttons">
        <button type="button" className="main" onClick={open}>
          {code === 'ask-first' ? 'Open the map' : 'Try again'}
        </button>
      </p>
    </section>
  );
}

function OpacityField({ underlay: { id, name, opacity } }: { readonly underlay: Underlay }) {
  const fieldId = useId();
  const percent = Math.round(opacity * 100);
  return (
    <div className="field">
      <label htmlFor={fieldId}>Strength {percent} %</label>
      <input
        id={fieldId}
        type="range"
        {...boundsOf(described.fields.opacity, 0.01)}
        step={5}
        value={percent}
        onChange={(event) => {
          const next = Number(event.target.value) / 100;
          void commit(`Change the strength of ${name}`, changeThing({ kind: 'underlay', id, to: { opacity: next } }), {
            mergeKey: `opacity ${id}`,
          });
        }}
      />
    </div>
  );
}

/** Over or under its neighbours; not shown where there are none. */
function Order({ underlay }: { readonly underlay: Underlay }) {
  const { project } = useOpenFile();
  const inOrder = underlaysInOrder(project);
  if (inOrder.length < 2) return null;
  const at = inOrder.findIndex(({ id }) => id === underlay.id);
  const move = (way: 'up' | 'down') =>
    void commit(`${way === 'up' ? 'Raise' : 'Lower'} ${underlay.name}`, moveUnderlay({ id: underlay.id, way }));
  return (
    <p className="buttons">
      <button type="button" disabled={at === inOrder.length - 1} onClick={() => move('up')}>
        Over the next
      </button>
      <button type="button" disabled={at === 0} onClick={() => move('down')}>
        Under the next
      </button>
    </p>
  );
}
