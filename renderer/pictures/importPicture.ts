import { projectionOf } from '../../core/coordinates/projection.ts';
import { systemOf, systemOfEpsg } from '../../core/coordinates/systems.ts';
import { type GeoTiffPlace, whyAskForSystem } from '../../core/exchange/image/geoTiffTags.ts';
import { latticeOf, looksLikeDegrees } from '../../core/exchange/image/latticeOf.ts';
import { isWorldFileName, readWorldFile } from '../../core/exchange/image/worldFile.ts';
import { layUnderlay, whyNotLayUnderlay } from '../../core/model/edits/layUnderlay.ts';
import type { ByCoordinates, ByEye } from '../../core/model/underlayThings.ts';
import { plainly, plainWords } from '../../core/words/figures.ts';
import type { Message } from '../../core/words/message.ts';
import { useApp } from '../state/appState.ts';
import { mapView } from '../state/mapView.ts';
import { newId } from '../state/newId.ts';
import { commit, host } from '../state/session.ts';
import { figuresOf } from '../state/useFigures.ts';
import { type Cutter, CutterProblem, startCutter } from './cutter.ts';
import { type PictureImport, type SystemChoice, usePictureImport } from './importState.ts';

/** Thrown where the user stopped it, or the host refused and has said so. */
class Stopped extends Error {}

const said = () => plainWords().window.background;

/** Brings pictures in, one after another. World files among `files` go with the picture of the same name. */
export async function importPictures(files: readonly File[]): Promise<void> {
  const pictures = files.filter(({ name }) => !isWorldFileName(name));
  usePictureImport.setState({
    problem: pictures.length > 0 ? null : said().pictures.worldFileAlone,
  });
  for (const picture of pictures) {
    const worldFile = files.find(({ name }) => isWorldFileName(name) && stemOf(name) === stemOf(picture.name));
    if (!(await importPicture(picture, worldFile ?? null))) return;
  }
}

/** False: stopped, so that those after it are not begun either. */
async function importPicture(file: File, worldFile: File | null): Promise<boolean> {
  const cutter = startCutter();
  let imageId: string | null = null;
  let giveUp = () => {};
  const stopped = new Promise<never>((_, reject) => {
    giveUp = () => reject(new Stopped());
  });
  stopped.catch(() => undefined);
  const until = <T>(work: Promise<T>): Promise<T> => Promise.race([work, stopped]);
  show({ fileName: file.name, phase: 'reading', tilesDone: 0, tilesInAll: 0, question: null, stop: () => giveUp() });
  try {
    const place = worldFile ? await placeInWorldFile(worldFile) : null;
    const { widthPx, heightPx, place: tagged } = await until(cutter.open(file, place === null));
    const size = { widthPx, heightPx };
    const known = place ?? tagged;
    const placement = known ? await until(placementOf(file.name, known, size)) : null;
    const begun = await host().project.beginPicture({ fileName: file.name, ...size });
    if (!begun.ok) throw new CutterProblem(plainWords().host.problem(begun.problem));
    imageId = begun.value.imageId;
    await until(storeTiles(cutter, imageId));
    await finish(file.name, imageId, size, placement);
    return true;
  } catch (error) {
    if (imageId !== null) await host().project.dropPicture({ imageId });
    if (error instanceof CutterProblem)
      usePictureImport.setState({ problem: said().pictures.ofFile({ fileName: file.name, problem: error.message }) });
    else if (!(error instanceof Stopped)) throw error;
    return !(error instanceof Stopped);
  } finally {
    cutter.end();
    usePictureImport.setState({ current: null });
  }
}

async function storeTiles(cutter: Cutter, imageId: string): Promise<void> {
  show({ phase: 'cutting', question: null });
  for (let tiles = await cutter.next(); tiles; tiles = await cutter.next()) {
    const stored = await host().project.addPictureTiles({ imageId, tiles });
    if (!stored.ok) throw new CutterProblem(plainWords().host.problem(stored.problem));
    show(stored.value);
  }
}

async function placeInWorldFile(file: File): Promise<GeoTiffPlace> {
  const { map, problem } = readWorldFile(await file.slice(0, 10_000).text());
  if (!map) throw new CutterProblem(plainly(problem));
  return { map, epsg: null, ownSystem: false, citation: null };
}

type Size = { readonly widthPx: number; readonly heightPx: number };

/** Where the coordinates put the picture; null: the user wants it laid by eye. */
async function placementOf(fileName: string, place: GeoTiffPlace, size: Size): Promise<ByCoordinates | null> {
  const system = systemKnown(place) ?? (await askForSystem(plainly(whyAskForSystem(place, fileName))));
  if (system === 'eye') return null;
  const { projection, problem } = projectionOf(system.definition);
  if (!projection) throw new CutterProblem(plainly(problem));
  const lattice = latticeOf(place.map, projection, size, plainly(system.name));
  if (!lattice.placement) throw new CutterProblem(plainly(lattice.problem));
  return lattice.placement;
}

/**
 * The system that the file names; where it says nothing of one, the one that the property's coordinates are written in.
 * Null: one that is not known here.
 */
function systemKnown({
  epsg,
  ownSystem,
  map,
}: GeoTiffPlace): { readonly name: Message; readonly definition: string } | null {
  if (epsg !== null) return systemOfEpsg(epsg);
  // Degrees are never taken for metres of the grid that the property's coordinates are shown in.
  if (ownSystem || looksLikeDegrees(map)) return null;
  const settings = systemOf(useApp.getState().file?.project.coordinateSettings.get('coordinates'));
  return settings.kind === 'projected' ? settings : null;
}

function askForSystem(why: string): Promise<SystemChoice> {
  return new Promise((answer) => show({ phase: 'asking', question: { why, answer } }));
}

async function finish(fileName: string, imageId: string, size: Size, coordinates: ByCoordinates | null): Promise<void> {
  const id = newId('underlay');
  const name = stemOf(fileName) || said().pictures.unnamed;
  const wanted = {
    id,
    name: name.slice(0, 200),
    source: { from: 'picture', imageId, fileName, ...size } as const,
    opacity: 1,
    shown: true,
    note: '',
  };
  const placed = coordinates ? { ...wanted, placement: coordinates } : null;
  const { file } = useApp.getState();
  const refusal = placed && file ? whyNotLayUnderlay(placed)(file.project) : null;
  const laid = placed && !refusal ? placed : { ...wanted, placement: byEye(size) };
  const done = await commit(said().steps.lay({ name }), layUnderlay(laid), {
    choose: [id],
    write: (edit) => host().project.finishPicture({ imageId, edit }),
  });
  if (!done) throw new Stopped();
  if (file && refusal) {
    const { pictures } = figuresOf(file.project).words.window.background;
    usePictureImport.setState({ problem: pictures.byEyeUntil({ why: refusal.message }) });
  }
  mapView.zoomTo(id);
}

/** Across the map as it is seen now. */
function byEye({ widthPx, heightPx }: Size): ByEye {
  const { centre, widthM, heightM } = mapView.extent();
  return { by: 'eye', at: centre, metresPerPixel: 0.8 * Math.min(widthM / widthPx, heightM / heightPx), upDeg: 0 };
}

function show(part: Partial<PictureImport>): void {
  usePictureImport.setState(({ current }) => ({ current: { ...current!, ...part } }));
}

/** "North block" from "North block.jpg". */
function stemOf(fileName: string): string {
  return fileName.replace(/\.[^.]*$/, '');
}
