import type { Problem } from '../../../core/api/result.ts';
import { layUnderlay, whyNotLayUnderlay } from '../../../core/model/edits/layUnderlay.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { useApp } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { report } from '../../state/report.ts';
import { commit, host } from '../../state/session.ts';
import { figuresOf } from '../../state/useFigures.ts';
import { openChosenTileFile } from './tileFileStates.ts';

/** Asks for an MBTiles file, with the system's own dialog where there is one, and lays it under the drawing. */
export async function chooseTileFile(): Promise<void> {
  const answer = await host().desktop.chooseTileFile();
  if (answer.ok) {
    const why = answer.value === null ? null : await layTileFile(answer.value);
    if (why) report(why);
  } else if (answer.problem.code === 'not-available') useApp.setState({ dialog: { kind: 'chooseTileFile' } });
  else report(answer.problem);
}

/** Lays the file's map under the drawing; answers why not, or null. */
export async function layTileFile(path: string): Promise<Problem | null> {
  const opened = await openChosenTileFile(path);
  if (!opened.ok) return opened.problem;
  const { name, fileName, minZoom, maxZoom, bounds, attribution } = opened.value;
  const id = newId('underlay');
  const wanted = {
    id,
    name,
    source: { from: 'tileFile', path, fileName, minZoom, maxZoom, bounds } as const,
    placement: null,
    opacity: 1,
    shown: true,
    note: attribution,
  };
  const { file } = useApp.getState();
  const said = plainWords().window.background;
  const refusal = file && whyNotLayUnderlay(wanted)(file.project);
  if (refusal) {
    return { code: 'not-valid', message: figuresOf(file.project).say(refusal.message), remedy: said.add.thenAdd };
  }
  const hadPlace = file?.project.property.get('property')?.placed;
  if ((await commit(said.steps.lay({ name }), layUnderlay(wanted), { choose: [id] })) && !hadPlace) {
    mapView.zoomTo(id);
  }
  return null;
}
