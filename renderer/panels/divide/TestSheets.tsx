import { useMemo, useState } from 'react';
import { limitsExplained, switchesOff, usualFigure } from '../../../core/sheets/yardstickInWords.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { openForSheet, sheetYardsticks } from '../../../core/survey/power/sheetYardsticks.ts';
import { testSheetOf } from '../../../core/survey/testSheets.ts';
import type { Message } from '../../../core/words/message.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useOpenFile } from '../../state/appState.ts';
import { choose } from '../../state/choose.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';

/** How each section is tested on its own: which switches to open, where to read. */
export function TestSheets() {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const [open, setOpen] = useState(0);
  const { sections } = survey;
  const section = sections[Math.min(open, sections.length - 1)];
  const sheet = useMemo(() => section && testSheetOf(project, survey, section), [project, survey, section]);
  if (!section || !sheet) return <p className="register-empty">No sections yet, so there is nothing to test.</p>;
  const power = powerOf(project, survey);
  const yardsticks = sheetYardsticks(power, sheet);
  const switches = switchesOff(project, openForSheet(power, sheet));
  const saidOr = (usual: Message | null) => (usual === null ? 'not known' : f.say(usual));
  const names = (ids: readonly string[]) => ids.map((id) => project.switch.get(id)?.name ?? id).join(', ') || 'none';
  return (
    <section className="block" aria-label="Test sheets">
      <div className="field">
        <label htmlFor="test-section">Section</label>
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
      <Caution>
        Turn the energiser off and prove the fence dead before you touch a wire or a switch. Keep people and stock away
        while testing.
      </Caution>
      <dl className="plan-figures">
        <div>
          <dt>Open</dt>
          <dd>{names(sheet.open)}</dd>
        </div>
        <div>
          <dt>Closed</dt>
          <dd>{names(sheet.closed)}</dd>
        </div>
      </dl>
      <ol className="test-steps">
        {sheet.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {sheet.readAt.length > 0 ? (
        <>
          <h3>What it should read</h3>
          <table className="points">
            <thead>
              <tr>
                <th scope="col">Place</th>
                <th scope="col">Usual there, {f.say(switches)}</th>
                <th scope="col" className="amount">
                  Low under
                </th>
                <th scope="col" className="amount">
                  Good from
                </th>
              </tr>
            </thead>
            <tbody>
              {sheet.readAt.map(({ text }, i) => (
                <tr key={text}>
                  <th scope="row">{text}</th>
                  <td>{saidOr(usualFigure(yardsticks[i]!))}</td>
                  <td className="amount">{formatVoltage(yardsticks[i]!.lowBelowV)}</td>
                  <td className="amount">{formatVoltage(yardsticks[i]!.goodFromV)}</td>
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
