import { dateText, today } from '../../../core/words/dates.ts';
import { activeLanguage } from '../../../core/words/language.ts';
import { activeLocale, setLocale } from '../../../core/words/numbers/locale.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { useApp } from '../../state/appState.ts';
import { setNumbersAndDates, systemLocale } from '../../state/settings.ts';
import { useWords } from '../../state/useFigures.ts';
import { analysis } from '../../work/analysis.ts';
import { forgetOrder } from '../../work/order.ts';
import { type Choice, SelectField } from '../parts/fields.tsx';

/** One of each way in which numbers and dates are written, under the name of a place that writes them so. */
const tags = [
  'en-GB',
  'en-US',
  'en-AU',
  'en-CA',
  'en-IE',
  'en-IN',
  'en-NZ',
  'en-ZA',
  'cs-CZ',
  'da-DK',
  'de-AT',
  'de-CH',
  'de-DE',
  'es-AR',
  'es-ES',
  'fi-FI',
  'fr-CA',
  'fr-CH',
  'fr-FR',
  'it-IT',
  'nb-NO',
  'nl-NL',
  'pl-PL',
  'pt-BR',
  'pt-PT',
  'sv-SE',
];
const system = 'system';

/** How this window writes and reads numbers and dates; the words are another matter. */
export function NumbersField() {
  const locale = useApp((state) => state.locale);
  const { fileMenu } = useWords().window.frame;
  const names = new Intl.DisplayNames(activeLanguage().locale, { type: 'language', languageDisplay: 'standard' });
  const others = locale === null || tags.includes(locale) ? tags : [locale, ...tags];
  const choices: Choice<string>[] = [
    { value: system, label: fileMenu.asSystem({ sample: sample(systemLocale) }) },
    ...others.map((tag) => ({
      value: tag,
      label: fileMenu.asPlace({ place: names.of(tag) ?? tag, sample: sample(tag) }),
    })),
  ];
  return (
    <SelectField
      label={fileMenu.numbers}
      hint={fileMenu.numbersHint}
      value={locale ?? system}
      choices={choices}
      onCommit={(value) => {
        setNumbersAndDates(value === system ? null : value);
        forgetOrder();
        analysis.tryAgain();
      }}
    />
  );
}

/** "1,234.50, 12 May 2026" as a place writes them. */
function sample(tag: string): string {
  const active = activeLocale();
  setLocale(tag);
  const text = `${fixed(1234.5, 2)}, ${dateText(today())}`;
  setLocale(active);
  return text;
}
