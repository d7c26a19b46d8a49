import { lengthBoundsOf } from '../../../core/kinds/form.ts';
import { property as described } from '../../../core/kinds/property.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Property } from '../../../core/model/things.ts';
import { coverSentence } from '../../../core/survey/sentences.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { useOpenFile } from '../../state/appState.ts';
import { change as changeThing } from '../../state/change.ts';
import { closeFile } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
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
  const f = useFigures();
  const { fileMenu, common } = f.words.window.frame;
  const change = (label: string, patch: Partial<Omit<Property, 'kind' | 'id'>>) =>
    changeThing(label, 'property', 'property', patch);
  return (
    <>
      <Answer>{f.say(coverSentence(survey))}</Answer>
      {property.invented ? <p className="invented">{fileMenu.invented}</p> : null}
      <section className="block" aria-labelledby="cover-out">
        <h2 id="cover-out">{fileMenu.print}</h2>
        <p className="buttons">
          <CommandButton id="print" className="main" />
        </p>
      </section>
      <section className="block" aria-labelledby="cover-export">
        <h2 id="cover-export">{fileMenu.export}</h2>
        <ExportBlock />
      </section>
      <section className="block" aria-labelledby="cover-in">
        <h2 id="cover-in">{fileMenu.import}</h2>
        <ImportBlock />
      </section>
      <section className="block" aria-labelledby="cover-ground">
        <h2 id="cover-ground">{fileMenu.heights}</h2>
        <GroundBlock />
      </section>
      <section className="block" aria-labelledby="cover-files">
        <h2 id="cover-files">{fileMenu.files}</h2>
        <p className="path">{path}</p>
        <p className="field-hint">{fileMenu.everyChange}</p>
        <p className="buttons">
          <CommandButton id="newProperty" />
          <CommandButton id="openProperty" />
          <CommandButton id="saveCopy" label={fileMenu.saveCopy} />
          <button type="button" onClick={() => void closeFile()}>
            {common.close}
          </button>
        </p>
      </section>
      <section className="block" aria-labelledby="cover-property">
        <h2 id="cover-property">{fileMenu.property}</h2>
        <TextField
          label={common.name}
          required
          value={property.name}
          onCommit={(name) => change(fileMenu.renamed, { name })}
        />
        <TextField
          label={common.note}
          long
          value={property.note}
          onCommit={(note) => change(fileMenu.noteChanged, { note })}
        />
        <SelectField
          label={fileMenu.units}
          value={property.units}
          choices={[
            { value: 'metric', label: fileMenu.metric },
            { value: 'imperial', label: fileMenu.imperial },
          ]}
          onCommit={(units) => change(fileMenu.unitsChanged, { units })}
        />
        <LengthField
          label={fileMenu.join}
          valueM={property.snapToleranceM}
          {...lengthBoundsOf(described.fields.snapToleranceM)}
          onCommitM={(snapToleranceM) => {
            if (snapToleranceM !== null) change(fileMenu.joinChanged, { snapToleranceM });
          }}
        />
      </section>
      <CoordinateBlock />
      <section className="block" aria-labelledby="cover-window">
        <h2 id="cover-window">{fileMenu.window}</h2>
        <p className="buttons">
          <CommandButton id="theme" />
          <CommandButton id="keys" />
        </p>
        <NumbersField />
      </section>
    </>
  );
}
