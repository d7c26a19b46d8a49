import { useId, useState } from 'react';
import { type Answer, meaningOf } from '../../../core/locate/faultSearch/faultSearchEdits.ts';
import type { Yardstick } from '../../../core/model/yardstick.ts';
import { yardstickSentence } from '../../../core/sheets/yardstickInWords.ts';
import type { Message } from '../../../core/words/message.ts';
import { type FieldRule, readField } from '../../../core/words/numbers/field.ts';
import { useFigures } from '../../state/useFigures.ts';

/** A voltage in kV, as a meter shows it. */
function readingRule(label: string): FieldRule {
  return { label, unit: 'kV', decimals: 2, min: 0, max: 50, optional: false };
}

/** What was read: a figure, or only good or low. A figure between the two is read again, or taken for one, doubtful. */
export function ReadingEntry({
  yardstick,
  switches,
  onAnswer,
}: {
  readonly yardstick: Yardstick;
  /** How the switches stand for it: "with S4 off". */
  readonly switches: Message;
  readonly onAnswer: (answer: Answer) => void;
}) {
  const f = useFigures();
  const words = f.words.window.find.search.reading;
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [between, setBetween] = useState<number | null>(null);
  const id = useId();
  const answer = (told: Omit<Answer, 'yardstick'>) => onAnswer(yardstick.by === 'own' ? told : { ...told, yardstick });
  const read = () => {
    const typed = readField(text, readingRule(words.label));
    if ('problem' in typed) return setProblem(words.orSay({ problem: typed.problem }));
    setProblem(null);
    const voltageV = Math.round(typed.value! * 1000);
    const result = meaningOf(yardstick, voltageV);
    if (result) answer({ voltageV, result, doubtful: false });
    else setBetween(voltageV);
  };
  return (
    <form
      className="reading-entry"
      onSubmit={(event) => {
        event.preventDefault();
        read();
      }}
    >
      <div className="field">
        <label htmlFor={id}>{words.label}</label>
        <span className="with-unit">
          <input
            id={id}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
          <span className="unit">kV</span>
          <button type="submit">{words.enter}</button>
        </span>
        {problem ? (
          <p className="field-problem" role="alert">
            {problem}
          </p>
        ) : null}
        <p className="field-hint">
          {f.say(yardstickSentence(yardstick, switches))}
          {yardstick.by === 'estimate' ? ` ${words.mayBeOff}` : ''}
        </p>
      </div>
      {between === null ? (
        <p className="buttons">
          <button type="button" onClick={() => answer({ voltageV: null, result: 'good', doubtful: false })}>
            {words.good}
          </button>
          <button type="button" onClick={() => answer({ voltageV: null, result: 'low', doubtful: false })}>
            {words.low}
          </button>
        </p>
      ) : (
        <div className="doubtful" role="alert">
          <p>
            <strong>{words.doubtful({ volts: between })}</strong> {words.whatToDo}
          </p>
          <p className="buttons">
            <button type="button" onClick={() => answer({ voltageV: between, result: 'good', doubtful: true })}>
              {words.countAsGood}
            </button>
            <button type="button" onClick={() => answer({ voltageV: between, result: 'low', doubtful: true })}>
              {words.countAsLow}
            </button>
          </p>
        </div>
      )}
    </form>
  );
}
