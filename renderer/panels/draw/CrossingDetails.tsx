import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { setCrossing } from '../../../core/model/edits/setCrossing.ts';
import { formatTape } from '../../../core/model/formatUnits.ts';
import { heightWhenMade, highestRiserM } from '../../../core/model/overheadHeight.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Crossing, Gateway } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Caution } from '../parts/Caution.tsx';
import { CheckField, NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { StatusField } from '../parts/StatusField.tsx';
import { CableField } from './CableField.tsx';
import { SealedField } from './SealedField.tsx';

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

function CrossingFields({ crossing, gateway }: { readonly crossing: Crossing; readonly gateway: Gateway }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const defaults = propertyOf(project).crossings;
  const figures = survey.crossings.get(gateway.id)!;
  const set = (label: string, patch: Partial<Omit<Crossing, 'kind' | 'id'>>) =>
    change(`${label} the crossing at ${gateway.name}`, 'crossing', crossing.id, patch);
  const length = (label: string, key: keyof Crossing & `${string}M`, maxM: number, hint?: string) => (
    <LengthField
      label={label}
      valueM={crossing[key] as number}
      maxM={maxM}
      {...(hint === undefined ? {} : { hint })}
      onCommitM={(valueM) => {
        if (valueM !== null) set(`Change ${label.toLowerCase()} of`, { [key]: valueM });
      }}
    />
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
      <SelectField
        label="How"
        value={crossing.method}
        choices={[
          { value: 'buried', label: 'Buried cable in pipe' },
          { value: 'overhead', label: 'Overhead' },
        ]}
        onCommit={(method) =>
          set('Change', { method, riserHeightM: heightWhenMade(method, crossing, gateway, defaults) })
        }
      />
      {buried ? (
        <>
          <div className="field-pair">
            <LengthField
              label="Bow"
              valueM={crossing.bowM}
              optional
              maxM={gateway.widthM / 2}
              placeholderM={figures.bowM}
              hint={
                figures.bowAssumed
                  ? 'Assumed: a share of the width. Type it or drag it on the map; empty goes back to the assumption.'
                  : 'How far the trench curves off the straight line.'
              }
              onCommitM={(bowM) => set('Change the bow of', { bowM })}
            />
            <SelectField
              label="Bows to"
              value={crossing.bowSide}
              choices={[
                { value: 'left', label: 'Left' },
                { value: 'right', label: 'Right' },
              ]}
              onCommit={(bowSide) => set('Change the side of', { bowSide })}
            />
          </div>
          <p className={figures.tighterThanPipeAllows ? 'field-problem' : 'field-hint'}>
            Bend radius {formatTape(figures.bendRadiusM, units)}; the pipe allows{' '}
            {formatTape(crossing.minBendRadiusM, units)} and up.
          </p>
        </>
      ) : null}
      {buried ? (
        <div className="field-pair">
          {length('Depth', 'depthM', 3)}
          {length('Riser height', 'riserHeightM', highestRiserM)}
        </div>
      ) : (
        length('Height of the wire', 'riserHeightM', 10)
      )}
      <div className="field-pair">
        {length('Tail, each end', 'tailM', 10)}
        {length('Allowance', 'allowanceM', 10)}
      </div>
      {buried ? (
        <div className="field-pair">
          <NumberField
            label="Pipe bore"
            unit="mm"
            decimals={0}
            min={5}
            max={200}
            value={crossing.pipeBoreMm}
            onCommit={(pipeBoreMm) => {
              if (pipeBoreMm !== null) set('Change the pipe of', { pipeBoreMm });
            }}
          />
          {length("Pipe's least bend radius", 'minBendRadiusM', 10)}
        </div>
      ) : null}
      <CableField
        label="Live cable"
        cableId={crossing.cableId}
        inGround={buried}
        onCommit={(cableId) => set('Change the cable of', { cableId })}
      />
      <CheckField
        label={buried ? 'An earth cable goes across too' : 'An earth wire goes across overhead too'}
        value={crossing.earth}
        onCommit={(earth) => set('Change the earth of', { earth })}
      />
      {crossing.earth && buried ? length('Earth joined at height', 'earthConnectionM', 3) : null}
      {buried ? (
        <SealedField sealed={crossing.sealed} onCommit={(sealed) => set('Note the seal of', { sealed })} />
      ) : null}
      <StatusField status={crossing.status} onCommit={(status) => set(`Mark ${status}:`, { status })} />
      <TextField
        label="Note on the crossing"
        long
        value={crossing.note}
        onCommit={(note) => set('Change the note of', { note })}
      />
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
