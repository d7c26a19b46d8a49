import { checks } from './en/checks.ts';
import { edits } from './en/edits.ts';
import { exchange } from './en/exchange.ts';
import { order } from './en/order.ts';
import { power } from './en/power.ts';
import { things } from './en/things.ts';
import type { Language } from './message.ts';

/** Every English text, by area. */
export const en = { things, checks, edits, power, order, exchange };

export const english: Language = { locale: 'en-GB', words: en };
