import { useEffect } from 'react';
import { service } from '../../../core/kinds/surroundings.ts';
import { serviceKinds } from '../../../core/model/serviceKinds.ts';
import type { Service } from '../../../core/model/things.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { useWords } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { SelectField } from '../parts/fields.tsx';
import { DescribedField } from '../parts/KindField.tsx';
import { Register } from '../parts/Register.tsx';
import { useNextService } from './nextService.ts';

/** What else is there: power lines, pipes, roads, water. While it is open the map's tools draw these. */
export function ServiceRegister() {
  const { project } = useOpenFile();
  const { next } = useNextService();
  const words = useWords();
  const called = words.kinds.service.what.choices;
  useEffect(() => {
    useNextService.setState({ drawing: true });
    return () => useNextService.setState({ drawing: false });
  }, []);
  return (
    <>
      <div className="field-pair">
        <SelectField
          label="Draw next"
          value={next.what}
          choices={serviceKinds.map((value) => ({ value, label: called[value] }))}
          onCommit={(what) => useNextService.setState({ next: { ...next, what } })}
        />
        {next.what === 'powerLine' ? (
          <DescribedField
            words={words.kinds.service.voltageV}
            field={service.fields.voltageV}
            value={next.voltageV}
            onCommit={(voltageV) => useNextService.setState({ next: { ...next, voltageV } })}
          />
        ) : null}
      </div>
      <p className="buttons">
        <button type="button" className="main" onClick={() => mapView.setTool('service')}>
          Draw {called[next.what].toLowerCase()}
        </button>
      </p>
      <Caution>
        Only what someone has drawn or brought in is shown here. Have buried services located before any digging, and
        ask the line’s owner for the clearance of a power line.
      </Caution>
      <Register<Service>
        caption="Services and hazards"
        rows={[...project.service.values()]}
        idOf={({ id }) => id}
        empty="None are drawn yet. Choose what it is above, then press S on the map."
        columns={[
          { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
          { title: 'What', cell: ({ what }) => called[what], sortBy: ({ what }) => called[what] },
          {
            title: 'Voltage',
            figures: true,
            cell: ({ what, voltageV }) =>
              what !== 'powerLine' ? '' : voltageV === null ? 'not known' : formatVoltage(voltageV),
            sortBy: ({ voltageV }) => voltageV ?? -1,
          },
        ]}
      />
    </>
  );
}
