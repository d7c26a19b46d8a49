import { useMemo, useState } from 'react';
import { readVoltageV } from '../../../core/kinds/common.ts';
import { boundsOf } from '../../../core/kinds/form.ts';
import { energisersToSearch } from '../../../core/locate/faultSearch/faultSearchGround.ts';
import { switchesInWords } from '../../../core/locate/faultSearch/faultSearchWords.ts';
import { faultSearchYardstick } from '../../../core/locate/faultSearch/faultSearchYardstick.ts';
import { planWhole, type SearchAim, testsLeft } from '../../../core/locate/faultSearch/testPlan.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { propertyOf } from '../../../core/model/project.ts';
import { limitsExplained, switchesOff, yardstickSentence } from '../../../core/sheets/yardstickInWords.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { limitsFor } from '../../../core/survey/power/yardstick.ts';
import { localMinute } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { groundOf } from './faultSearchNow.ts';

/** What a search would take, and its first step. */
export function FaultSearchStart() {
  const f = useFigures();
  const { begin: words, ...said } = f.words.window.find.search;
  const { project, survey } = useOpenFile();
  const energisers = energisersToSearch(survey);
  const [chosen, setChosen] = useState<string | null>(null);
  const [saves, setSaves] = useState<SearchAim>('tests');
  const [judgedBy, setJudgedBy] = useState<'usual' | 'limits'>('usual');
  const [limits, setLimits] = useState(() => limitsFor(propertyOf(project).power.stockMinimumV, null));
  const [by, setBy] = useState('');
  const energiserId = energisers.includes(chosen ?? '') ? chosen! : energisers[0];
  const ground = energiserId === undefined ? null : groundOf(survey, energiserId);
  const plan = useMemo(() => ground && planWhole(ground, [], saves), [ground, saves]);
  if (!ground || !plan || energiserId === undefined) {
    return <p className="register-empty">{words.nothing}</p>;
  }
  const left = testsLeft(ground, plan.tree);
  const first = faultSearchYardstick(
    powerOf(project, survey),
    { energiserId, openedFirst: plan.openFirst, judgedBy: 'usual', ...limits },
    { switchId: null, openIds: [] },
  );
  const start = () => {
    const now = localMinute(new Date());
    const search = {
      kind: 'faultHunt',
      name: said.name({ day: now }),
      startedAt: now,
      by,
      energiserId,
      saves,
      ...(judgedBy === 'usual' ? { judgedBy } : {}),
      ...limits,
      openedFirst: [],
      readings: [],
      end: null,
      note: '',
    } as const;
    void commit(said.steps.begin, addThing(search, newId));
  };
  return (
    <section className="block" aria-label={words.heading}>
      <p>
        {ground.pieces.length === 1
          ? words.one
          : words.parts({ parts: ground.pieces.length, most: left.most, expected: left.expected })}
      </p>
      {plan.openFirst.length > 0 ? <p>{words.rings({ switches: switchesInWords(project, plan.openFirst) })}</p> : null}
      {energisers.length > 1 ? (
        <SelectField
          label={words.energiser}
          value={energiserId}
          choices={energisers.map((id) => ({ value: id, label: project.energiser.get(id)?.name ?? id }))}
          onCommit={setChosen}
        />
      ) : null}
      <SelectField<SearchAim>
        label={words.aim}
        value={saves}
        choices={[
          { value: 'tests', label: words.aims.tests },
          { value: 'walking', label: words.aims.walking },
        ]}
        onCommit={setSaves}
      />
      <SelectField<'usual' | 'limits'>
        label={words.judgeBy}
        value={judgedBy}
        choices={[
          { value: 'usual', label: words.yardsticks.usual },
          { value: 'limits', label: words.yardsticks.limits },
        ]}
        hint={judgedBy === 'usual' ? f.say(limitsExplained()) : undefined}
        onCommit={setJudgedBy}
      />
      {judgedBy === 'usual' ? (
        <p>{f.say(yardstickSentence(first, switchesOff(project, plan.openFirst), 'atEnergiser'))}</p>
      ) : (
        <div className="field-pair">
          <KilovoltField
            label={words.lowBelow}
            volts={limits.lowBelowV}
            onCommit={(lowBelowV) => setLimits({ lowBelowV, goodFromV: Math.max(lowBelowV, limits.goodFromV) })}
          />
          <KilovoltField
            label={words.goodFrom}
            volts={limits.goodFromV}
            onCommit={(goodFromV) => setLimits({ goodFromV, lowBelowV: Math.min(goodFromV, limits.lowBelowV) })}
          />
        </div>
      )}
      <TextField label={words.by} value={by} onCommit={setBy} />
      <p className="buttons">
        <button type="button" className="fix" onClick={start}>
          {words.button}
        </button>
      </p>
    </section>
  );
}

function KilovoltField({
  label,
  volts,
  onCommit,
}: {
  readonly label: string;
  readonly volts: number;
  readonly onCommit: (volts: number) => void;
}) {
  return (
    <NumberField
      label={label}
      unit="kV"
      value={volts / 1000}
      {...boundsOf(readVoltageV, 1000)}
      onCommit={(value) => value !== null && onCommit(Math.round(value * 1000))}
    />
  );
}
