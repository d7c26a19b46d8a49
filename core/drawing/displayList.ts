/**
 * What a printed page holds, as data: the only thing that the layout makes and that a renderer draws. Millimetres from
 * the page's top left corner, x to the right, y down; items are painted in order. Nothing here knows of a property,
 * so maps, registers, cards and covers all end in the same few items.
 */

/** A place on the page, millimetres from the top left corner. */
export type PaperPoint = readonly [xMm: number, yMm: number];

/** `[left, top, right, bottom]`, millimetres. */
export type PaperBox = readonly [leftMm: number, topMm: number, rightMm: number, bottomMm: number];

/** `#rrggbb`. */
export type Ink = `#${string}`;

/** The sheets' typeface in its three cuts; `figures` is the regular cut with figures of one width, for columns. */
export type FontRole = 'regular' | 'bold' | 'italic' | 'figures';

export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  /** For the reader's list of contents. */
  readonly title: string;
  readonly items: readonly Item[];
}

export type Item = PathItem | TextItem | ImageItem | ClipItem | TaggedItem | LinkItem | AnchorItem;

/** One or more polylines or, when `closed`, polygons (overlapping rings leave holes: even-odd rule). */
export interface PathItem {
  readonly kind: 'path';
  readonly paths: readonly (readonly PaperPoint[])[];
  readonly closed: boolean;
  readonly stroke: Stroke | null;
  readonly fill: Ink | null;
}

export interface Stroke {
  readonly widthMm: number;
  readonly ink: Ink;
  /** None for a full line. */
  readonly dashMm?: readonly [strokeMm: number, gapMm: number];
  readonly cap?: 'butt' | 'round';
}

/** One line of text. */
export interface TextItem {
  readonly kind: 'text';
  readonly text: string;
  /** On the baseline: left end, middle or right end, by `align`. */
  readonly at: PaperPoint;
  readonly font: FontRole;
  readonly sizePt: number;
  readonly align: 'left' | 'centre' | 'right';
  /** Clockwise about `at`. */
  readonly rotationDeg: number;
  readonly ink: Ink;
  /** White rim around the letters; 0 for none. */
  readonly haloMm: number;
}

export interface ImageItem {
  readonly kind: 'image';
  readonly box: PaperBox;
  /** JPEG or PNG. */
  readonly bytes: Uint8Array;
  /** What it shows, in words. */
  readonly alternative: string;
}

export interface ClipItem {
  readonly kind: 'clip';
  readonly box: PaperBox;
  readonly items: readonly Item[];
}

/** What its items are to somebody who is read the page aloud. What no tag holds is decoration. */
export interface TaggedItem {
  readonly kind: 'tagged';
  readonly role: 'H1' | 'H2' | 'P' | 'Figure' | 'Table' | 'TR' | 'TH' | 'TD';
  /** Of a figure: what it shows, in words. */
  readonly alternative?: string;
  readonly items: readonly Item[];
}

/** An area that leads to an anchor. */
export interface LinkItem {
  readonly kind: 'link';
  readonly box: PaperBox;
  readonly anchor: string;
}

export interface AnchorItem {
  readonly kind: 'anchor';
  readonly name: string;
  readonly at: PaperPoint;
}

/** Every path, text, image, link and anchor of some items, from inside clips and tags too. */
export function* leafItems(items: readonly Item[]): Generator<Exclude<Item, ClipItem | TaggedItem>> {
  for (const item of items) {
    if (item.kind === 'clip' || item.kind === 'tagged') yield* leafItems(item.items);
    else yield item;
  }
}
