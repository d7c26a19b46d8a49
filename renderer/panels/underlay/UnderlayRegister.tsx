import type { Underlay } from '../../../core/model/underlayThings.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { Register } from '../parts/Register.tsx';
import { AddBackground } from './AddBackground.tsx';
import { useTileFiles } from './tileFileStates.ts';
import { usePictureMap } from './usePictureMap.ts';

/** The user's own maps and pictures under the drawing. */
export function UnderlayRegister() {
  const { project } = useOpenFile();
  const { window: words } = useWords();
  const { list } = words.background;
  const rows = [...project.underlay.values()].sort((a, b) => b.rank - a.rank);
  return (
    <>
      <AddBackground />
      <Register<Underlay>
        caption={list.caption}
        rows={rows}
        idOf={({ id }) => id}
        empty={list.empty}
        columns={[
          { title: words.frame.common.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
          { title: list.placed, cell: (underlay) => <HowPlaced underlay={underlay} /> },
          { title: list.shown, cell: (underlay) => <HowShown underlay={underlay} /> },
        ]}
      />
    </>
  );
}

function HowShown({ underlay: { source, shown, opacity } }: { readonly underlay: Underlay }) {
  const { list } = useWords().window.background;
  const file = useTileFiles((states) => (source.from === 'tileFile' ? states.get(source.path) : undefined));
  if (!shown) return list.hidden;
  if (file?.is === 'opening') return list.opening;
  if (file?.is === 'left-out') return file.problem.code === 'ask-first' ? list.notOpened : list.leftOut;
  return list.percent({ percent: Math.round(opacity * 100) });
}

function HowPlaced({ underlay }: { readonly underlay: Underlay }) {
  const { list } = useWords().window.background;
  const map = usePictureMap(underlay);
  const { placement } = underlay;
  if (!placement) return list.byTiles;
  if (placement.by === 'coordinates') return list.byCoordinates(placement);
  if (placement.by === 'distance') return list.byDistance;
  if (placement.by === 'eye' || !map?.quality) return list.byEye;
  return list.byPoints({ points: placement.points.length, rmsM: map.quality.rmsM });
}
