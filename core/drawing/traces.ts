import type { PaperPoint, Stroke, TracesItem } from './displayList.ts';

/** Polylines under way, one vertex after the other. */
export interface Traces {
  /** Begins a polyline. */
  readonly begin: () => void;
  /** The next vertex of it. */
  readonly add: (x: number, y: number) => void;
  /** What was traced, as an item; to be called once. */
  readonly done: (stroke: Stroke) => TracesItem;
}

/** Room for so many coordinates at first; it doubles as often as it must. */
const firstRoom = 1024;

/** Room that no traces are using: thousands of items are made one after the other, and each keeps only what it needs. */
let spare: Float64Array | null = null;

export function createTraces(): Traces {
  let coordinates = spare ?? new Float64Array(firstRoom);
  spare = null;
  let length = 0;
  const ends: number[] = [];
  let began = 0;

  function end(): void {
    // A lone vertex draws nothing.
    if (length - began < 4) length = began;
    else ends.push(length);
    began = length;
  }

  return {
    begin: end,
    add(x, y) {
      if (length + 2 > coordinates.length) {
        const wider = new Float64Array(2 * coordinates.length);
        wider.set(coordinates);
        coordinates = wider;
      }
      coordinates[length++] = x;
      coordinates[length++] = y;
    },
    done(stroke) {
      end();
      spare = coordinates;
      return { kind: 'traces', coordinates: coordinates.slice(0, length), ends, stroke };
    },
  };
}

/** The polylines of such an item, vertex by vertex: for painters that are in no hurry. */
export function tracePoints({ coordinates, ends }: Pick<TracesItem, 'coordinates' | 'ends'>): PaperPoint[][] {
  return ends.map((end, i) => {
    const path: PaperPoint[] = [];
    for (let k = ends[i - 1] ?? 0; k < end; k += 2) path.push([coordinates[k]!, coordinates[k + 1]!]);
    return path;
  });
}
