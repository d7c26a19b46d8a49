import { formatGrid, formatPlace } from '../../core/coordinates/formatPlace.ts';
import { readGridPlace, readPlace } from '../../core/coordinates/readPlace.ts';
import { systemOf } from '../../core/coordinates/systems.ts';
import { paletteOf } from '../../core/drawing/palette.ts';
import { type Box, boxAround } from '../../core/geometry/box.ts';
import type { LocalPlane } from '../../core/geometry/localPlane.ts';
import type { LonLat, Xy } from '../../core/geometry/types.ts';
import { EditRefused } from '../../core/model/edits/support/edit.ts';
import { propertyOf } from '../../core/model/project.ts';
import { workingPlane } from '../../core/shapes/workingPlane.ts';
import { figures } from '../../core/words/figures.ts';
import { lookAlike } from './findings.ts';
import { createCross } from './input/keyboardCursor.ts';
import { isUndo, listenToKeys } from './input/listenToKeys.ts';
import { listenToPointer } from './input/listenToPointer.ts';
import { drawCross } from './interaction/cues.ts';
import { paintGridLabels } from './interaction/gridLabels.ts';
import { paintFind } from './interaction/paintFind.ts';
import { paintMarked } from './interaction/paintMarked.ts';
import { chooseSnap, snapTargets } from './interaction/snapping.ts';
import { createOverlayLayer } from './leaflet/overlayLayer.ts';
import { createPlaneMap, showBox, toLatLng, viewOf } from './leaflet/planeMap.ts';
import { createStaticLayer } from './leaflet/staticLayer.ts';
import { type MapEdit, type MapEvents, type MapHandle, type MapInput, type ToolName, toolsFor } from './mapTypes.ts';
import { toPx } from './plane/view.ts';
import { buildScene, type Scene } from './scene/buildScene.ts';
import { partsFor } from './scene/partsFor.ts';
import { lookOf } from './staticLayer/look.ts';
import { paintStatic } from './staticLayer/paintStatic.ts';
import { forgetTextWidths, textWidthOn } from './staticLayer/textWidth.ts';
import { createStatusBar, type StatusBarElements } from './statusBar/createStatusBar.ts';
import { createTools } from './tools/createTools.ts';
import { snapReachPx } from './tools/reach.ts';
import type { Pointer, Tool, ToolContext } from './tools/tool.ts';
import { picturesBox, underlayBox } from './underlay/underlayBox.ts';
import { createUnderlayLayer } from './underlay/underlayLayer.ts';

/** A property that has nothing drawn yet is shown this wide. */
const emptyViewM = 600;
/** Going to coordinates shows so much of the ground across, or less where the map is nearer already. */
const goToViewM = 400;
/** Going to a thing never zooms in nearer than this across. */
const thingViewM = 60;
/** Where a crossing is taped, nearer. */
const recordViewM = 14;

export interface MapController extends MapHandle {
  update(input: MapInput): void;
  zoomBy(steps: number): void;
  remove(): void;
}

export interface MapElements {
  /** Holds Leaflet's map, and the keyboard. */
  readonly stage: HTMLElement;
  readonly statusBar: StatusBarElements;
}

