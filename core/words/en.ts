import { checks } from './en/checks.ts';
import { things } from './en/things.ts';
import type { Language } from './message.ts';

/** Every English text, by area. */
export const en = { things, checks };

export const english: Language = { locale: 'en-GB', words: en };
