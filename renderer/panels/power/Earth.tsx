import { useState } from 'react';
import {
  EARTH_TEST_GOOD_V,
  EARTH_TEST_MORE_RODS_OVER_V,
  earthTestBasis,
  earthTestSteps,
  earthTestVerdict,
} from '../../../core/electrical/earth/earthTest.ts';
import { MOST_TABULATED_RODS, multipleRodBasis } from '../../../core/electrical/earth/multipleRodFactor.ts';
import {
  BULLETIN_CLEARANCE_M,
  METRES_PER_JOULE,
  ruleOfThumbBasis,
} from '../../../core/electrical/earth/ruleOfThumb.ts';
import { soilClassBasis, soilClasses } from '../../../core/electrical/earth/soilClasses.ts';
import { boundsOf } from '../../../core/kinds/form.ts';
import { powerFields } from '../../../core/kinds/property.ts';
import { earthTest } from '../../../core/kinds/tests.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { placeEarthField } from '../../../core/model/edits/placeEarthField.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { EarthField } from '../../../core/model/things.ts';
import { earthFigures, earthTargetOhm, rodsNeeded, ruleOfThumb } from '../../../core/survey/power/earthFigures.ts';
import type { Supply } from '../../../core/survey/power/types.ts';
import { today } from '../../../core/words/dates.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { EarthFieldDetails } from '../draw/SupplyDetails.tsx';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { usePower } from './usePower.ts';

/** The least distance to another earth electrode, IEC 60335-2-76, Annex BB. */
const leastToElectrodeM = 10;

/** The earth stakes: what they come to, how many are needed, and the test that decides. */
export function Earth() {
  const { power } = usePower();
  const { project } = useOpenFile();
  const words = useWords().window.power.earth;
  const without = [...project.energiser.values()].filter(
    ({ id }) => ![...project.earthField.values()].some(({ energiserId }) => energiserId === id),
  );
  return (
    <>
      <Soil />
      {power.supplies.map((supply, index) => (
        <SupplyEarthSection key={supply.energiser.id} supply={supply} index={index} />
      ))}
      {without.map((energiser) => (
        <p key={energiser.id} className="register-empty">
          {words.none(energiser)}{' '}
          <button
            type="button"
            onClick={() => void commit(words.addStep, placeEarthField({ energiserId: energiser.id }, newId))}
          >
            {words.add}
          </button>
        </p>
      ))}
      <EarthTest />
    </>
  );
}

function Soil() {
  const { power } = propertyOf(useOpenFile().project);
  const all = useWords();
  const words = all.window.power.earth.soil;
  const set = (soilOhmM: number) => change(words.step, 'property', 'property', { power: { ...power, soilOhmM } });
  const match = soilClasses.find(({ meanOhmM }) => meanOhmM === power.soilOhmM);
  return (
    <section className="block" aria-label={words.title}>
      <SelectField
        label={words.label}
        value={match?.soil ?? 'own'}
        choices={[
          ...soilClasses.map((each) => ({
            value: each.soil,
            label: words.choice({ ...each, soil: all.power.earth.soils[each.soil] }),
          })),
          { value: 'own' as const, label: words.own },
        ]}
        hint={words.hint({ basis: soilClassBasis })}
        onCommit={(value) => {
          const soil = soilClasses.find((each) => each.soil === value);
          if (soil) set(soil.meanOhmM);
        }}
      />
      <NumberField
        label={words.resistivity}
        unit="ohm m"
        decimals={1}
        {...boundsOf(powerFields.soilOhmM)}
        value={power.soilOhmM}
        onCommit={(soilOhmM) => {
          if (soilOhmM !== null) set(soilOhmM);
        }}
      />
    </section>
  );
}

function SupplyEarthSection({ supply, index }: { readonly supply: Supply; readonly index: number }) {
  const f = useFigures();
  const words = f.words.window.power.earth;
  const { estimate } = usePower();
  const { energiser } = supply;
  const earthV = estimate.supplies[index]!.earthV;
  return (
    <section className="block" aria-label={words.of(energiser)}>
      {earthFigures(supply).map(({ field, ohm, singleRodOhm, remarks }) => (
        <div key={field.id} className="block">
          <EarthFieldDetails field={field} />
          <dl className="plan-figures">
            <div>
              <dt>{words.together}</dt>
              <dd>{words.ohm({ ohm })}</dd>
            </div>
            <div>
              <dt>{words.oneRod}</dt>
              <dd>{words.ohm({ ohm: singleRodOhm })}</dd>
            </div>
            <div>
              <dt>{words.ownVolts}</dt>
              <dd>{earthV === null ? f.words.things.notKnown : f.volts(earthV)}</dd>
            </div>
          </dl>
          <p className="field-hint">{words.formulas({ basis: multipleRodBasis })}</p>
          {remarks.map((remark) => (
            <p key={remark.code} className="field-hint">
              {f.say(remark)}
            </p>
          ))}
          <RodsForTarget supply={supply} field={field} />
        </div>
      ))}
    </section>
  );
}

