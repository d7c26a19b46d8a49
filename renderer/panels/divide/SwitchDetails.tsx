import type { CutOutSwitch } from '../../../core/model/things.ts';
import { cutsOffSentence, feedSentence } from '../../../core/survey/switchInWords.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { KindField, KindFields } from '../parts/KindField.tsx';

export function SwitchDetails({ cutOut }: { readonly cutOut: CutOutSwitch }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const row = survey.switches.find(({ switch: { id } }) => id === cutOut.id);
  const { name } = cutOut;
  return (
    <>
      <p className="details-fact">{row?.placeText ?? 'It stands on no live fence.'}</p>
      {row ? (
        <p>
          {feedSentence(row.feed)} {cutsOffSentence(row, project, units)}
        </p>
      ) : null}
      {row?.wrongSide ? (
        <p className="field-problem">
          It stands on the far side of its crossing: the buried cable stays live when it is opened. Move it to the
          supply side.
        </p>
      ) : null}
      <KindField thing={cutOut} field="name" step={`Rename ${name}`} />
      <KindField thing={cutOut} field="normally" step={(normally) => `Leave ${normally}: ${name}`} />
      <KindField thing={cutOut} field="pinned" step={(pinned) => `${pinned ? 'Pin' : 'Unpin'} ${name}`} />
      <KindField thing={cutOut} field="status" step={(status) => `Mark ${status}: ${name}`} />
      <KindFields thing={cutOut} except={['name', 'normally', 'pinned', 'status']} />
    </>
  );
}
