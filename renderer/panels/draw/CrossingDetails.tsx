import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { setCrossing } from '../../../core/model/edits/setCrossing.ts';
import { heightWhenMade } from '../../../core/model/overheadHeight.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Crossing, Gateway } from '../../../core/model/things.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Caution } from '../parts/Caution.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { CableField } from './CableField.tsx';

/** How the live wire and the earth get past a gateway: the trench, what lies in it and how long each piece is. */
export function CrossingDetails({ gateway }: { readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const figures = survey.crossings.get(gateway.id);
  const live = survey.gateways.get(gateway.id)?.lineLive ?? false;
  return (
    <section className="crossing" aria-label={`Crossing at ${gateway.name}`}>
      <h3>
        Crossing {figures?.crossing.method === 'overhead' ? 'over' : 'under'} {gateway.name}
      </h3>
      {figures ? (
        <CrossingFields crossing={figures.crossing} gateway={gateway} />
      ) : (
        <NoCrossing gateway={gateway} live={live} />
      )}
    </section>
  );
}

function NoCrossing({ gateway, live }: { readonly gateway: Gateway; readonly live: boolean }) {
  const add = () =>
    void commit(`Add a crossing at ${gateway.name}`, setCrossing({ gatewayId: gateway.id, to: {} }, newId));
  return (
    <>
      <p>
        {live
          ? 'The live wire stops here: nothing carries it past the gateway.'
          : 'This fence is not live, so none is needed.'}
      </p>
      <button type="button" className={live ? 'main' : undefined} onClick={add}>
        Add a crossing
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

type FieldOfCrossing = Exclude<keyof Crossing, 'kind' | 'id'>;

function CrossingFields({ crossing, gateway }: { readonly crossing: Crossing; readonly gateway: Gateway }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const defaults = propertyOf(project).crossings;
  const figures = survey.crossings.get(gateway.id)!;
  const set = (label: string, patch: Partial<Omit<Crossing, 'kind' | 'id'>>) =>
    change(`${label} the crossing at ${gateway.name}`, 'crossing', crossing.id, patch);
  const at = `the crossing at ${gateway.name}`;
  const field = (name: FieldOfCrossing, what: string, told: { readonly label?: string } = {}) => (
    <KindField thing={crossing} field={name} step={`Change ${what} of ${at}`} {...told} />
  );
  const buried = crossing.method === 'buried';
  return (
    <>
      <dl className="measures">
        {buried ? (
          <>
            <Measure term="Trench" lengthM={figures.trenchM} note="along the curve" />
            <Measure term="Pipe" lengthM={figures.pipeM} note="trench + 2 x (depth + riser) + allowance" />
            <Measure term="Live cable" lengthM={figures.liveCableM} note="pipe + 2 x tail" />
            <Measure term="Earth cable" lengthM={figures.earthCableM} note="trench + 2 x (depth + joint height)" />
          </>
        ) : (
          <>
            <Measure term="Live cable" lengthM={figures.liveCableM} note="span + 2 x (height + tail) + allowance" />
            <Measure term="Earth wire" lengthM={figures.earthCableM} note="span + 2 x height + allowance" />
          </>
        )}
      </dl>
      {buried ? (
        <Caution>
          Have other buried services located before you dig. Turn the energiser off and prove the fence dead before
          work.
        </Caution>
      ) : null}
      <KindField
        thing={crossing}
        field="method"
        onCommit={(method) =>
          set('Change', { method, riserHeightM: heightWhenMade(method, crossing, gateway, defaults) })
        }
      />
      {buried ? (
        <>
          <div className="field-pair">
            <KindField
              thing={crossing}
              field="bowM"
              step={`Change the bow of ${at}`}
              placeholderM={figures.bowM}
              hint={
                figures.bowAssumed
                  ? 'Assumed: a share of the width. Type it or drag it on the map; empty goes back to the assumption.'
                  : 'How far the trench curves off the straight line.'
              }
            />
            {field('bowSide', 'the side')}
          </div>
          <p className={figures.tighterThanPipeAllows ? 'field-problem' : 'field-hint'}>
            Bend radius {formatTape(figures.bendRadiusM, units)}; the pipe allows{' '}
            {formatTape(crossing.minBendRadiusM, units)} and up.
          </p>
        </>
      ) : null}
      {buried ? (
        <div className="field-pair">
          {field('depthM', 'the depth')}
          {field('riserHeightM', 'the riser height')}
        </div>
      ) : (
        field('riserHeightM', 'the height', { label: 'Height of the wire' })
      )}
      <div className="field-pair">
        {field('tailM', 'the tails')}
        {field('allowanceM', 'the allowance')}
      </div>
      {buried ? (
        <div className="field-pair">
          {field('pipeBoreMm', 'the pipe')}
          {field('minBendRadiusM', 'the least bend radius')}
        </div>
      ) : null}
      <CableField
        label="Live cable"
        cableId={crossing.cableId}
        inGround={buried}
        onCommit={(cableId) => set('Change the cable of', { cableId })}
      />
      {field('earth', 'the earth', buried ? {} : { label: 'An earth wire goes across overhead too' })}
      {crossing.earth && buried ? field('earthConnectionM', 'the earth joint') : null}
      {buried ? <KindField thing={crossing} field="sealed" step={`Note the seal of ${at}`} /> : null}
      <KindField thing={crossing} field="status" step={(status) => `Mark ${status}: ${at}`} />
      <KindFields thing={crossing} except={placed} />
      <button
        type="button"
        onClick={() =>
          void commit(`Remove the crossing at ${gateway.name}`, deleteThings([crossing]), { deleting: true })
        }
      >
        Remove the crossing
      </button>
    </>
  );
}

function Measure({ term, lengthM, note }: { readonly term: string; readonly lengthM: number; readonly note: string }) {
  const units = useUnits();
  return (
    <div>
      <dt>{term}</dt>
      <dd>
        <span className="figure-value">{lengthM === 0 ? 'none' : formatTape(lengthM, units)}</span>
        <span className="field-hint">{note}</span>
      </dd>
    </div>
  );
}
