import { useMemo, useState } from 'react';
import { limitsExplained, switchesOff, usualFigure } from '../../../core/sheets/yardstickInWords.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { openForSheet, sheetYardsticks } from '../../../core/survey/power/sheetYardsticks.ts';
import { testSheetOf } from '../../../core/survey/testSheets.ts';
import type { Message } from '../../../core/words/message.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useOpenFile } from '../../state/appState.ts';
import { choose } from '../../state/choose.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';

/** How each section is tested on its own: which switches to open, where to read. */
export function TestSheets() {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { divide } = f.words.window;
  const words = divide.tests;
  const [open, setOpen] = useState(0);
  const { sections } = survey;
  const section = sections[Math.min(open, sections.length - 1)];
  const sheet = useMemo(() => section && testSheetOf(project, survey, section), [project, survey, section]);
  if (!section || !sheet) return <p className="register-empty">{words.empty}</p>;
  const power = powerOf(project, survey);
  const yardsticks = sheetYardsticks(power, sheet);
  const switches = switchesOff(project, openForSheet(power, sheet));
  const saidOr = (usual: Message | null) => (usual === null ? f.words.things.notKnown : f.say(usual));
  const names = (ids: readonly string[]) =>
    ids.map((id) => project.switch.get(id)?.name ?? id).join(', ') || divide.none;
  return (
    <section className="block" aria-label={divide.register.tests}>
      <div className="field">
        <label htmlFor="test-section">{divide.section}</label>
        <select
          id="test-section"
          value={section.index}
          onChange={(event) => {
            const next = Number(event.target.value);
            setOpen(next);
            choose([sectionMapId(sections[next]!.letter)]);
          }}
        >
          {sections.map(({ letter, index }) => (
            <option key={letter} value={index}>
              {letter}
            </option>
          ))}
        </select>
      </div>
      <Caution>{words.caution}</Caution>
      <dl className="plan-figures">
        <div>
          <dt>{words.off}</dt>
          <dd>{names(sheet.open)}</dd>
        </div>
        <div>
          <dt>{words.on}</dt>
          <dd>{names(sheet.closed)}</dd>
        </div>
      </dl>
      <ol className="test-steps">
        {sheet.steps.map((step) => (
          <li key={f.say(step)}>{f.say(step)}</li>
        ))}
      </ol>
      {sheet.readAt.length > 0 ? (
        <>
          <h3>{words.should}</h3>
          <table className="points">
            <thead>
              <tr>
                <th scope="col">{divide.place}</th>
                <th scope="col">{words.usual({ switches })}</th>
                <th scope="col" className="amount">
                  {words.lowUnder}
                </th>
                <th scope="col" className="amount">
                  {words.goodFrom}
                </th>
              </tr>
            </thead>
            <tbody>
              {sheet.readAt.map(({ text }, i) => (
                <tr key={f.say(text)}>
                  <th scope="row">{f.say(text)}</th>
                  <td>{saidOr(usualFigure(yardsticks[i]!))}</td>
                  <td className="amount">{f.volts(yardsticks[i]!.lowBelowV)}</td>
                  <td className="amount">{f.volts(yardsticks[i]!.goodFromV)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="field-hint">{f.say(limitsExplained())}</p>
        </>
      ) : null}
    </section>
  );
}
