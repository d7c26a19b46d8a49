import type { Figures } from '../../../core/words/types.ts';

/** An estimate as the page writes it: "5.2 kV"; "0 V, dead"; "not known". */
export function voltsInWords(volts: number | null, f: Figures): string {
  if (volts === null || Number.isNaN(volts)) return f.words.things.notKnown;
  return volts === 0 ? f.words.window.power.dead : f.volts(volts);
}
