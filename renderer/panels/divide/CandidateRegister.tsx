import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { setRule } from '../../../core/model/edits/setRule.ts';
import { parsePlaceKey } from '../../../core/model/placeKey.ts';
import type { SwitchCandidate } from '../../../core/survey/types.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { candidateMapId } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { Register } from '../parts/Register.tsx';
import { WorkedOut } from '../parts/WorkedOut.tsx';

const reasons: Record<SwitchCandidate['why'], string> = {
  gateway: 'supply side of a crossing',
  takeOff: 'take-off',
  strainer: 'strainer along a run',
  added: 'added by hand',
  existing: 'a switch stands here',
};

type Rule = 'free' | 'forced' | 'forbidden';
const ruleWords: Record<Rule, string> = { free: 'Let the plan decide', forced: 'Always', forbidden: 'Never' };

/** Every place where a switch could go, and the user's word on it. */
export function CandidateRegister() {
  const plan = useApp((state) => state.analysis?.plan ?? null);
  const chosen = new Set(plan?.chosen);
  return (
    <WorkedOut part="plan" what="the places for a switch">
      <Register<SwitchCandidate>
        caption="Places for a switch"
        rows={plan?.candidates ?? []}
        idOf={candidateMapId}
        empty="No place for a switch yet: draw gateways, branches or strainers on a live fence, or mark places with the tool Place on the map."
        columns={[
          { title: 'Place', cell: (row) => <PlaceCell row={row} />, sortBy: placeOf },
          { title: 'Cost', figures: true, cell: ({ cost }) => fixed(cost, 1), sortBy: ({ cost }) => cost },
          {
            title: 'In the plan',
            cell: ({ key }) => (chosen.has(key) ? 'yes' : 'no'),
            sortBy: ({ key }) => Number(!chosen.has(key)),
          },
          { title: 'A switch here', cell: (row) => <RuleChoice candidate={row} /> },
        ]}
      />
    </WorkedOut>
  );
}

/** The place in words; one that the user added can be taken away again. */
function PlaceCell({ row }: { readonly row: SwitchCandidate }) {
  const key = parsePlaceKey(row.key);
  if (key?.on !== 'added') return placeOf(row);
  return (
    <>
      {placeOf(row)}{' '}
      <button
        type="button"
        className="plain"
        aria-label={`Delete the place ${row.label}`}
        onClick={(event) => {
          event.stopPropagation();
          void commit(
            `Delete the place ${row.label}`,
            deleteThings([{ kind: 'switchCandidate', id: key.candidateId }]),
          );
        }}
      >
        Delete
      </button>
    </>
  );
}

function placeOf(row: SwitchCandidate): string {
  return `${row.label}, ${reasons[row.why]}`;
}

function RuleChoice({ candidate }: { readonly candidate: SwitchCandidate }) {
  const value: Rule = candidate.rule ?? 'free';
  return (
    <select
      aria-label={`A switch at ${candidate.label}`}
      value={value}
      onClick={(event) => event.stopPropagation()}
      onChange={(event) => {
        const rule = event.target.value as Rule;
        void commit(
          `${ruleWords[rule]}: a switch at ${candidate.label}`,
          setRule({ key: candidate.key, rule: rule === 'free' ? null : rule }),
        );
      }}
    >
      {(Object.keys(ruleWords) as Rule[]).map((rule) => (
        <option key={rule} value={rule}>
          {ruleWords[rule]}
        </option>
      ))}
    </select>
  );
}
