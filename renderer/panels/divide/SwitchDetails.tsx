import type { CutOutSwitch } from '../../../core/model/things.ts';
import { cutsOffSentence, feedSentence } from '../../../core/survey/switchInWords.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { KindField, KindFields } from '../parts/KindField.tsx';

export function SwitchDetails({ cutOut }: { readonly cutOut: CutOutSwitch }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.divide.switches;
  const row = survey.switches.find(({ switch: { id } }) => id === cutOut.id);
  const cutsOff = row && cutsOffSentence(row, project);
  const { step } = words;
  return (
    <>
      <p className="details-fact">{row ? f.say(row.where) : words.notOnFence}</p>
      {row ? (
        <p>
          {f.say(feedSentence(row.feed))} {cutsOff ? f.say(cutsOff) : null}
        </p>
      ) : null}
      {row?.wrongSide ? <p className="field-problem">{words.wrongSide}</p> : null}
      <KindField thing={cutOut} field="name" step={step.rename(cutOut)} />
      <KindField
        thing={cutOut}
        field="normally"
        step={(normally) => (normally === 'open' ? step.leaveOff(cutOut) : step.leaveOn(cutOut))}
      />
      <KindField thing={cutOut} field="pinned" step={(pinned) => (pinned ? step.pin(cutOut) : step.unpin(cutOut))} />
      <KindField
        thing={cutOut}
        field="status"
        step={(status) => (status === 'built' ? step.built(cutOut) : step.planned(cutOut))}
      />
      <KindFields thing={cutOut} except={['name', 'normally', 'pinned', 'status']} />
    </>
  );
}
