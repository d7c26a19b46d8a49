import { useMemo, useState } from 'react';
import { testSheets } from '../../../core/registers/testSheets.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useOpenFile } from '../../state/appState.ts';
import { choose } from '../../state/choose.ts';
import { Caution } from '../parts/Caution.tsx';

/** How each section is tested on its own: which switches to open, where to read. */
export function TestSheets() {
  const { project, survey } = useOpenFile();
  const sheets = useMemo(() => testSheets(project, survey), [project, survey]);
  const [open, setOpen] = useState(0);
  const sheet = sheets[Math.min(open, sheets.length - 1)];
  if (!sheet) return <p className="register-empty">No sections yet, so there is nothing to test.</p>;
  const names = (ids: readonly string[]) => ids.map((id) => project.switch.get(id)?.name ?? id).join(', ') || 'none';
  return (
    <section className="block" aria-label="Test sheets">
      <div className="field">
        <label htmlFor="test-section">Section</label>
        <select
          id="test-section"
          value={sheets.indexOf(sheet)}
          onChange={(event) => {
            const next = Number(event.target.value);
            setOpen(next);
            choose([sectionMapId(sheets[next]!.section)]);
          }}
        >
          {sheets.map(({ section }, index) => (
            <option key={section} value={index}>
              {section}
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
    </section>
  );
}
