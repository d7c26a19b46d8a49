import { deleteVertex } from '../../../core/model/edits/deleteVertex.ts';
import { splitLine } from '../../../core/model/edits/splitLine.ts';
import type { FenceLine, Growth } from '../../../core/model/things.ts';
import { formatBearing, formatLength, formatTape } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { CheckField, SelectField } from '../parts/fields.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';

type GrowthChoice = 'property' | 'clean' | 'light' | 'heavy' | 'own';

export function FenceLineDetails({ line }: { readonly line: FenceLine }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const set = (label: string, patch: Partial<Omit<FenceLine, 'kind' | 'id'>>) =>
    change(`${label} ${line.name}`, 'fenceLine', line.id, patch);
  const shape = survey.lines.get(line.id);
  const overGroundM = survey.heights.slopeLengthM(line.id, 0, shape?.lengthM ?? 0);
  return (
    <>
      <p className="details-fact">
        <span className="figure-value">{shape ? formatLength(shape.lengthM, units) : 'not known'}</span>{' '}
        {shape?.closed ? 'closed line' : 'open line'}, {line.path.length} vertices
        {overGroundM === null ? '' : `; ${formatLength(overGroundM, units)} over the ground`}
      </p>
      <KindField thing={line} field="name" step={`Rename ${line.name}`} />
      <SelectField
        label="Fence type"
        value={line.typeId}
        choices={[...project.fenceType.values()].map(({ id, name }) => ({ value: id, label: name }))}
        onCommit={(typeId) => set('Change the type of', { typeId })}
      />
      <CheckField
        label="Live: part of the electric network"
        value={line.live}
        onCommit={(live) => set(live ? 'Make live:' : 'Take off the network:', { live })}
      />
      <SelectField<GrowthChoice>
        label="Growth against the wires"
        value={growthChoice(line.growth)}
        choices={[
          { value: 'property', label: 'As for the whole property' },
          { value: 'clean', label: 'New and clean' },
          { value: 'light', label: 'Light growth' },
          { value: 'heavy', label: 'Heavy growth' },
          ...(growthChoice(line.growth) === 'own' ? [{ value: 'own' as const, label: 'Own figure' }] : []),
        ]}
        onCommit={(growth) => {
          if (growth !== 'own') set('Change the growth on', { growth: growth === 'property' ? null : growth });
        }}
      />
      <KindFields thing={line} except={['name', 'live']} />
      <LegTable line={line} />
    </>
  );
}

function stationOf(lengths: readonly number[], leg: number): number {
  return lengths.slice(0, leg + 1).reduce((sum, lengthM) => sum + lengthM, 0);
}

function growthChoice(growth: Growth | null): GrowthChoice {
  if (growth === null) return 'property';
  return typeof growth === 'string' ? growth : 'own';
}

function LegTable({ line: { id, path, name } }: { readonly line: FenceLine }) {
  const units = useUnits();
  const { earth } = useOpenFile().survey.plane;
  if (path.length > 200) return <p className="field-hint">{path.length} vertices: too many to list here.</p>;
  const lengths = earth.segmentLengthsM(path);
  return (
    <details className="legs">
      <summary>Legs: length and bearing of each, split or delete a vertex</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Leg</th>
            <th scope="col" className="amount">
              Length
            </th>
            <th scope="col" className="amount">
              Bearing
            </th>
            <th scope="col">At its end</th>
          </tr>
        </thead>
        <tbody>
          {lengths.map((lengthM, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a leg has no identity but its place
            <tr key={index}>
              <td>{index + 1}</td>
              <td className="amount">{formatTape(lengthM, units)}</td>
              <td className="amount">{formatBearing(earth.bearingDeg(path[index]!, path[index + 1]!))}</td>
              <td>
                {index < lengths.length - 1 ? (
                  <>
                    <button
                      type="button"
                      className="plain"
                      onClick={() =>
                        void commit(`Split ${name}`, splitLine({ lineId: id, atM: stationOf(lengths, index) }, newId))
                      }
                    >
                      Split
                    </button>
                    <button
                      type="button"
                      className="plain"
                      onClick={() =>
                        void commit(`Delete a vertex of ${name}`, deleteVertex({ lineId: id, index: index + 1 }))
                      }
                    >
                      Delete vertex
                    </button>
                  </>
                ) : null}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
