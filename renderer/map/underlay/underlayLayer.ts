import type L from 'leaflet';
import type { LocalPlane } from '../../../core/geometry/localPlane.ts';
import type { Project } from '../../../core/model/project.ts';
import { underlayPane } from '../leaflet/planeMap.ts';
import { createStaticLayer, type StaticLayer } from '../leaflet/staticLayer.ts';
import { paintUnderlay } from './paintUnderlay.ts';
import { pictureSheet } from './pictureSheet.ts';
import type { Sheet } from './sheet.ts';
import { createTileCache } from './tileCache.ts';
import { tileFileSheet } from './tileFileSheet.ts';
import type { TileSupply } from './types.ts';

export interface UnderlayLayer {
  /** What lies there, or where, may have changed. */
  update(project: Project, plane: LocalPlane): void;
  remove(): void;
}

/** Tiles that come one after another are drawn together, at most so often. */
const gatherMs = 60;

/** The user's own maps and pictures, under the drawing. Without `supply` there is nothing to show. */
export function createUnderlayLayer(map: L.Map, supply: TileSupply | undefined): UnderlayLayer {
  const scratch = document.createElement('canvas');
  let sheets: readonly Sheet[] = [];
  let before: { readonly table: Project['underlay']; readonly plane: LocalPlane } | null = null;
  const stopHearing = supply?.onTileFiles(show);
  let timer = 0;
  let layer: StaticLayer | null = null;

  const cache = createTileCache(() => {
    timer ||= window.setTimeout(() => {
      timer = 0;
      layer?.redraw();
    }, gatherMs);
  });
  function createLayer(): StaticLayer {
    return createStaticLayer(
      map,
      (ctx, view) => {
        cache.forgetWaiting();
        return paintUnderlay(ctx, view, sheets, cache, scratch);
      },
      map.getPane(underlayPane)!,
    );
  }

  function show(): void {
    sheets = supply && before ? sheetsOf(before.table, before.plane, supply) : [];
    // Most properties have nothing underneath and need no canvas for it.
    if (sheets.length > 0) layer ??= createLayer();
    layer?.redraw();
  }

  return {
    update(project, plane) {
      if (before?.table === project.underlay && before.plane === plane) return;
      before = { table: project.underlay, plane };
      show();
    },
    remove() {
      stopHearing?.();
      window.clearTimeout(timer);
      cache.clear();
      layer?.remove();
    },
  };
}

/** The sheets that are shown, the lowest first. */
function sheetsOf(table: Project['underlay'], plane: LocalPlane, supply: TileSupply): Sheet[] {
  return [...table.values()]
    .filter(({ shown, opacity }) => shown && opacity > 0)
    .sort((a, b) => a.rank - b.rank)
    .flatMap((underlay) => {
      const { source, placement } = underlay;
      if (source.from === 'tileFile') {
        return supply.isOpen(source.path) ? [tileFileSheet(underlay, source, plane, supply)] : [];
      }
      return placement ? [pictureSheet(underlay, source, placement, plane, supply)] : [];
    });
}
