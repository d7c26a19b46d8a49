/** A search for a fault, as it is walked and as it is kept: see `things.ts`. */
import type { ThingOf } from '../kinds/allKinds.ts';

export type { FaultSearchCheck, FaultSearchEnd, FaultSearchReading } from '../kinds/faultHunt.ts';

export type FaultSearch = ThingOf<'faultHunt'>;
