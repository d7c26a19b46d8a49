import type { Item, PaperBox, PaperPoint } from '../../drawing/displayList.ts';
import type { LabelRequest } from '../../drawing/labels/label.ts';

/** What one kind of thing brings to the map. */
export interface MapLayer {
  readonly items: readonly Item[];
  /** Paper that its signs take. */
  readonly signs: readonly PaperBox[];
  /** Lines that labels had better not cross. */
  readonly lines: readonly (readonly PaperPoint[])[];
  readonly labels: readonly LabelRequest[];
}

export const emptyLayer: MapLayer = { items: [], signs: [], lines: [], labels: [] };

export function mergeLayers(layers: readonly MapLayer[]): MapLayer {
  return {
    items: layers.flatMap(({ items }) => items),
    signs: layers.flatMap(({ signs }) => signs),
    lines: layers.flatMap(({ lines }) => lines),
    labels: layers.flatMap(({ labels }) => labels),
  };
}
