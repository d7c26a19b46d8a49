import { useId, useState } from 'react';
import { type Answer, meaningOf } from '../../../core/locate/hunt/huntEdits.ts';
import { formatVoltage } from '../../../core/model/formatUnits.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { readMeasure } from '../../../core/model/readNumber.ts';

type Limits = Pick<FaultHunt, 'lowBelowV' | 'goodFromV'>;

/** What was read: a figure, or only good or low. A figure between the two is read again, or taken for one, doubtful. */
export function ReadingEntry({
  limits,
  onAnswer,
}: {
  readonly limits: Limits;
  readonly onAnswer: (answer: Answer) => void;
}) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [between, setBetween] = useState<number | null>(null);
  const id = useId();
  const read = () => {
    const kilovolts = readMeasure(text, 'kV');
    if (kilovolts === null || kilovolts < 0 || kilovolts > 50) {
      return setProblem('Type the reading in kV, such as 2.4; or say only whether it is good or low.');
    }
    setProblem(null);
    const voltageV = Math.round(kilovolts * 1000);
    const result = meaningOf(limits, voltageV);
    if (result) onAnswer({ voltageV, result, doubtful: false });
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
        <label htmlFor={id}>Reading</label>
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
          <button type="submit">Enter</button>
        </span>
        {problem ? (
          <p className="field-problem" role="alert">
            {problem}
          </p>
        ) : null}
        <p className="field-hint">
          Under {formatVoltage(limits.lowBelowV)} is low, from {formatVoltage(limits.goodFromV)} good.
        </p>
      </div>
      {between === null ? (
        <p className="buttons">
          <button type="button" onClick={() => onAnswer({ voltageV: null, result: 'good', doubtful: false })}>
            It reads good
          </button>
          <button type="button" onClick={() => onAnswer({ voltageV: null, result: 'low', doubtful: false })}>
            It reads low
          </button>
        </p>
      ) : (
        <div className="doubtful" role="alert">
          <p>
            <strong>{formatVoltage(between)} is doubtful.</strong> Press the meter well to the wire and read some pulses
            more. If it stays so, take it for what it is nearer to what you expect; it will be the first to be repeated.
          </p>
          <p className="buttons">
            <button type="button" onClick={() => onAnswer({ voltageV: between, result: 'good', doubtful: true })}>
              Take it for good
            </button>
            <button type="button" onClick={() => onAnswer({ voltageV: between, result: 'low', doubtful: true })}>
              Take it for low
            </button>
          </p>
        </div>
      )}
    </form>
  );
}
