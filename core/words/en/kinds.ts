import { drawn } from './kinds/drawn.ts';
import { mustBe } from './kinds/mustBe.ts';
import { order } from './kinds/order.ts';
import { recorded } from './kinds/recorded.ts';
import { typed } from './kinds/typed.ts';
import { units } from './kinds/units.ts';

/** What the fields of each kind are called, and what a field must be. */
export const kinds = {
  ...drawn,
  ...order,
  ...recorded,
  /** What a field must hold. */
  mustBe,
  typed,
  units,
  yes: 'Yes',
  no: 'No',
  /** No choice. */
  notNoted: 'Not noted',
  /** What another thing bounds: what to do instead. */
  advice: { bow: 'Enter a smaller one, or record the trench by points as it was dug.' },
};
