import { lengthBoundsOf } from '../../../core/kinds/form.ts';
import { property as described } from '../../../core/kinds/property.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Property } from '../../../core/model/things.ts';
import { coverSentence } from '../../../core/survey/sentences.ts';
import { figures } from '../../../core/words/figures.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { useOpenFile } from '../../state/appState.ts';
import { change as changeThing } from '../../state/change.ts';
import { closeFile } from '../../state/session.ts';
import { CoordinateBlock } from '../coordinates/CoordinateBlock.tsx';
import { ExportBlock } from '../exchange/ExportBlock.tsx';
import { GroundBlock } from '../exchange/GroundBlock.tsx';
import { ImportBlock } from '../exchange/ImportBlock.tsx';
import { Answer } from '../parts/Answer.tsx';
import { SelectField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { NumbersField } from './NumbersField.tsx';

/** The cover of the inspector: what the property is, its files, what comes in and what goes out. */
export function CoverPage() {
  const { project, survey, path } = useOpenFile();
  const property = propertyOf(project);
  const change = (label: string, patch: Partial<Omit<Property, 'kind' | 'id'>>) =>
    changeThing(label, 'property', 'property', patch);
  return (
    <>
      <Answer>{figures(property.units).say(coverSentence(survey))}</Answer>
      {property.invented ? <p className="invented">An invented example. No such property exists.</p> : null}
      <section className="block" aria-labelledby="cover-out">
        <h2 id="cover-out">Print</h2>
        <p className="buttons">
          <CommandButton id="print" className="main" />
        </p>
      </section>
      <section className="block" aria-labelledby="cover-export">
        <h2 id="cover-export">Export</h2>
        <ExportBlock />
      </section>
      <section className="block" aria-labelledby="cover-in">
        <h2 id="cover-in">Bring in</h2>
        <ImportBlock />
      </section>
      <section className="block" aria-labelledby="cover-ground">
        <h2 id="cover-ground">Heights of the ground</h2>
        <GroundBlock />
      </section>
      <section className="block" aria-labelledby="cover-files">
        <h2 id="cover-files">Files</h2>
        <p className="path">{path}</p>
        <p className="field-hint">Every change is written to this file at once; there is nothing to save.</p>
        <p className="buttons">
          <CommandButton id="newProperty" />
          <CommandButton id="openProperty" />
          <CommandButton id="saveCopy" label="Save a copy" />
          <button type="button" onClick={() => void closeFile()}>
            Close
          </button>
        </p>
      </section>
      <section className="block" aria-labelledby="cover-property">
        <h2 id="cover-property">The property</h2>
        <TextField
          label="Name"
          required
          value={property.name}
          onCommit={(name) => change('Rename the property', { name })}
        />
        <TextField label="Note" long value={property.note} onCommit={(note) => change('Change the note', { note })} />
        <SelectField
          label="Units"
          value={property.units}
          choices={[
            { value: 'metric', label: 'Metric: m, km, ha' },
            { value: 'imperial', label: 'Imperial: ft, mi, ac' },
          ]}
          onCommit={(units) => change('Change the units', { units })}
        />
        <LengthField
          label="Ends nearer than this join"
          valueM={property.snapToleranceM}
          {...lengthBoundsOf(described.fields.snapToleranceM)}
          onCommitM={(snapToleranceM) => {
            if (snapToleranceM !== null) change('Change what counts as joined', { snapToleranceM });
          }}
        />
      </section>
      <CoordinateBlock />
      <section className="block" aria-labelledby="cover-window">
        <h2 id="cover-window">This window</h2>
        <p className="buttons">
          <CommandButton id="theme" />
          <CommandButton id="keys" />
        </p>
        <NumbersField />
      </section>
    </>
  );
}
