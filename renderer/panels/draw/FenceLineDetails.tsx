import { deleteVertex } from '../../../core/model/edits/deleteVertex.ts';
import { splitLine } from '../../../core/model/edits/splitLine.ts';
import type { FenceLine, Growth } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { CheckField, SelectField } from '../parts/fields.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';

const growths = ['property', 'clean', 'light', 'heavy'] as const;

type GrowthChoice = (typeof growths)[number] | 'own';

export function FenceLineDetails({ line }: { readonly line: FenceLine }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { fence, steps } = f.words.window.draw.details;
  const { name } = line;
  const set = (step: string, patch: Partial<Omit<FenceLine, 'kind' | 'id'>>) =>
    change(step, 'fenceLine', line.id, patch);
  const shape = survey.lines.get(line.id);
  const overGroundM = survey.heights.slopeLengthM(line.id, 0, shape?.lengthM ?? 0);
  const corners = line.path.length;
  return (
    <>
      <p className="details-fact">
        <span className="figure-value">{shape ? f.length(shape.lengthM) : f.words.things.notKnown}</span>{' '}
        {overGroundM === null
          ? fence[shape?.closed ? 'closed' : 'open']({ corners })
          : fence[shape?.closed ? 'closedOnGround' : 'openOnGround']({ corners, overGroundM })}
      </p>
      <KindField thing={line} field="name" step={steps.rename({ name })} />
      <SelectField
        label={f.words.kinds.fenceLine.typeId.label}
        value={line.typeId}
        choices={[...project.fenceType.values()].map(({ id, name }) => ({ value: id, label: name }))}
        onCommit={(typeId) => set(steps.type({ name }), { typeId })}
      />
      <CheckField
        label={fence.live}
        value={line.live}
        onCommit={(live) => set(live ? steps.live({ name }) : steps.notLive({ name }), { live })}
      />
      <SelectField<GrowthChoice>
        label={fence.growth}
        value={growthChoice(line.growth)}
        choices={[
          ...growths.map((value) => ({ value, label: fence.growths[value] })),
          ...(growthChoice(line.growth) === 'own' ? [{ value: 'own' as const, label: fence.growths.own }] : []),
        ]}
        onCommit={(growth) => {
          if (growth !== 'own') set(steps.growth({ name }), { growth: growth === 'property' ? null : growth });
        }}
      />
      <KindFields thing={line} except={['name', 'live']} />
      <Straights line={line} />
    </>
  );
}

function stationOf(lengths: readonly number[], straight: number): number {
  return lengths.slice(0, straight + 1).reduce((sum, lengthM) => sum + lengthM, 0);
}

function growthChoice(growth: Growth | null): GrowthChoice {
  if (growth === null) return 'property';
  return typeof growth === 'string' ? growth : 'own';
}

function Straights({ line: { id, path, name } }: { readonly line: FenceLine }) {
  const f = useFigures();
  const { fence, steps } = f.words.window.draw.details;
  const { earth } = useOpenFile().survey.plane;
  if (path.length > 200) return <p className="field-hint">{fence.tooManyCorners({ count: path.length })}</p>;
  const lengths = earth.segmentLengthsM(path);
  return (
    <details className="legs">
      <summary>{fence.straights}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{fence.straight}</th>
            <th scope="col" className="amount">
              {fence.length}
            </th>
            <th scope="col" className="amount">
              {fence.bearing}
            </th>
            <th scope="col">{fence.atItsEnd}</th>
          </tr>
        </thead>
        <tbody>
          {lengths.map((lengthM, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a straight has no identity but its place
            <tr key={index}>
              <td>{index + 1}</td>
              <td className="amount">{f.tape(lengthM)}</td>
              <td className="amount">{f.bearing(earth.bearingDeg(path[index]!, path[index + 1]!))}</td>
              <td>
                {index < lengths.length - 1 ? (
                  <>
                    <button
                      type="button"
                      className="plain"
                      onClick={() =>
                        void commit(
                          steps.split({ name }),
                          splitLine({ lineId: id, atM: stationOf(lengths, index) }, newId),
                        )
                      }
                    >
                      {fence.split}
                    </button>
                    <button
                      type="button"
                      className="plain"
                      onClick={() =>
                        void commit(steps.deleteCorner({ name }), deleteVertex({ lineId: id, index: index + 1 }))
                      }
                    >
                      {fence.deleteCorner}
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
