import type { LonLat, ServiceKind } from '../../model/things.ts';
import type { Message } from '../../words/message.ts';
import type { PieceGroup } from './groups.ts';
import type { ExchangedKind } from './ours.ts';
import type { Positions } from './positions.ts';

/** What a feature of a file can become. A boundary is a fence line that is not live; of `heights` only those stay. */
export type ImportAs =
  | 'fenceLine'
  | 'boundary'
  | 'gateway'
  | 'post'
  | 'energiser'
  | ServiceKind
  | 'heights'
  | 'leaveOut';

/** A usable piece of a file: one line, one point or one outline. A feature of several parts gives several. */
export interface PreviewFeature {
  /** Unlike any other of the file: the feature's index and, where it has several parts, the part's. */
  readonly key: string;
  /** Index in the file, from 0. */
  readonly index: number;
  readonly name: string;
  readonly shape: 'line' | 'point' | 'outline' | 'none';
  /** WGS 84 positions; an outline ends where it began; none where the shape is. */
  readonly path: readonly LonLat[];
  /** Heights of the positions, where the file gives them. */
  readonly heightsM: Positions['heightsM'];
  /** Walked or driven with a receiver, which strews points along the way. */
  readonly track: boolean;
  /** What it will become unless the user chooses otherwise. */
  readonly suggestion: ImportAs;
  /** Everything it could become. */
  readonly possible: readonly ImportAs[];
  /** A thing that this program wrote itself: it comes back as what it was. */
  readonly ours: OurThing | null;
  /** Width in metres where the feature gives one; for gateways. */
  readonly widthM: number | null;
  /** Voltage where the feature gives one; for power lines. */
  readonly voltageV: number | null;
}

export interface OurThing {
  readonly kind: ExchangedKind;
  readonly id: string;
  readonly fields: Readonly<Record<string, unknown>>;
  /** The fields are all that the thing has, and nothing else: those among them that are not known are kept. */
  readonly isWhole: boolean;
}

/** Why a feature, or a part of it, can't be used, and what to do about it. */
export interface FeatureProblem {
  readonly index: number;
  readonly name: string;
  /** The end of a sentence about it. */
  readonly why: Message;
  readonly whatToDo: Message;
}

/** What a file holds, before anything of it is taken over. */
export interface Preview {
  readonly features: readonly PreviewFeature[];
  readonly problems: readonly FeatureProblem[];
  /** Things about the whole file that the user should know. */
  readonly notes: readonly Message[];
  /** West, south, east, north; west is the larger where the file lies across the 180 meridian. Null: nothing usable. */
  readonly bounds: readonly [west: number, south: number, east: number, north: number] | null;
  /** The pieces by where they lie, the weightiest group first. */
  readonly groups: readonly PieceGroup[];
  /** Why latitude and longitude look exchanged, or null. Reading again with `swap` puts them right. */
  readonly looksSwapped: Message | null;
}

export interface ReadOptions {
  /** The file has latitude before longitude. */
  readonly swap?: boolean;
  /** Where the property is, to tell whether the file fits it; null: nowhere yet. */
  readonly nearTo?: LonLat | null;
  /** The system of eastings and northings that come without a word of which. */
  readonly grid?: GridSystem | null;
  /** Hears, from 0 to 1, how far the reading is. */
  readonly progress?: (fraction: number) => void;
}

/** A plane coordinate system: its name and its PROJ text. */
export interface GridSystem {
  readonly name: string;
  readonly definition: string;
}

export type ReadResult =
  | { readonly ok: true; readonly preview: Preview }
  | { readonly ok: false; readonly message: Message; readonly remedy: Message };
