import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { setRule } from '../../../core/model/edits/setRule.ts';
import { parsePlaceKey } from '../../../core/model/placeKey.ts';
import type { SwitchCandidate } from '../../../core/survey/types.ts';
import type { Texts } from '../../../core/words/message.ts';
import { candidateMapId } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { Register } from '../parts/Register.tsx';
import { WorkedOut } from '../parts/WorkedOut.tsx';

type Rule = 'free' | 'forced' | 'forbidden';
const rules: readonly Rule[] = ['free', 'forced', 'forbidden'];

/** Every place where a switch could go, and the user's word on it. */
export function CandidateRegister() {
  const plan = useApp((state) => state.analysis?.plan ?? null);
  const chosen = new Set(plan?.chosen);
  const f = useFigures();
  const { places: words, register, place } = f.words.window.divide;
  return (
    <WorkedOut part="plan" what={words.what}>
      <Register<SwitchCandidate>
        caption={register.places}
        rows={plan?.candidates ?? []}
        idOf={candidateMapId}
        empty={words.empty}
        columns={[
          { title: place, cell: (row) => <PlaceCell row={row} />, sortBy: (row) => placeOf(row, words) },
          { title: words.cost, figures: true, cell: ({ cost }) => f.number(cost, 1), sortBy: ({ cost }) => cost },
          {
            title: words.inPlan,
            cell: ({ key }) => (chosen.has(key) ? words.yes : words.no),
            sortBy: ({ key }) => Number(!chosen.has(key)),
          },
          { title: words.here, cell: (row) => <RuleChoice candidate={row} /> },
        ]}
      />
    </WorkedOut>
  );
}

/** The place in words; one that the user added can be taken away again. */
function PlaceCell({ row }: { readonly row: SwitchCandidate }) {
  const words = useWords().window.divide.places;
  const key = parsePlaceKey(row.key);
  if (key?.on !== 'added') return placeOf(row, words);
  return (
    <>
      {placeOf(row, words)}{' '}
      <button
        type="button"
        className="plain"
        aria-label={words.removePlace({ place: row.label })}
        onClick={(event) => {
          event.stopPropagation();
          void commit(
            words.removePlace({ place: row.label }),
            deleteThings([{ kind: 'switchCandidate', id: key.candidateId }]),
          );
        }}
      >
        {words.remove}
      </button>
    </>
  );
}

function placeOf({ label: place, why }: SwitchCandidate, words: Texts['window']['divide']['places']): string {
  return words.why({ place, why });
}

function RuleChoice({ candidate }: { readonly candidate: SwitchCandidate }) {
  const value: Rule = candidate.rule ?? 'free';
  const words = useWords().window.divide.places;
  const { label: place } = candidate;
  return (
    <select
      aria-label={words.switchAt({ place })}
      value={value}
      onClick={(event) => event.stopPropagation()}
      onChange={(event) => {
        const rule = event.target.value as Rule;
        void commit(words.rule({ place, rule }), setRule({ key: candidate.key, rule: rule === 'free' ? null : rule }));
      }}
    >
      {rules.map((rule) => (
        <option key={rule} value={rule}>
          {words.rules[rule]}
        </option>
      ))}
    </select>
  );
}
