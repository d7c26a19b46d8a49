import { useEffect, useId } from 'react';
import { boundsOf } from '../../../core/kinds/form.ts';
import { underlay as described } from '../../../core/kinds/underlay.ts';
import { changeThing } from '../../../core/model/edits/changeThing.ts';
import { moveUnderlay, underlaysInOrder } from '../../../core/model/edits/moveUnderlay.ts';
import type { TileFileSource, Underlay } from '../../../core/model/underlayThings.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { CheckField, TextField } from '../parts/fields.tsx';
import { formatPixel } from './formatPixel.ts';
import { PlacingDetails } from './PlacingDetails.tsx';
import { endPlacing } from './placing.ts';
import { openChosenTileFile, useTileFiles } from './tileFileStates.ts';
import { usePictureMap } from './usePictureMap.ts';

export function UnderlayDetails({ underlay }: { readonly underlay: Underlay }) {
  const { id, name, source, shown, note } = underlay;
  const { window: words } = useWords();
  const { details, steps } = words.background;
  const { common } = words.frame;
  const set = (step: 'show' | 'hide' | 'rename' | 'note', patch: Partial<Omit<Underlay, 'kind' | 'id'>>) =>
    change(steps[step]({ name }), 'underlay', id, patch);
  useEffect(() => endPlacing, []);
  return (
    <>
      <SourceFact underlay={underlay} />
      {source.from === 'picture' ? <PlacingDetails underlay={underlay} /> : null}
      <div className="field-pair">
        <CheckField
          label={details.shown}
          value={shown}
          onCommit={(next) => set(next ? 'show' : 'hide', { shown: next })}
        />
        <OpacityField underlay={underlay} />
      </div>
      <Order underlay={underlay} />
      <TextField label={common.name} required value={name} onCommit={(next) => set('rename', { name: next })} />
      <TextField label={common.note} long value={note} onCommit={(next) => set('note', { note: next })} />
    </>
  );
}

function SourceFact({ underlay }: { readonly underlay: Underlay }) {
  const f = useFigures();
  const map = usePictureMap(underlay);
  const { source } = underlay;
  if (source.from === 'tileFile') return <TileFileFact source={source} />;
  const pixel = map && formatPixel(map.metresPerPixel, f);
  return <p className="details-fact">{f.words.window.background.details.picture({ ...source, pixel })}</p>;
}

/** Where an offline map lies; and where it is not shown, why, with the button that has it opened. */
function TileFileFact({ source: { path, fileName } }: { readonly source: TileFileSource }) {
  const state = useTileFiles((states) => states.get(path));
  const words = useWords();
  const { details } = words.window.background;
  if (state?.is === 'opening') {
    return (
      <p className="details-fact" role="status">
        {details.opening({ fileName })}
      </p>
    );
  }
  if (state?.is !== 'left-out') {
    return <p className="details-fact path">{details.tiles({ path })}</p>;
  }
  const { code, message, remedy } = state.problem;
  const open = () => void openChosenTileFile(path);
  return (
    <section className="block" aria-label={details.mapFile}>
      {code === 'ask-first' ? (
        <>
          <p>{details.named}</p>
          <p className="path">{path}</p>
          <p>{details.nothingRead}</p>
        </>
      ) : (
        <p className="field-problem" role="alert">
          {words.host.problem({ message, remedy })}
        </p>
      )}
      <p className="buttons">
        <button type="button" className="main" onClick={open}>
          {code === 'ask-first' ? details.open : words.window.frame.common.tryAgain}
        </button>
      </p>
    </section>
  );
}

function OpacityField({ underlay: { id, name, opacity } }: { readonly underlay: Underlay }) {
  const fieldId = useId();
  const { details, steps } = useWords().window.background;
  const percent = Math.round(opacity * 100);
  return (
    <div className="field">
      <label htmlFor={fieldId}>{details.opacity({ percent })}</label>
      <input
        id={fieldId}
        type="range"
        {...boundsOf(described.fields.opacity, 0.01)}
        step={5}
        value={percent}
        onChange={(event) => {
          const next = Number(event.target.value) / 100;
          void commit(steps.opacity({ name }), changeThing({ kind: 'underlay', id, to: { opacity: next } }), {
            mergeKey: `opacity:${id}`,
          });
        }}
      />
    </div>
  );
}

/** Over or under its neighbours; not shown where there are none. */
function Order({ underlay }: { readonly underlay: Underlay }) {
  const { project } = useOpenFile();
  const { details, steps } = useWords().window.background;
  const inOrder = underlaysInOrder(project);
  if (inOrder.length < 2) return null;
  const at = inOrder.findIndex(({ id }) => id === underlay.id);
  const move = (way: 'up' | 'down') =>
    void commit(steps[way === 'up' ? 'raise' : 'lower'](underlay), moveUnderlay({ id: underlay.id, way }));
  return (
    <p className="buttons">
      <button type="button" disabled={at === inOrder.length - 1} onClick={() => move('up')}>
        {details.over}
      </button>
      <button type="button" disabled={at === 0} onClick={() => move('down')}>
        {details.under}
      </button>
    </p>
  );
}
