import type { Underlay } from '../../../core/model/underlayThings.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Register } from '../parts/Register.tsx';
import { AddBackground } from './AddBackground.tsx';
import { useTileFiles } from './tileFileStates.ts';
import { usePictureMap } from './usePictureMap.ts';

/** The user's own maps and pictures under the drawing. */
export function UnderlayRegister() {
  const { project } = useOpenFile();
  const rows = [...project.underlay.values()].sort((a, b) => b.rank - a.rank);
  return (
    <>
      <AddBackground />
      <Register<Underlay>
        caption="Background maps, the uppermost first"
        rows={rows}
        idOf={({ id }) => id}
        empty="None yet. Bring in an aerial photo, a scanned plan or a surveyor’s GeoTIFF (JPEG, PNG, WebP, TIFF; with a world file if there is one), or add an offline map file (MBTiles)."
        columns={[
          { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
          { title: 'Placed', cell: (underlay) => <HowPlaced underlay={underlay} /> },
          { title: 'Shown', cell: (underlay) => <HowShown underlay={underlay} /> },
        ]}
      />
    </>
  );
}

function HowShown({ underlay: { source, shown, opacity } }: { readonly underlay: Underlay }) {
  const file = useTileFiles((states) => (source.from === 'tileFile' ? states.get(source.path) : undefined));
  if (!shown) return 'hidden';
  if (file?.is === 'opening') return 'opening…';
  if (file?.is === 'left-out') return file.problem.code === 'ask-first' ? 'not opened yet' : 'left out';
  return `${Math.round(opacity * 100)} %`;
}

function HowPlaced({ underlay }: { readonly underlay: Underlay }) {
  const units = useUnits();
  const map = usePictureMap(underlay);
  const { placement } = underlay;
  if (!placement) return 'by its tiles';
  if (placement.by === 'coordinates') return `by coordinates, ${placement.system}`;
  if (placement.by === 'distance') return 'by a distance';
  if (placement.by === 'eye' || !map?.quality) return 'by eye only';
  return `${placement.points.length} points, RMS ${formatTape(map.quality.rmsM, units)}`;
}
