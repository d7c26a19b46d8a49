import { useId, useState } from 'react';
import type { GroundAnswer } from '../../../core/locate/inGround/answer.ts';
import { type AskedQuestion, useApp } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { DialogFrame } from './DialogFrame.tsx';

/** The one question before an edit that touches what is built, recorded or taped from. It lies over any other dialog. */
export function GroundDialog() {
  const asked = useApp((state) => state.groundQuestion);
  return asked ? <Question asked={asked} /> : null;
}

function Question({ asked: { question, answer } }: { readonly asked: AskedQuestion }) {
  const { title, lines, more, ask, choices } = question;
  const f = useFigures();
  const { dialogs, common } = f.words.window.frame;
  const [chosen, setChosen] = useState<GroundAnswer>(choices[0]!.answer);
  const group = useId();
  const only = choices.length === 1 ? choices[0]! : null;
  return (
    <DialogFrame title={f.say(title)} closeWord={common.cancel} asksUnbidden onClose={() => answer(null)}>
      <form
        className="ground-question"
        onSubmit={(event) => {
          event.preventDefault();
          answer(chosen);
        }}
      >
        <ul className="ground-lines">
          {lines.map(f.say).map((line) => (
            <li key={line}>{line}</li>
          ))}
          {more > 0 ? <li>{dialogs.ground.more({ count: more })}</li> : null}
        </ul>
        {only ? (
          <p>{f.say(only.means)}</p>
        ) : (
          <fieldset>
            <legend>{f.say(ask)}</legend>
            {choices.map(({ answer: value, label, means }) => (
              <label key={value} className="ground-choice">
                <input
                  type="radio"
                  name={group}
                  value={value}
                  checked={chosen === value}
                  onChange={() => setChosen(value)}
                />
                <span>
                  <strong>{f.say(label)}</strong>
                  <span className="field-hint">{f.say(means)}</span>
                </span>
              </label>
            ))}
          </fieldset>
        )}
        {only ? null : <Caution>{dialogs.ground.caution}</Caution>}
        <div className="dialog-buttons">
          <button type="button" onClick={() => answer(null)}>
            {common.cancel}
          </button>
          <button type="submit" className="main">
            {only ? f.say(only.label) : dialogs.ground.continue}
          </button>
        </div>
      </form>
    </DialogFrame>
  );
}
