import { useState } from 'react';
import { named } from '../../../core/coordinates/epsgSystems.ts';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { knownSystems } from '../../../core/coordinates/systems.ts';
import { readUtmZone, utmDefinition, utmName } from '../../../core/coordinates/utm.ts';
import { type Message, message } from '../../../core/words/message.ts';
import type { SystemChoice } from '../../pictures/importState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { SelectField, TextField } from '../parts/fields.tsx';

type Chosen = SystemChoice | { readonly problem: Message };

const projected = knownSystems.filter((system) => system.kind === 'projected');

/** Asks which system the coordinates of a file are in, where it does not say it, or in a way that is not known here. */
export function SystemQuestion({
  of,
  why,
  otherwise,
  answer,
}: {
  readonly of: 'picture' | 'elevation model';
  /** One sentence that says what the file has, and what it lacks. */
  readonly why: string;
  /** The choice of one who does not know it either. */
  readonly otherwise: string;
  readonly answer: (choice: SystemChoice) => void;
}) {
  const f = useFigures();
  const said = f.words.window.background.placing.system;
  const [way, setWay] = useState('degrees');
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<Message | null>(null);
  const go = () => {
    const chosen = chosenSystem(way, text);
    if (typeof chosen === 'object' && 'problem' in chosen) setProblem(chosen.problem);
    else answer(chosen);
  };
  return (
    <section className="block" aria-label={said.of[of]}>
      <p>{why}</p>
      <SelectField
        label={said.label}
        value={way}
        choices={[
          { value: 'degrees', label: said.degrees },
          { value: 'utm', label: said.utm },
          ...projected.map(({ id, name }) => ({ value: id, label: f.say(name) })),
          { value: 'own', label: said.own },
          { value: 'eye', label: otherwise },
        ]}
        onCommit={(next) => {
          setWay(next);
          setProblem(null);
        }}
      />
      {way === 'utm' ? <TextField label={said.zone} value={text} onCommit={setText} /> : null}
      {way === 'own' ? <TextField label={said.proj} value={text} onCommit={setText} /> : null}
      {problem ? (
        <p className="field-problem" role="alert">
          {f.say(problem)}
        </p>
      ) : null}
      <p className="buttons">
        <button type="button" className="main" onClick={go}>
          {said.goOn}
        </button>
      </p>
    </section>
  );
}

function chosenSystem(way: string, text: string): Chosen {
  if (way === 'eye') return 'eye';
  if (way === 'degrees') {
    return {
      kind: 'projected',
      id: 'EPSG:4326',
      name: named('WGS 84'),
      definition: '+proj=longlat +datum=WGS84 +no_defs',
    };
  }
  if (way === 'utm') {
    const zone = readUtmZone(text);
    if (!zone) return { problem: message('coordinates.typed.zoneAlone') };
    return { kind: 'projected', id: 'utm', name: utmName(zone), definition: utmDefinition(zone) };
  }
  if (way === 'own') {
    const { problem } = projectionOf(text);
    return problem === null
      ? { kind: 'projected', id: 'own', name: message('coordinates.systems.itsOwn'), definition: text }
      : { problem };
  }
  return projected.find(({ id }) => id === way) ?? 'eye';
}
