/** What lies in the ground apart from the drawing: see `things.ts`. */
import type { ThingOf } from '../kinds/allKinds.ts';

export type { Fate, WasCrossing, WasEarthField, WasLeadOut } from '../kinds/inGround.ts';

export type InGround = ThingOf<'inGround'>;
