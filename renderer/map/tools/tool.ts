import type { Palette } from '../../../core/drawing/palette.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import type { Message, Texts } from '../../../core/words/message.ts';
import type { Ctx } from '../canvas/shapes.ts';
import type { SnapExcept, SnapTarget } from '../interaction/snapping.ts';
import type { CursorInfo, MapEdit, MapEvents, MapInput, ToolName } from '../mapTypes.ts';
import type { View } from '../plane/view.ts';
import type { Scene } from '../scene/buildScene.ts';

/** Where the pointer, or the keyboard's cross, is, and the keys held. */
export interface Pointer {
  readonly xy: Xy;
  readonly shift: boolean;
  readonly alt: boolean;
  readonly ctrl: boolean;
  /** The keyboard's cross, not a pointing device. */
  readonly byKeyboard: boolean;
}

/** What a tool may see of the map, and do to it. */
export interface ToolContext {
  readonly input: () => MapInput;
  readonly scene: () => Scene;
  readonly view: () => View;
  readonly events: MapEvents;
  /** What the tools say, in the units of the property and the active language. */
  readonly words: () => Texts['window']['map'];
  /** The snap target for a pointer; null with Alt held or nothing near. */
  readonly snap: (pointer: Pointer, except?: SnapExcept | null) => SnapTarget | null;
  readonly toLonLat: (xy: Xy) => LonLat;
  readonly toXy: (lonLat: LonLat) => Xy;
  /** Tries the edit; says why where it is refused. True once it is stored. */
  readonly commit: (edit: MapEdit) => Promise<boolean>;
  /** Says at the map's status bar why something can't be done. */
  readonly refuse: (text: string) => void;
  /** The overlay is to be drawn again. */
  readonly invalidate: () => void;
  readonly setTool: (tool: ToolName) => void;
  readonly setCursor: (css: string) => void;
}

/** Fields at the map's status bar for figures typed in place of pointing. */
export type TypedFields = 'lengthAndBearing' | 'width' | null;

export interface PaintTools {
  readonly ctx: Ctx;
  readonly view: View;
  readonly palette: Palette;
  /** A message in the units of the property and the active language. */
  readonly say: (message: Message) => string;
}

/** What a tool reports about the segment under way. */
export type Progress = Pick<CursorInfo, 'lengthM' | 'bearingDeg' | 'snappedTo'> & {
  /** Of everything drawn so far. */
  readonly totalM: number | null;
};

export const noProgress: Progress = { lengthM: null, bearingDeg: null, snappedTo: null, totalM: null };

/** One way of working on the map with pointer or keyboard. Every tool can be driven by either. */
export interface Tool {
  readonly name: ToolName;
  /** One sentence: what the next click does. */
  hint(): string;
  fields(): TypedFields;
  progress(): Progress;
  move(pointer: Pointer): void;
  click(pointer: Pointer): void;
  doubleClick?(pointer: Pointer): void;
  /** True: the press began a drag of its own, and the map must not pan. */
  press?(pointer: Pointer): boolean;
  drag?(pointer: Pointer): void;
  /** `moved`: the pointer went far enough to mean a drag, not a click. */
  release?(pointer: Pointer, moved: boolean): void;
  /** The pointer left the map. */
  out(): void;
  /** True where the key was used. */
  key(event: KeyboardEvent): boolean;
  /** Figures typed at the status bar; texts as they stand in the fields. Returns true when they are used up. */
  typed?(first: string, second: string): boolean;
  /** Undo while something is begun: takes its last step back. False where nothing is begun. */
  takeBack?(): boolean;
  /** True: Escape took something back; false: there was nothing to take back. */
  cancel(): boolean;
  paint(tools: PaintTools): void;
  /** Where the last point was set, for the keyboard's cross to go on from. */
  lastPoint?(): Xy | null;
}
