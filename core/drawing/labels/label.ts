import type { PaperPoint, TextItem } from '../displayList.ts';

/** One way to put a label on the page. */
export interface LabelPlace {
  readonly texts: readonly TextItem[];
  /** From the label to the thing it names, when it stands off. */
  readonly leader: readonly [PaperPoint, PaperPoint] | null;
  /** What is lost by choosing it over the best place; a crossed line costs 1. */
  readonly cost: number;
}

/** A label that wants a place. */
export interface LabelRequest {
  /** Larger goes first. */
  readonly priority: number;
  /** The best first. */
  readonly places: readonly LabelPlace[];
  /** How the list of names without room calls it; null: it may be left out without a word. */
  readonly listedAs: string | null;
  /** A place that costs more than this is worse than none. */
  readonly mostCost?: number;
}

export const labelPriority = {
  sectionLetter: 100,
  switch: 90,
  energiser: 85,
  gateway: 80,
  crossingDepth: 60,
  sectionAgain: 50,
  paddock: 45,
  service: 30,
  line: 25,
  post: 20,
  serviceLetters: 10,
} as const;
