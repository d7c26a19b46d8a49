import { useState } from 'react';
import {
  EARTH_TEST_GOOD_V,
  EARTH_TEST_MORE_RODS_OVER_V,
  earthTestBasis,
  earthTestSteps,
  earthTestVerdict,
} from '../../../core/electrical/earth/earthTest.ts';
import { multipleRodBasis } from '../../../core/electrical/earth/multipleRodFactor.ts';
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
import { dateText, today } from '../../../core/words/dates.ts';
import { fixed, formatAtLeast, formatLength, formatVoltage } from '../../../core/words/numbers/write.ts';
import { counted } from '../../../core/words/text.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { EarthFieldDetails } from '../draw/SupplyDetails.tsx';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { basisInWords } from './basisInWords.ts';
import { usePower } from './usePower.ts';

/** The earth stakes: what they come to, how many are needed, and the test that decides. */
export function Earth() {
  const { power } = usePower();
  const { project } = useOpenFile();
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
          No earth stakes are drawn for {energiser.name}.{' '}
          <button
            type="button"
            onClick={() => void commit('Add earth stakes', placeEarthField({ energiserId: energiser.id }, newId))}
          >
            Add them
          </button>
        </p>
      ))}
      <EarthTest />
    </>
  );
}

function Soil() {
  const { power } = propertyOf(useOpenFile().project);
  const set = (soilOhmM: number) =>
    change('Change the soil', 'property', 'property', { power: { ...power, soilOhmM } });
  const match = soilClasses.find(({ meanOhmM }) => meanOhmM === power.soilOhmM);
  return (
    <section className="block" aria-label="Soil">
      <SelectField
        label="Soil at the stakes"
        value={match?.name ?? 'own'}
        choices={[
          ...soilClasses.map(({ name, meanOhmM, lowestOhmM, highestOhmM }) => ({
            value: name,
            label: `${name}: ${fixed(meanOhmM, 0)} (${fixed(lowestOhmM, 0)} to ${fixed(highestOhmM, 0)}) ohm m`,
          })),
          { value: 'own', label: 'Own figure' },
        ]}
        hint={`Means, with lowest and highest: ${basisInWords(soilClassBasis)}. Dampness alone moves a soil through most of its range.`}
        onCommit={(name) => {
          const soil = soilClasses.find((each) => each.name === name);
          if (soil) set(soil.meanOhmM);
        }}
      />
      <NumberField
        label="Soil resistivity"
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
  const units = useUnits();
  const { estimate } = usePower();
  const { energiser } = supply;
  const earthV = estimate.supplies[index]!.earthV;
  return (
    <section className="block" aria-label={`Earth of ${energiser.name}`}>
      {earthFigures(supply, units).map(({ field, ohm, singleRodOhm, remarks }) => (
        <div key={field.id} className="block">
          <EarthFieldDetails field={field} />
          <dl className="plan-figures">
            <div>
              <dt>Together</dt>
              <dd>{fixed(ohm, 1)} ohm</dd>
            </div>
            <div>
              <dt>One rod</dt>
              <dd>{fixed(singleRodOhm, 1)} ohm</dd>
            </div>
            <div>
              <dt>Its own peak now</dt>
              <dd>{earthV === null ? 'not known' : formatVoltage(earthV)}</dd>
            </div>
          </dl>
          <p className="field-hint">
            Estimates. One rod by H. B. Dwight, AIEE Transactions 55 (1936); together by{' '}
            {basisInWords(multipleRodBasis)}.
          </p>
          {remarks.map((remark) => (
            <p key={remark} className="field-hint">
              {remark}
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
  const units = useUnits();
  const perJoule = formatAtLeast(METRES_PER_JOULE, units);
  const { energiser, internalOhm } = supply;
  const usual = earthTargetOhm(energiser, internalOhm);
  const [own, setOwn] = useState<number | null>(null);
  const targetOhm = own ?? usual;
  const needed = targetOhm > 0 ? rodsNeeded(power, field, targetOhm) : null;
  const thumb = ruleOfThumb(energiser, field);
  const set = (rods: number) => change('Change the earth stakes', 'earthField', field.id, { rods });
  return (
    <>
      <NumberField
        label="Bring it down to"
        unit="ohm"
        min={0.1}
        max={10_000}
        value={targetOhm}
        hint={
          own === null
            ? `At ${fixed(usual, 1)} ohm an earth test with the fence shorted would read about ${EARTH_TEST_GOOD_V} V.`
            : undefined
        }
        onCommit={setOwn}
      />
      {needed ? (
        <p>
          {counted(needed.rods, 'rod')} like these would come to about {fixed(needed.ohm, 1)} ohm.{' '}
          {needed.rods > field.rods ? (
            <button type="button" onClick={() => set(needed.rods)}>
              Plan {needed.rods} rods
            </button>
          ) : null}
        </p>
      ) : (
        <p>Not even 24 rods like these come down to that. Longer rods, damper ground or a second field are needed.</p>
      )}
      <p>
        <strong>Rule of thumb: </strong>
        {thumb
          ? `${formatLength(thumb.rodInGroundM, units)} of rod in the ground, ${counted(thumb.rods, 'rod')} of ${formatLength(field.rodLengthM, units)} (${perJoule} for each joule of output).`
          : `enter the output energy on the label, and it is ${perJoule} of rod for each joule.`}
      </p>
      <p className="field-hint">
        {basisInWords(ruleOfThumbBasis)}; it also asks for {formatLength(BULLETIN_CLEARANCE_M, units)} from other
        earths, water pipes and utilities. The standard's least distance to another earth electrode is{' '}
        {formatAtLeast(10, units)} (IEC 60335-2-76, Annex BB).
      </p>
    </>
  );
}

const verdicts: Record<ReturnType<typeof earthTestVerdict>, string> = {
  good: `Good: ${EARTH_TEST_GOOD_V} V and under.`,
  borderline: 'Borderline: test again when the ground is at its driest.',
  'more rods': `Add rods and test again: over ${EARTH_TEST_MORE_RODS_OVER_V} V.`,
};

function EarthTest() {
  const units = useUnits();
  const { project } = useOpenFile();
  const fields = [...project.earthField.values()];
  const [fieldId, setFieldId] = useState(fields[0]?.id ?? '');
  const [volts, setVolts] = useState<number | null>(null);
  const field = project.earthField.get(fieldId) ?? fields[0];
  const verdict = volts === null ? null : verdicts[earthTestVerdict(volts)];
  const kept = [...project.earthTest.values()]
    .filter(({ earthFieldId }) => earthFieldId === field?.id)
    .sort((x, y) => y.date.localeCompare(x.date));
  const write = () => {
    if (!field || volts === null) return;
    const words = { by: '', meter: '', weather: '', load: '', note: '' };
    const test = {
      kind: 'earthTest',
      earthFieldId: field.id,
      date: today(),
      earthV: volts,
      fenceV: null,
      ...words,
    } as const;
    void commit('Write down an earth test', addThing(test, newId)).then((done) => {
      if (done) setVolts(null);
    });
  };
  return (
    <section className="block" aria-label="Earth test">
      <h2>The earth test</h2>
      <Caution>
        The fence is live while you read. Keep people and stock away. Put shorts on, and take them off, only with the
        energiser off and the fence proven dead. Locate buried services before you drive rods or pins.
      </Caution>
      <ol className="test-steps">
        {earthTestSteps(units).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {fields.length > 1 ? (
        <SelectField
          label="Earth stakes of"
          value={field?.id ?? ''}
          choices={fields.map(({ id, energiserId }) => ({
            value: id,
            label: project.energiser.get(energiserId)?.name ?? id,
          }))}
          onCommit={setFieldId}
        />
      ) : null}
      <NumberField
        label="Read at the last rod"
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
              Write it down
            </button>
          ) : null}
        </p>
      )}
      {kept.length > 0 ? (
        <ul className="earth-tests">
          {kept.map(({ id, date, earthV }) => (
            <li key={id}>
              {dateText(date)}: {formatVoltage(earthV)}. {verdicts[earthTestVerdict(earthV)]}
            </li>
          ))}
        </ul>
      ) : null}
      <p className="field-hint">
        {basisInWords(earthTestBasis)}; the {EARTH_TEST_GOOD_V} V and {EARTH_TEST_MORE_RODS_OVER_V} V are common
        practice, no source.
      </p>
    </section>
  );
}
