import { checks } from './en/checks.ts';
import { coordinates } from './en/coordinates.ts';
import { edits } from './en/edits.ts';
import { exchange } from './en/exchange.ts';
import { host } from './en/host.ts';
import { kinds } from './en/kinds.ts';
import { locate } from './en/locate.ts';
import { order } from './en/order.ts';
import { power } from './en/power.ts';
import { record } from './en/record.ts';
import { sheets } from './en/sheets.ts';
import { survey } from './en/survey.ts';
import { things } from './en/things.ts';
import { window } from './en/window.ts';
import type { Language } from './message.ts';

/** Every English text, by area. */
export const en = {
  things,
  kinds,
  checks,
  edits,
  survey,
  power,
  order,
  locate,
  record,
  coordinates,
  exchange,
  sheets,
  host,
  window,
};

export const english: Language = { tag: 'en', locale: 'en-GB', words: en };
