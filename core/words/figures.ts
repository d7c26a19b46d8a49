import { dateText } from './dates.ts';
import { activeLanguage } from './language.ts';
import { type Language, type Texts, textOf, textsWith } from './message.ts';
import {
  fixed,
  formatArea,
  formatBearing,
  formatLength,
  formatTape,
  formatVoltage,
  type Units,
} from './numbers/write.ts';
import type { Figures, Phrase } from './types.ts';

const kept = new WeakMap<Language, Partial<Record<Units, Figures>>>();

/** What texts write their values with, in these units and the active language (or another). */
export function figures(units: Units, language: Language = activeLanguage()): Figures {
  const known = kept.get(language) ?? {};
  kept.set(language, known);
  known[units] ??= madeFigures(units, language);
  return known[units];
}

/** All texts in the active language, where no property's units matter: of the host, of the window's frame. */
export function plainWords(): Texts {
  return figures('metric').words;
}

/** A message in the active language that holds no measures of a property: what is wrong with a file, a name. */
export function plainly(phrase: Phrase): string {
  return figures('metric').say(phrase);
}

function madeFigures(units: Units, language: Language): Figures {
  const { locale, words } = language;
  const plurals = new Intl.PluralRules(locale);
  const lists = new Intl.ListFormat(locale, { type: 'conjunction' });
  const known = (value: number, format: (value: number, units: Units) => string) =>
    Number.isFinite(value) ? format(value, units) : words.things.notKnown;
  let texts: Texts | undefined;
  const f: Figures = {
    units,
    get words() {
      texts ??= textsWith(words, f);
      return texts;
    },
    length: (lengthM) => known(lengthM, formatLength),
    tape: (lengthM) => known(lengthM, formatTape),
    area: (areaM2) => known(areaM2, formatArea),
    volts: (volts) => known(volts, formatVoltage),
    bearing: (bearingDeg) => known(bearingDeg, formatBearing),
    number: (value, decimals) => known(value, () => fixed(value, decimals ?? decimalsOf(value))),
    date: dateText,
    list: (names, most = Infinity) =>
      lists.format(
        names.length > most
          ? [...names.slice(0, most - 1), words.things.more({ count: names.length - most + 1 }, f)]
          : names,
      ),
    plural: (count, forms) => forms[plurals.select(count)] ?? forms.other,
    kind: (kind) => words.things.kinds[kind],
    thing: (thing) => words.things.called(thing),
    headed: (thing) => words.things.headed(thing),
    say: (phrase) => textOf(phrase, words, f),
  };
  return f;
}

/** How many decimals a figure has as it was entered. */
function decimalsOf(value: number): number {
  const [mantissa = '', exponent = '0'] = String(value).split('e');
  return Math.min(20, Math.max(0, (mantissa.split('.')[1]?.length ?? 0) - Number(exponent)));
}
