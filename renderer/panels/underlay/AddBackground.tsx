import { useRef } from 'react';
import { importPictures } from '../../pictures/importPicture.ts';
import { usePictureImport } from '../../pictures/importState.ts';
import { useWords } from '../../state/useFigures.ts';
import { chooseTileFile } from './tileFile.ts';

/** The ways in for maps and pictures. */
export function AddBackground() {
  const { add } = useWords().window.background;
  const input = useRef<HTMLInputElement>(null);
  const current = usePictureImport((state) => state.current);
  return (
    <>
      <p className="buttons">
        <button type="button" className="main" disabled={current !== null} onClick={() => input.current?.click()}>
          {add.picture}
        </button>
        <button type="button" onClick={() => void chooseTileFile()}>
          {add.mapFile}
        </button>
      </p>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        aria-label={add.pictureFiles}
        accept=".jpg,.jpeg,.png,.webp,.tif,.tiff,.wld,.jgw,.jpgw,.jpegw,.pgw,.pngw,.tfw,.tifw,.wpw"
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          if (files.length > 0) void importPictures(files);
        }}
      />
    </>
  );
}
