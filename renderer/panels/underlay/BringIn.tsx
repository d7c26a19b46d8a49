import { useRef } from 'react';
import { bringInPictures } from '../../pictures/bringIn.ts';
import { usePictureImport } from '../../pictures/importState.ts';
import { SystemQuestion } from './SystemQuestion.tsx';
import { chooseTileFile } from './tileFile.ts';

/** The ways in for maps and pictures, how far the one that is coming in is, and how to stop it. */
export function BringIn() {
  const input = useRef<HTMLInputElement>(null);
  const { current, problem } = usePictureImport();
  return (
    <>
      <p className="buttons">
        <button type="button" className="main" disabled={current !== null} onClick={() => input.current?.click()}>
          Bring in a picture
        </button>
        <button type="button" onClick={() => void chooseTileFile()}>
          Lay map tiles
        </button>
      </p>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        aria-label="Pictures and world files"
        accept=".jpg,.jpeg,.png,.webp,.tif,.tiff,.wld,.jgw,.jpgw,.jpegw,.pgw,.pngw,.tfw,.tifw,.wpw"
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          if (files.length > 0) void bringInPictures(files);
        }}
      />
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      {current?.answer ? <SystemQuestion fileName={current.fileName} answer={current.answer} /> : null}
      {current ? (
        <p className="working" role="status">
          <span>
            {current.phase === 'cutting'
              ? `${current.fileName}: ${current.tilesDone} of ${current.tilesInAll} tiles`
              : `${current.fileName}: reading`}
          </span>
          <progress max={Math.max(1, current.tilesInAll)} value={current.tilesDone} aria-label="How far it is" />
          <button type="button" onClick={current.stop}>
            Stop
          </button>
        </p>
      ) : null}
    </>
  );
}
