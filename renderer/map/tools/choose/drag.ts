import type { PaintTools, Pointer, Progress } from '../tool.ts';

/** Something on its way from where it was to where the pointer lets it go. */
export interface Drag {
  move(pointer: Pointer): void;
  paint(tools: PaintTools): void;
  progress(): Progress;
  /** Let go here: makes the edit. True where it was made. */
  drop(): Promise<boolean>;
  readonly hint: string;
}
