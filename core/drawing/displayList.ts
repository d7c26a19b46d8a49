import type { Ink } from './palette.ts';

/**
 * What a printed page or a map on a screen holds, as data: the only thing that is made of a property and that a painter
 * draws, on a canvas or in a PDF. All lengths are in the drawing's own unit, from its top left corner, x to the right, y
 * down: millimetres on a page, CSS pixels on a screen. Items are painted in order. Nothing here knows of a property, so
 * maps, registers, cards and covers all end in the same few items.
 */

/** A place in the drawing. */
export type PaperPoint = readonly [x: number, y: number];

/** `[left, top, right, bottom]`. */
export type PaperBox = readonly [left: number, top: number, right: number, bottom: number];

/** The sheets' typeface in its three cuts; `figures` is the regular cut with figures of one width, for columns. */
export type FontRole = 'regular' | 'bold' | 'italic' | 'figures';

export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  /** For the reader's list of contents. */
  readonly title: string;
  readonly items: readonly Item[];
}

export type Item =
  | PathItem
  | TracesItem
  | CirclesItem
  | TextItem
  | ImageItem
  | ClipItem
  | TaggedItem
  | LinkItem
  | AnchorItem;

/** One or more polylines or, when `closed`, polygons (overlapping rings leave holes: even-odd rule). */
export interface PathItem {
  readonly kind: 'path';
  readonly paths: readonly (readonly PaperPoint[])[];
  readonly closed: boolean;
  readonly stroke: Stroke | null;
  readonly fill: Ink | null;
}

/** Polylines without an object for each vertex, for layers of many thousand: see `createTraces`. */
export interface TracesItem {
  readonly kind: 'traces';
  /** x and y of one vertex after the other. */
  readonly coordinates: Float64Array;
  /** Where in `coordinates` each polyline ends; it begins where the one before ends. */
  readonly ends: readonly number[];
  readonly stroke: Stroke;
}

/** Circles of one size and look. */
export interface CirclesItem {
  readonly kind: 'circles';
  readonly centres: readonly PaperPoint[];
  readonly radius: number;
  readonly stroke: Stroke | null;
  readonly fill: Ink | null;
}

export interface Stroke {
  readonly width: number;
  readonly ink: Ink;
  /** None for a full line. */
  readonly dash?: readonly [stroke: number, gap: number];
  readonly cap?: 'butt' | 'round';
}

/** One line of text. */
export interface TextItem {
  readonly kind: 'text';
  readonly text: string;
  /** On the baseline: left end, middle or right end, by `align`. */
  readonly at: PaperPoint;
  readonly font: FontRole;
  /** Of the letters: the font's em. */
  readonly size: number;
  readonly align: 'left' | 'centre' | 'right';
  /** Clockwise about `at`. */
  readonly rotationDeg: number;
  readonly ink: Ink;
  /** Rim around the letters, as wide on each side; 0 for none. */
  readonly halo: number;
  readonly haloInk: Ink;
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

/** Every path, circle, text, image, link and anchor of some items, from inside clips and tags too. */
export function* leafItems(items: readonly Item[]): Generator<Exclude<Item, ClipItem | TaggedItem>> {
  for (const item of items) {
    if (item.kind === 'clip' || item.kind === 'tagged') yield* leafItems(item.items);
    else yield item;
  }
}
