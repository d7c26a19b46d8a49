import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { setCrossing } from '../../../core/model/edits/setCrossing.ts';
import { heightWhenMade } from '../../../core/model/overheadHeight.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Crossing, Gateway } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { SelectField } from '../parts/fields.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { CableField } from './CableField.tsx';
import { sidesOfGateway } from './sidesOfGateway.ts';

/** How the live wire and the earth get past a gateway: the trench, what lies in it and how long each piece is. */
export function CrossingDetails({ gateway }: { readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const figures = survey.crossings.get(gateway.id);
  const live = survey.gateways.get(gateway.id)?.lineLive ?? false;
  const words = useWords().window.draw.crossing;
  const at = { gateway: gateway.name };
  return (
    <section className="crossing" aria-label={words.region(at)}>
      <h3>{figures?.crossing.method === 'overhead' ? words.over(at) : words.under(at)}</h3>
      {figures ? (
        <CrossingFields crossing={figures.crossing} gateway={gateway} />
      ) : (
        <NoCrossing gateway={gateway} live={live} />
      )}
    </section>
  );
}

function NoCrossing({ gateway, live }: { readonly gateway: Gateway; readonly live: boolean }) {
  const words = useWords().window.draw.crossing;
  const step = words.steps.add({ gateway: gateway.name });
  const add = () => void commit(step, setCrossing({ gatewayId: gateway.id, to: {} }, newId));
  return (
    <>
      <p>{live ? words.stopsHere : words.notNeeded}</p>
      <button type="button" className={live ? 'main' : undefined} onClick={add}>
        {words.add}
      </button>
    </>
  );
}

/** Fields that have a place of their own in the form, some of them only under ground. */
const placed = [
  'method',
  'bowM',
  'bowSide',
  'depthM',
  'riserHeightM',
  'tailM',
  'allowanceM',
  'pipeBoreMm',
  'minBendRadiusM',
  'earth',
  'earthConnectionM',
  'sealed',
  'status',
] as const;

type PartOfCrossing =
  | 'depthM'
  | 'riserHeightM'
  | 'tailM'
  | 'allowanceM'
  | 'pipeBoreMm'
  | 'minBendRadiusM'
  | 'earth'
  | 'earthConnectionM';

function CrossingFields({ crossing, gateway }: { readonly crossing: Crossing; readonly gateway: Gateway }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.draw.crossing;
  const { steps } = words;
  const defaults = propertyOf(project).crossings;
  const figures = survey.crossings.get(gateway.id)!;
  const at = { gateway: gateway.name };
  const set = (step: string, patch: Partial<Omit<Crossing, 'kind' | 'id'>>) =>
    change(step, 'crossing', crossing.id, patch);
  const field = (name: PartOfCrossing, told: { readonly label?: string; readonly part?: 'height' } = {}) => {
    const { part = name, ...rest } = told;
    return <KindField thing={crossing} field={name} step={steps.change({ part, ...at })} {...rest} />;
  };
  const buried = crossing.method === 'buried';
  return (
    <>
      <dl className="measures">
        {buried ? (
          <>
            <Measure term={words.trench} lengthM={figures.trenchM} note={words.formulas.trench} />
            <Measure term={words.pipe} lengthM={figures.pipeM} note={words.formulas.pipe} />
            <Measure term={words.liveCable} lengthM={figures.liveCableM} note={words.formulas.liveCable} />
            <Measure term={words.earthCable} lengthM={figures.earthCableM} note={words.formulas.earthCable} />
          </>
        ) : (
          <>
            <Measure term={words.liveCable} lengthM={figures.liveCableM} note={words.formulas.overheadLive} />
            <Measure term={words.earthWire} lengthM={figures.earthCableM} note={words.formulas.overheadEarth} />
          </>
        )}
      </dl>
      {buried ? <Caution>{words.caution}</Caution> : null}
      <KindField
        thing={crossing}
        field="method"
        onCommit={(method) =>
          set(steps.method(at), { method, riserHeightM: heightWhenMade(method, crossing, gateway, defaults) })
        }
      />
      {buried ? (
        <>
          <div className="field-pair">
            <KindField
              thing={crossing}
              field="bowM"
              step={steps.change({ part: 'bowM', ...at })}
              placeholderM={figures.bowM}
              hint={figures.bowAssumed ? words.curveAssumed : words.curveHint}
            />
            <CurvesTo crossing={crossing} gateway={gateway} />
          </div>
          <p className={figures.tighterThanPipeAllows ? 'field-problem' : 'field-hint'}>
            {words.bendRadius({ radiusM: figures.bendRadiusM, leastM: crossing.minBendRadiusM })}
          </p>
        </>
      ) : null}
      {buried ? (
        <div className="field-pair">
          {field('depthM')}
          {field('riserHeightM')}
        </div>
      ) : (
        field('riserHeightM', { label: words.wireHeight, part: 'height' })
      )}
      <div className="field-pair">
        {field('tailM')}
        {field('allowanceM')}
      </div>
      {buried ? (
        <div className="field-pair">
          {field('pipeBoreMm')}
          {field('minBendRadiusM')}
        </div>
      ) : null}
      <CableField
        label={words.liveCable}
        cableId={crossing.cableId}
        inGround={buried}
        onCommit={(cableId) => set(steps.change({ part: 'cableId', ...at }), { cableId })}
      />
      {field('earth', buried ? {} : { label: words.earthOverhead })}
      {crossing.earth && buried ? field('earthConnectionM') : null}
      {buried ? <KindField thing={crossing} field="sealed" step={steps.seal(at)} /> : null}
      <KindField thing={crossing} field="status" step={(status) => steps.mark({ status, ...at })} />
      <KindFields thing={crossing} except={placed} />
      <button type="button" onClick={() => void commit(steps.remove(at), deleteThings([crossing]), { deleting: true })}>
        {words.remove}
      </button>
    </>
  );
}

/** To which side the trench curves, by the compass. */
function CurvesTo({ crossing, gateway }: { readonly crossing: Crossing; readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.draw.crossing;
  const step = words.steps.change({ part: 'bowSide', gateway: gateway.name });
  const shape = survey.gateways.get(gateway.id);
  if (!shape) return <KindField thing={crossing} field="bowSide" step={step} />;
  const { hands } = sidesOfGateway(shape, survey);
  return (
    <SelectField
      label={f.words.kinds.crossing.bowSide.label}
      value={crossing.bowSide}
      choices={(['left', 'right'] as const).map((value) => ({ value, label: words.toThe(hands[value]) }))}
      onCommit={(bowSide) => change(step, 'crossing', crossing.id, { bowSide })}
    />
  );
}

function Measure({ term, lengthM, note }: { readonly term: string; readonly lengthM: number; readonly note: string }) {
  const f = useFigures();
  return (
    <div>
      <dt>{term}</dt>
      <dd>
        <span className="figure-value">{lengthM === 0 ? f.words.window.draw.crossing.none : f.tape(lengthM)}</span>
        <span className="field-hint">{note}</span>
      </dd>
    </div>
  );
}
