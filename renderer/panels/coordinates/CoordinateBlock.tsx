import { useState } from 'react';
import { formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { knownSystems, ownSystemId, systemOf } from '../../../core/coordinates/systems.ts';
import { setCoordinateSystem } from '../../../core/model/edits/setCoordinateSystem.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { CoordinateSettings } from '../../../core/model/underlayThings.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { SelectField, TextField } from '../parts/fields.tsx';
import { PlaceOnEarth } from './PlaceOnEarth.tsx';

/** How coordinates are written on this property, and where on earth it is. */
export function CoordinateBlock() {
  const { project } = useOpenFile();
  const settings = project.coordinateSettings.get('coordinates');
  const property = propertyOf(project);
  const system = systemOf(settings);
  const [pasting, setPasting] = useState(false);
  const change = (system: string, own = settings?.own ?? null) => {
    void commit('Change the coordinate system', setCoordinateSystem({ system, own }));
  };
  const choose = (id: string) => {
    setPasting(id === ownSystemId);
    if (id !== ownSystemId || settings?.own) change(id);
  };
  const showsOwn = pasting || system.id === ownSystemId;
  return (
    <section className="block" aria-labelledby="cover-coordinates">
      <h2 id="cover-coordinates">Coordinates</h2>
      <SelectField
        label="Shown and typed as"
        value={showsOwn ? ownSystemId : system.id}
        choices={[
          ...knownSystems.map(({ id, name }) => ({ value: id, label: name })),
          { value: ownSystemId, label: 'Another: I paste its PROJ text' },
        ]}
        hint="The map’s foot shows the pointer’s place in it; Alt+G goes to coordinates. Degrees may be typed in any of them."
        onCommit={choose}
      />
      {showsOwn ? <OwnSystem own={settings?.own ?? null} onChange={(own) => change(ownSystemId, own)} /> : null}
      {property.placed ? (
        <p className="details-fact">The middle of the working plane is at {formatPlace(property.origin, system)}.</p>
      ) : (
        <PlaceOnEarth />
      )}
    </section>
  );
}

type Own = NonNullable<CoordinateSettings['own']>;

function OwnSystem({ own, onChange }: { readonly own: Own | null; readonly onChange: (own: Own) => void }) {
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <>
      <TextField
        label="PROJ text of the system"
        long
        value={own?.definition ?? ''}
        hint="The text that begins with +proj=, as lists of coordinate systems give it for an EPSG code."
        onCommit={(definition) => {
          const { problem: why } = projectionOf(definition);
          setProblem(why);
          if (why === null) onChange({ name: own?.name ?? 'Our own system', definition });
        }}
      />
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      {own ? (
        <TextField label="Its name" required value={own.name} onCommit={(name) => onChange({ ...own, name })} />
      ) : null}
    </>
  );
}
