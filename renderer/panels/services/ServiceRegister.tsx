import { useEffect } from 'react';
import { service } from '../../../core/kinds/surroundings.ts';
import { serviceKinds } from '../../../core/model/serviceKinds.ts';
import type { Service } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { SelectField } from '../parts/fields.tsx';
import { DescribedField } from '../parts/KindField.tsx';
import { Register } from '../parts/Register.tsx';
import { useNextService } from './nextService.ts';

/** What else is there: power lines, pipes, roads, water. While it is open the map's tools draw these. */
export function ServiceRegister() {
  const { project } = useOpenFile();
  const { next } = useNextService();
  const f = useFigures();
  const { words } = f;
  const { heads } = words.window.draw.lists;
  const texts = words.window.draw.services;
  const called = words.kinds.service.what.choices;
  useEffect(() => {
    useNextService.setState({ drawing: true });
    return () => useNextService.setState({ drawing: false });
  }, []);
  return (
    <>
      <div className="field-pair">
        <SelectField
          label={texts.drawNext}
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
          {texts.draw({ what: next.what })}
        </button>
      </p>
      <Caution>{texts.caution}</Caution>
      <Register<Service>
        caption={texts.caption}
        rows={[...project.service.values()]}
        idOf={({ id }) => id}
        empty={texts.none}
        columns={[
          { title: heads.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
          { title: heads.what, cell: ({ what }) => called[what], sortBy: ({ what }) => called[what] },
          {
            title: heads.voltage,
            figures: true,
            cell: ({ what, voltageV }) =>
              what !== 'powerLine' ? '' : voltageV === null ? words.things.notKnown : f.volts(voltageV),
            sortBy: ({ voltageV }) => voltageV ?? -1,
          },
        ]}
      />
    </>
  );
}
