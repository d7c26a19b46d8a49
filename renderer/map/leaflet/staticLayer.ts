import type L from 'leaflet';
import type { View } from '../plane/view.ts';
import { createPace } from './pace.ts';
import { createPicture, type Picture } from './pictureLayer.ts';
import { staticPane, viewOf } from './planeMap.ts';

/** Drawn beyond each edge of the map, so that a pan shows no blank: pixels. */
const marginPx = 160;
/** After an edit nothing moves and everybody waits: a drawing of ordinary size is then done at once. */
const editBudgetMs = 40;

export interface StaticLayer {
  /** What is drawn has changed. */
  redraw(): void;
  remove(): void;
}

/**
 * The settled drawing: two canvases, one shown, one being drawn. A picture is drawn in portions between frames and
 * shown when it is whole; until then the one before is moved and scaled along with the map.
 */
export function createStaticLayer(
  map: L.Map,
  paint: (ctx: CanvasRenderingContext2D, view: View) => Generator<void>,
  pane: HTMLElement = map.getPane(staticPane)!,
): StaticLayer {
  let shown: Picture = createPicture(map, pane);
  let drawn: Picture = createPicture(map, pane);
  let shownView: View | null = null;
  let job: Generator<void> | null = null;
  let jobView: View | null = null;
  let frame = 0;
  let removed = false;
  const pace = createPace();
  drawn.canvas.style.visibility = 'hidden';

  function start(firstBudgetMs: number): void {
    if (removed) return;
    jobView = viewOf(map, marginPx);
    drawn.begin(jobView);
    job = paint(drawn.ctx, jobView);
    step(firstBudgetMs);
  }

  function step(forMs: number): void {
    cancelAnimationFrame(frame);
    if (!job) return;
    const steppedAt = performance.now();
    const until = steppedAt + forMs;
    while (performance.now() < until) {
      if (job.next().done) {
        show();
        return;
      }
    }
    frame = requestAnimationFrame(() => {
      pace.frameTook(performance.now() - steppedAt);
      step(pace.stepMs());
    });
  }

  function show(): void {
    job = null;
    [shown, drawn] = [drawn, shown];
    shownView = jobView;
    shown.place();
    shown.canvas.style.visibility = '';
    drawn.canvas.style.visibility = 'hidden';
  }

  /** While the hand still pans: only when the margin is nearly used up and nothing is being drawn already. */
  function onMove(): void {
    if (job || !shownView || zooming) return;
    const now = viewOf(map);
    const used = Math.max(
      shownView.westM - now.westM,
      now.northM - shownView.northM,
      now.westM + now.widthPx / now.pxPerM - (shownView.westM + shownView.widthPx / shownView.pxPerM),
      shownView.northM - shownView.heightPx / shownView.pxPerM - (now.northM - now.heightPx / now.pxPerM),
    );
    if (now.pxPerM !== shownView.pxPerM || used * now.pxPerM > -marginPx / 3) start(pace.stepMs());
  }

  let zooming = false;
  const onZoomStart = () => {
    zooming = true;
  };
  const onZoomAnim = ({ center, zoom }: L.ZoomAnimEvent) => shown.placeFor(center, zoom);
  const onZoom = () => shown.place();
  const onMoveEnd = () => {
    zooming = false;
    shown.place();
    start(pace.stepMs());
  };

  map.on('zoomstart', onZoomStart);
  map.on('zoomanim', onZoomAnim);
  map.on('zoom viewreset', onZoom);
  map.on('move', onMove);
  map.on('moveend resize', onMoveEnd);

  return {
    redraw: () => start(editBudgetMs),
    remove() {
      removed = true;
      cancelAnimationFrame(frame);
      job = null;
      map.off('zoomstart', onZoomStart);
      map.off('zoomanim', onZoomAnim);
      map.off('zoom viewreset', onZoom);
      map.off('move', onMove);
      map.off('moveend resize', onMoveEnd);
      shown.canvas.remove();
      drawn.canvas.remove();
    },
  };
}
