import { formatVoltage } from '../../../core/words/numbers/write.ts';

/** An estimate as the page writes it: "5.2 kV"; "0 V, dead"; "not known". */
export function voltsInWords(volts: number | null): string {
  if (volts === null || Number.isNaN(volts)) return 'not known';
  return volts === 0 ? '0 V, dead' : formatVoltage(volts);
}

/** A difference with its sign: "+0.4 kV", "-120 V". */
export function gainInWords(volts: number): string {
  return `${volts > 0 ? '+' : ''}${formatVoltage(volts)}`;
}
