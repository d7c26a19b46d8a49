import { useState } from 'react';
import { formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { knownSystems, ownSystemId, systemOf } from '../../../core/coordinates/systems.ts';
import { setCoordinateSystem } from '../../../core/model/edits/setCoordinateSystem.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { CoordinateSettings } from '../../../core/model/underlayThings.ts';
import type { Message } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { SelectField, TextField } from '../parts/fields.tsx';
import { PlaceOnEarth } from './PlaceOnEarth.tsx';

/** How coordinates are written on this property, and where on earth it is. */
export function CoordinateBlock() {
  const f = useFigures();
  const words = f.words.window.exchange.coordinates;
  const { project } = useOpenFile();
  const settings = project.coordinateSettings.get('coordinates');
  const property = propertyOf(project);
  const system = systemOf(settings);
  const [pasting, setPasting] = useState(false);
  const change = (system: string, own = settings?.own ?? null) => {
    void commit(words.change, setCoordinateSystem({ system, own }));
  };
  const choose = (id: string) => {
    setPasting(id === ownSystemId);
    if (id !== ownSystemId || settings?.own) change(id);
  };
  const showsOwn = pasting || system.id === ownSystemId;
  return (
    <section className="block" aria-labelledby="cover-coordinates">
      <h2 id="cover-coordinates">{words.title}</h2>
      <SelectField
        label={words.system}
        value={showsOwn ? ownSystemId : system.id}
        choices={[
          ...knownSystems.map(({ id, name }) => ({ value: id, label: f.say(name) })),
          { value: ownSystemId, label: words.another },
        ]}
        hint={words.systemHint}
        onCommit={choose}
      />
      {showsOwn ? <OwnSystem own={settings?.own ?? null} onChange={(own) => change(ownSystemId, own)} /> : null}
      {property.placed ? (
        <p className="details-fact">{words.middle({ place: formatPlace(property.origin, system, f) })}</p>
      ) : (
        <PlaceOnEarth />
      )}
    </section>
  );
}

type Own = NonNullable<CoordinateSettings['own']>;

function OwnSystem({ own, onChange }: { readonly own: Own | null; readonly onChange: (own: Own) => void }) {
  const f = useFigures();
  const words = f.words.window.exchange.coordinates;
  const [problem, setProblem] = useState<Message | null>(null);
  return (
    <>
      <TextField
        label={words.projText}
        long
        value={own?.definition ?? ''}
        hint={words.projTextHint}
        onCommit={(definition) => {
          const { problem: why } = projectionOf(definition);
          setProblem(why);
          if (why === null) onChange({ name: own?.name ?? words.ourOwn, definition });
        }}
      />
      {problem ? (
        <p className="field-problem" role="alert">
          {f.say(problem)}
        </p>
      ) : null}
      {own ? (
        <TextField label={words.ownName} required value={own.name} onCommit={(name) => onChange({ ...own, name })} />
      ) : null}
    </>
  );
}