/** The map without any framework: it owns its elements and is told of changes by `update`. */
export function createMapController(elements: MapElements, first: MapInput, events: MapEvents): MapController {
  const { stage } = elements;
  let input = first;
  let plane: LocalPlane = workingPlane(propertyOf(first.project));
  let scene: Scene = buildScene(first.project, first.survey, plane);
  let palette = paletteOf(first.theme);
  let pointer: Pointer | null = null;
  /** The hint that stands at the status bar. */
  let saidFor = '';

  const map = createPlaneMap(stage);
  const underlay = createUnderlayLayer(map, first.tiles);
  const settled = createStaticLayer(map, (ctx, view) =>
    paintStatic(ctx, lookOf(view, scene, input, palette, textWidthOn(ctx))),
  );
  const overlay = createOverlayLayer(map, (ctx, view) => {
    const tools = { ctx, view, palette, say: figures(input.units).say };
    paintGridLabels(tools, input.units);
    if (input.find) paintFind(tools, input.find, input.survey);
    paintMarked(tools, scene, input);
    tool.paint(tools);
    const cross = keyCross.at();
    if (cross) drawCross(ctx, palette, toPx(view, cross));
    refreshStatusBar();
  });
  const statusBar = createStatusBar(elements.statusBar, { onTyped, onPlaceTyped, onLeave: () => focus() });
  /** Coordinates that looked swapped: the same ones again are taken so. */
  let swappedOnce: string | null = null;

  const context: ToolContext = {
    input: () => input,
    scene: () => scene,
    view: () => viewOf(map),
    events,
    words: () => figures(input.units).words.window.map,
    snap(at, except = null) {
      if (at.alt) return null;
      const reachM = snapReachPx / viewOf(map).pxPerM;
      return chooseSnap(at.xy, snapTargets(scene, at.xy, reachM, except), reachM);
    },
    toLonLat: (xy) => plane.toLonLat(xy),
    toXy: (lonLat) => plane.toXy(lonLat),
    commit,
    refuse,
    invalidate: () => overlay.invalidate(),
    setTool,
    setCursor(css) {
      stage.style.cursor = css;
    },
  };
  const tools = createTools(context);
  let tool: Tool = tools.choose;

  const keyCross = createCross(map, (xy) => movePointer({ xy, ...noKeys, byKeyboard: true }));
  const noPointer = listenToPointer(stage, map, {
    move: (at) => {
      keyCross.hide();
      movePointer(at);
    },
    click: (at) => {
      movePointer(at);
      clickAt(at);
    },
    doubleClick: (at) => {
      tool.doubleClick?.(at);
      refreshStatusBar();
    },
    press: (at) => tool.press?.(at) ?? false,
    drag: (at) => {
      pointer = at;
      tool.drag?.(at);
      tellCursor();
    },
    release: (at, moved) => tool.release?.(at, moved),
    out: () => {
      pointer = null;
      tool.out();
      statusBar.place(null);
    },
  });
  const noKeysHeard = listenToKeys(stage, onKey);

  const resized = new ResizeObserver(() => map.invalidateSize({ pan: false }));
  resized.observe(stage);
  let zooming = false;
  let removed = false;
  // Not zoomanim: a zoom to where the map stands already ends before all have heard of it.
  map.on('zoomstart', () => {
    zooming = true;
  });
  map.on('zoomend', () => {
    zooming = false;
  });
  const onMapMove = () => {
    statusBar.scale(viewOf(map).pxPerM, input.units);
  };
  map.on('move zoom', onMapMove);

  showAll(false);
  onMapMove();
  refreshStatusBar();
  void document.fonts?.ready.then(() => {
    forgetTextWidths();
    settled.redraw();
    overlay.invalidate();
  });

  function movePointer(at: Pointer): void {
    pointer = at;
    tool.move(at);
    tellCursor();
    refreshStatusBar();
  }

  function clickAt(at: Pointer): void {
    saidFor = '';
    tool.click(at);
    refreshStatusBar();
    overlay.invalidate();
  }

  function tellCursor(): void {
    if (!pointer) return;
    const at = { xy: pointer.xy, lonLat: plane.toLonLat(pointer.xy) };
    const progress = tool.progress();
    statusBar.place(placeInWords(at.xy, at.lonLat));
    if (!events.onCursor) return;
    const { lengthM, bearingDeg, snappedTo } = progress;
    events.onCursor({ ...at, lengthM, bearingDeg, snappedTo, metresPerPixel: 1 / viewOf(map).pxPerM });
  }

  /** What the next click does; a refusal stays until that changes. */
  function refreshStatusBar(): void {
    statusBar.fields(tool.fields());
    statusBar.progress(tool.progress(), input.units);
    const hint = tool.hint();
    if (hint === saidFor) return;
    saidFor = hint;
    statusBar.say(hint, 'hint');
  }

  function refuse(text: string): void {
    saidFor = tool.hint();
    statusBar.say(text, 'refused');
    events.onRefused?.(text);
  }

  async function commit(edit: MapEdit): Promise<boolean> {
    const before = input.project;
    let after = before;
    try {
      after = edit.apply(before);
    } catch (error) {
      if (!(error instanceof EditRefused)) throw error;
      refuse(figures(input.units).say(error.refusal.message));
      return false;
    }
    // Where nothing has come between, it need not be worked out again.
    return events.onEdit({ ...edit, apply: (project) => (project === before ? after : edit.apply(project)) });
  }

  function isAtHand(name: ToolName): boolean {
    return name === 'pin' ? Boolean(input.placing) : toolsFor(input).some((spec) => spec.name === name);
  }

  function setTool(name: ToolName): void {
    if (!isAtHand(name)) return;
    if (tool.name !== name) {
      if (tool.name === 'pin') events.onPlacing?.({ end: true });
      // The picture that is placed stays the chosen one.
      else if (name !== 'pin' || tool.name !== 'choose') tool.cancel();
      tool.out();
      tool = tools[name];
      events.onToolChange?.(name);
    }
    if (name === 'choose') keyCross.hide();
    stage.style.cursor = name === 'choose' ? '' : 'crosshair';
    saidFor = '';
    refreshStatusBar();
    if (pointer) tool.move(pointer);
    overlay.invalidate();
  }

  function placeInWords(xy: Xy, lonLat: LonLat): string {
    if (!propertyOf(input.project).placed) return formatGrid(xy, input.units);
    return formatPlace(lonLat, systemOf(input.project.coordinateSettings.get('coordinates')), figures(input.units));
  }

  /** Coordinates typed at the status bar; says what is wrong with them. True when they are used up. */
  function onPlaceTyped(text: string): boolean {
    if (!propertyOf(input.project).placed) {
      const read = readGridPlace(text, input.units);
      if ('problem' in read) return refused(figures(input.units).say(read.problem));
      goTo(plane.toLonLat(read.xy));
      return true;
    }
    const system = systemOf(input.project.coordinateSettings.get('coordinates'));
    const { origin } = propertyOf(input.project);
    const read = readPlace(text, system, origin);
    if (read.lonLat) goTo(read.lonLat);
    else if (read.swapped && text === swappedOnce) goTo(read.swapped);
    else {
      swappedOnce = read.swapped ? text : null;
      return refused(
        read.swapped ? context.words().status.swap({ problem: read.problem }) : figures(input.units).say(read.problem),
      );
    }
    swappedOnce = null;
    return true;
  }

  function refused(text: string): false {
    refuse(text);
    return false;
  }

  /** Leaflet ends a zoom that it has begun, with the next frame; what is asked for meanwhile waits for that. */
  function whenStill(work: () => void): void {
    requestAnimationFrame(() => {
      if (removed) return;
      if (zooming) map.once('zoomend', () => whenStill(work));
      else work();
    });
  }

  function goTo(lonLat: LonLat): void {
    whenStill(() => showPlace(plane.toXy(lonLat)));
  }

  function showPlace(xy: Xy): void {
    map.setView(toLatLng(xy), Math.max(map.getZoom(), Math.log2(map.getSize().x / goToViewM)), { animate: false });
    focus();
    keyCross.moveTo(xy);
    overlay.invalidate();
  }

  function onTyped(firstText: string, secondText: string): void {
    saidFor = '';
    if (!tool.typed?.(firstText, secondText)) return;
    statusBar.clearFields();
    refreshStatusBar();
    focus();
    const last = tool.lastPoint?.();
    if (last) keyCross.moveTo(last);
    tellCursor();
  }

  function onKey(event: KeyboardEvent): boolean {
    const used = answerKey(event);
    if (used) refreshStatusBar();
    return used;
  }

  function answerKey(event: KeyboardEvent): boolean {
    const { key } = event;
    if (isUndo(event)) return tool.takeBack?.() ?? false;
    if (key === 'Escape') return backOut();
    if (key === 'Enter' || key === ' ') {
      const cross = keyCross.at();
      if (cross && document.activeElement === stage) {
        clickAt({ xy: cross, shift: event.shiftKey, alt: event.altKey, ctrl: false, byKeyboard: true });
        return true;
      }
    }
    if (tool.key(event)) return true;
    if (keyCross.key(event, pointer?.xy ?? null)) return true;
    if (/^[0-9.]$/.test(key) && tool.fields()) {
      statusBar.beginTyping(key);
      return true;
    }
    return viewKey(key) || toolKey(key);
  }

  function backOut(): boolean {
    if (tool.cancel()) {
      overlay.invalidate();
      return true;
    }
    if (tool.name !== 'choose') {
      setTool('choose');
      return true;
    }
    if (!keyCross.at()) return false;
    keyCross.hide();
    return true;
  }

  function viewKey(key: string): boolean {
    if (key === '+' || key === '=' || key === 'PageUp') zoomBy(1);
    else if (key === '-' || key === 'PageDown') zoomBy(-1);
    else if (key === 'Home') showAll(true);
    else return false;
    return true;
  }

  function toolKey(key: string): boolean {
    const spec = toolsFor(input).find((each) => each.key === key.toUpperCase());
    if (!spec) return false;
    setTool(spec.name);
    focus();
    return true;
  }

  function zoomBy(steps: number): void {
    const cross = keyCross.at();
    if (cross) map.setZoomAround(toLatLng(cross), map.getZoom() + steps);
    else map.setZoom(map.getZoom() + steps);
  }

  function showAll(animate: boolean): void {
    const half = emptyViewM / 2;
    const box = scene.extent ?? picturesBox(input.project, plane) ?? [-half, -half, half, half];
    showBox(map, box, 40, animate);
  }

  function focus(): void {
    stage.focus({ preventScroll: true });
  }

  return {
    update(next) {
      const before = input;
      input = next;
      const anotherProperty = propertyOf(before.project).origin !== propertyOf(next.project).origin;
      if (before.theme !== next.theme) palette = paletteOf(next.theme);
      const redrawn = next.project !== before.project || next.survey !== before.survey;
      if (redrawn) {
        plane = workingPlane(propertyOf(next.project));
        scene = buildScene(next.project, next.survey, plane);
      }
      if (input.placing && !before.placing) setTool('pin');
      else if (!isAtHand(tool.name)) setTool('choose');
      underlay.update(next.project, plane);
      const settledFields = ['workspace', 'plan', 'voltage', 'record', 'units', 'theme', 'chosen'] as const;
      const otherSigns = !lookAlike(before.findings, next.findings);
      if (redrawn || otherSigns || settledFields.some((field) => before[field] !== next[field])) settled.redraw();
      overlay.invalidate();
      if (anotherProperty) showAll(false);
      if (pointer && !pointer.byKeyboard && redrawn) tool.move(pointer);
      refreshStatusBar();
    },
    fit: () => showAll(true),
    zoomBy,
    zoomTo(id) {
      const box = boxOfId(scene, input, id) ?? underlayBox(input.project, plane, id);
      const leastM = input.workspace === 'record' ? recordViewM : thingViewM;
      if (box) whenStill(() => showBox(map, box, leastM, true));
    },
    goTo,
    askForPlace: () => statusBar.askForPlace(),
    extent() {
      const view = viewOf(map);
      const [widthM, heightM] = [view.widthPx / view.pxPerM, view.heightPx / view.pxPerM];
      return { centre: plane.toLonLat([view.westM + widthM / 2, view.northM - heightM / 2]), widthM, heightM };
    },
    setTool,
    tool: () => tool.name,
    focus,
    remove() {
      removed = true;
      noPointer();
      noKeysHeard();
      resized.disconnect();
      underlay.remove();
      settled.remove();
      overlay.remove();
      map.remove();
      elements.statusBar.line.replaceChildren();
      elements.statusBar.strip.replaceChildren();
    },
  };
}

const noKeys = { shift: false, alt: false, ctrl: false };

function boxOfId(scene: Scene, input: MapInput, id: string): Box | null {
  const { parts, places } = partsFor(scene, input, id);
  const corners = parts.flatMap(({ box }): Xy[] => [
    [box[0], box[1]],
    [box[2], box[3]],
  ]);
  return boxAround([...corners, ...places]);
}
