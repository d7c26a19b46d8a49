/** What is written down of the work as it was really done, beside the drawing: see `things.ts`. */
import type { ThingOf } from '../kinds/allKinds.ts';

export type { BuildableKind, BuildableThing, PlannedThing } from '../kinds/builtMark.ts';
export type { RecordThing, RevisedThing } from '../kinds/snapshots.ts';
export type { TestResult } from '../kinds/tests.ts';
export type { BuriedRole, RecordedOpening, TapeTie, TieFrom } from '../kinds/trench.ts';

export type BuiltMark = ThingOf<'builtMark'>;
export type CrossingRecord = ThingOf<'crossingRecord'>;
export type BuriedPoint = ThingOf<'buriedPoint'>;
export type Photo = ThingOf<'photo'>;
export type TestRun = ThingOf<'testRun'>;
export type EarthTest = ThingOf<'earthTest'>;
export type Handover = ThingOf<'handover'>;
