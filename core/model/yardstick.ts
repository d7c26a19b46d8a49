import type { Yardstick } from '../kinds/common.ts';

export type { Yardstick } from '../kinds/common.ts';

export type Limits = Pick<Yardstick, 'lowBelowV' | 'goodFromV'>;
