import type { ReactNode } from 'react';
import { fieldsOf } from '../../../core/kinds/allKinds.ts';
import type { AnyField } from '../../../core/kinds/describe.ts';
import { type FormField, formFieldOf, formOf } from '../../../core/kinds/form.ts';
import { type WordsOfField, wordsOf } from '../../../core/kinds/words.ts';
import { limitOf } from '../../../core/model/edits/support/checkFields.ts';
import { refTo } from '../../../core/model/refTo.ts';
import type { Thing } from '../../../core/model/things.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import type { CommitOptions } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { CheckField, type Choice, NumberField, SelectField, TextField } from './fields.tsx';
import { LengthField } from './LengthField.tsx';

/** What a form may say otherwise than the description; bounds, units and choices it can't. */
interface Told {
  readonly label?: string;
  readonly hint?: ReactNode;
  /** Of an empty length: what holds then. */
  readonly placeholderM?: number | undefined;
}

interface DescribedFieldProps<T> extends Told {
  /** Of the field, from the catalogue. */
  readonly words: WordsOfField;
  readonly field: AnyField;
  readonly value: T;
  /** The largest value where that is less than the description's. */
  readonly max?: number | undefined;
  readonly onCommit: (value: T) => void;
}

/** A field of a form: sort, unit, bounds and choices as its description in `core/kinds` says, label and hint as its words do. */
export function DescribedField<T>(props: DescribedFieldProps<T>) {
  const { words, field, value, placeholderM, onCommit } = props;
  const form = formFieldOf(field);
  const { label = words.label, hint = hintIn(words) } = props;
  const { kinds } = useWords();
  const told = {
    label,
    ...(hint === undefined ? {} : { hint }),
  };
  const set = (to: unknown) => onCommit(to as T);
  const setNumber = (to: number | null) => {
    if (to !== null) set(form.whole ? Math.round(to) : to);
    else if (!form.required) set(null);
  };
  const [min, max] = [form.above ? form.min + Number.EPSILON : form.min, Math.min(form.max, props.max ?? form.max)];
  const number = { decimals: form.decimals, optional: !form.required };
  switch (form.as) {
    case 'text':
    case 'longText':
      return (
        <TextField
          {...told}
          value={value as string}
          required={form.required}
          long={form.as === 'longText'}
          onCommit={set}
        />
      );
    case 'flag':
      return <CheckField {...told} value={value as boolean} onCommit={set} />;
    case 'length':
      return (
        <LengthField
          {...told}
          {...number}
          {...(placeholderM === undefined ? {} : { placeholderM })}
          valueM={(value as number | null | undefined) ?? null}
          minM={min}
          maxM={max}
          onCommitM={setNumber}
        />
      );
    case 'number':
      return (
        <NumberField
          {...told}
          {...number}
          {...(words.placeholder === undefined ? {} : { placeholder: words.placeholder })}
          unit={kinds.units[form.unit]}
          value={(value as number | null | undefined) ?? null}
          min={min}
          max={max}
          onCommit={setNumber}
        />
      );
    case 'choice':
      return (
        <SelectField
          {...told}
          value={keyOf(value)}
          choices={choicesIn(
            form,
            form.choices.map((each) => [String(each), words.choices![each]!]),
            kinds,
          )}
          onCommit={(key) => set(form.choices.find((each) => String(each) === key) ?? null)}
        />
      );
    case 'flagOrNone':
      return (
        <SelectField
          {...told}
          value={keyOf(value)}
          choices={choicesIn(
            form,
            [
              ['true', words.yes ?? kinds.yes],
              ['false', kinds.no],
            ],
            kinds,
          )}
          onCommit={(key) => set(key === '' ? null : key === 'true')}
        />
      );
    default:
      throw new Error(`The field "${words.called}" has a form of its own.`);
  }
}

/** The key of a choice: a word, a number or yes and no; '' for none. */
function keyOf(value: unknown): string {
  return value === null || value === undefined ? '' : String(value as string | number | boolean);
}

function hintIn({ hint }: WordsOfField): string | undefined {
  return typeof hint === 'function' ? hint(null) : hint;
}

function choicesIn(
  { required }: FormField,
  choices: readonly (readonly [key: string, label: string])[],
  { notNoted }: Texts['kinds'],
): Choice<string>[] {
  const all = choices.map(([value, label]) => ({ value, label }));
  return required ? all : [{ value: '', label: notNoted }, ...all];
}

interface KindFieldProps<T extends Thing, F extends keyof T & string> extends Told {
  readonly thing: T;
  readonly field: F;
  /** What the step of undo is called; with `onCommit`, unused. */
  readonly step?: string | ((value: T[F]) => string);
  readonly options?: CommitOptions;
  /** Where it is set by an edit of its own. */
  readonly onCommit?: (value: T[F]) => void;
}

/** A field of a thing, as its kind's description says; what another thing bounds is bounded here too. */
export function KindField<T extends Thing, F extends keyof T & string>(props: KindFieldProps<T, F>) {
  const { thing, field, step, options, onCommit, ...told } = props;
  const { project } = useOpenFile();
  const words = useWords();
  const set = (value: T[F]) => {
    const patch = { [field]: value } as Parameters<typeof change>[3];
    const label = typeof step === 'function' ? step(value) : (step ?? words.window.frame.fields.steps.change);
    change(label, thing.kind, thing.id, patch, options);
  };
  return (
    <DescribedField<T[F]>
      {...told}
      words={wordsOf(thing.kind, field, words)}
      field={fieldsOf(thing.kind)[field]!}
      value={thing[field]}
      max={limitOf(project, thing, field)?.most}
      onCommit={onCommit ?? set}
    />
  );
}

/**
 * The fields of a thing in the order of its description, one below the other, but for those that the form places itself and
 * those that have an edit of their own. So a field that is described is in the form at once.
 */
export function KindFields<T extends Thing>({
  thing,
  except = [],
  options,
}: {
  readonly thing: T;
  readonly except?: readonly (keyof T & string)[];
  readonly options?: CommitOptions;
}) {
  const words = useWords();
  const names = formOf(fieldsOf(thing.kind))
    .map(([name]) => name)
    .filter((name) => !(except as readonly string[]).includes(name) && !fieldsOf(thing.kind)[name]!.ownEdit);
  return names.map((name) => (
    <KindField<T, keyof T & string>
      key={name}
      thing={thing}
      field={name as keyof T & string}
      step={stepOf(thing, name, words)}
      {...(options === undefined ? {} : { options })}
    />
  ));
}

function stepOf(thing: Thing, field: string, words: Texts): (value: unknown) => string {
  const whole = 'name' in thing && thing.name !== '' ? thing.name : words.things.called(refTo(thing));
  const { steps } = words.window.frame.fields;
  if (field === 'name') return () => steps.rename({ name: whole });
  if (field === 'status') return (value) => steps.mark({ name: whole, as: String(value) });
  return () => steps.changeOf({ field: wordsOf(thing.kind, field, words).called, name: whole });
}