function RodsForTarget({ supply, field }: { readonly supply: Supply; readonly field: EarthField }) {
  const { power } = usePower();
  const { target, ruleOfThumb: thumbWords } = useWords().window.power.earth;
  const { energiser, internalOhm } = supply;
  const usual = earthTargetOhm(energiser, internalOhm);
  const [own, setOwn] = useState<number | null>(null);
  const targetOhm = own ?? usual;
  const needed = targetOhm > 0 ? rodsNeeded(power, field, targetOhm) : null;
  const thumb = ruleOfThumb(energiser, field);
  const set = (rods: number) => change(target.step, 'earthField', field.id, { rods });
  return (
    <>
      <NumberField
        label={target.label}
        unit="ohm"
        min={0.1}
        max={10_000}
        value={targetOhm}
        hint={own === null ? target.hint({ ohm: usual, goodV: EARTH_TEST_GOOD_V }) : undefined}
        onCommit={setOwn}
      />
      {needed ? (
        <p>
          {target.needed(needed)}{' '}
          {needed.rods > field.rods ? (
            <button type="button" onClick={() => set(needed.rods)}>
              {target.plan(needed)}
            </button>
          ) : null}
        </p>
      ) : (
        <p>{target.notEnough({ mostRods: MOST_TABULATED_RODS })}</p>
      )}
      <p>
        <strong>{thumbWords.label} </strong>
        {thumb
          ? thumbWords.rods({
              inGroundM: thumb.rodInGroundM,
              rods: thumb.rods,
              rodLengthM: field.rodLengthM,
              perJouleM: METRES_PER_JOULE,
            })
          : thumbWords.enterOutput({ perJouleM: METRES_PER_JOULE })}
      </p>
      <p className="field-hint">
        {thumbWords.clearance({
          basis: ruleOfThumbBasis,
          clearanceM: BULLETIN_CLEARANCE_M,
          electrodeM: leastToElectrodeM,
        })}
      </p>
    </>
  );
}

function verdictOf(volts: number, { verdict }: Texts['window']['power']['earth']['test']): string {
  switch (earthTestVerdict(volts)) {
    case 'good':
      return verdict.good({ goodV: EARTH_TEST_GOOD_V });
    case 'borderline':
      return verdict.borderline;
    case 'moreRods':
      return verdict.moreRods({ overV: EARTH_TEST_MORE_RODS_OVER_V });
  }
}

function EarthTest() {
  const f = useFigures();
  const words = f.words.window.power.earth.test;
  const { project } = useOpenFile();
  const fields = [...project.earthField.values()];
  const [fieldId, setFieldId] = useState(fields[0]?.id ?? '');
  const [volts, setVolts] = useState<number | null>(null);
  const field = project.earthField.get(fieldId) ?? fields[0];
  const verdict = volts === null ? null : verdictOf(volts, words);
  const kept = [...project.earthTest.values()]
    .filter(({ earthFieldId }) => earthFieldId === field?.id)
    .sort((x, y) => y.date.localeCompare(x.date));
  const write = () => {
    if (!field || volts === null) return;
    const notSaid = { by: '', meter: '', weather: '', load: '', note: '' };
    const test = {
      kind: 'earthTest',
      earthFieldId: field.id,
      date: today(),
      earthV: volts,
      fenceV: null,
      ...notSaid,
    } as const;
    void commit(words.writeStep, addThing(test, newId)).then((done) => {
      if (done) setVolts(null);
    });
  };
  return (
    <section className="block" aria-label={words.label}>
      <h2>{words.title}</h2>
      <Caution>{words.caution}</Caution>
      <ol className="test-steps">
        {earthTestSteps().map((step) => (
          <li key={step.code}>{f.say(step)}</li>
        ))}
      </ol>
      {fields.length > 1 ? (
        <SelectField
          label={words.field}
          value={field?.id ?? ''}
          choices={fields.map(({ id, energiserId }) => ({
            value: id,
            label: project.energiser.get(energiserId)?.name ?? id,
          }))}
          onCommit={setFieldId}
        />
      ) : null}
      <NumberField
        label={words.reading}
        unit="V"
        decimals={0}
        {...boundsOf(earthTest.fields.earthV)}
        optional
        value={volts}
        onCommit={setVolts}
      />
      {verdict === null ? null : (
        <p role="status">
          <strong>{verdict}</strong>{' '}
          {field ? (
            <button type="button" onClick={write}>
              {words.write}
            </button>
          ) : null}
        </p>
      )}
      {kept.length > 0 ? (
        <ul className="earth-tests">
          {kept.map(({ id, date, earthV }) => (
            <li key={id}>{words.kept({ day: date, volts: earthV, verdict: verdictOf(earthV, words) })}</li>
          ))}
        </ul>
      ) : null}
      <p className="field-hint">
        {words.basis({ basis: earthTestBasis, goodV: EARTH_TEST_GOOD_V, overV: EARTH_TEST_MORE_RODS_OVER_V })}
      </p>
    </section>
  );
}
