import { useEffect, useState } from 'react';
import type { Project } from '../../../core/model/project.ts';
import type { PlanFigures } from '../../../core/quantities/comparePlans.ts';
import { deleteKeptPlan, goBackTo, keepPlan, withDrawing } from '../../../core/quantities/edits/keepPlan.ts';
import type { OrderHabits } from '../../../core/quantities/formatOrder.ts';
import { nameNewKeptPlan } from '../../../core/quantities/order/keptPlanName.ts';
import { localDate } from '../../../core/words/dates.ts';
import type { Texts } from '../../../core/words/message.ts';
import { fixed, formatLength, formatMoney, formatVoltage } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { type WorkedFigures, workOutFigures } from '../../work/order.ts';
import { SelectField } from '../parts/fields.tsx';
import { useHabits } from './useHabits.ts';

const asDrawn = 'drawn';

/** Two plans side by side: the drawing as it stands, or as it was kept under a name. */
export function CompareView() {
  const { project } = useOpenFile();
  const { compare: words } = useWords().window.order;
  const plans = [...project.keptPlan.values()];
  const [left, setLeft] = useState(asDrawn);
  const [right, setRight] = useState<string | null>(null);
  const [name, setName] = useState('');
  const choices = [
    { value: asDrawn, label: words.asDrawn },
    ...plans.map((plan) => ({ value: plan.id, label: plan.name })),
  ];
  const known = (id: string | null) => (id !== null && choices.some(({ value }) => value === id) ? id : null);
  const a = known(left) ?? asDrawn;
  const b = known(right) ?? plans.at(-1)?.id ?? null;
  const keep = () => {
    const wanted = name.trim() || nameNewKeptPlan(project);
    setName('');
    void commit(words.kept({ name: wanted }), (before) => keepPlan(wanted, localDate(new Date()))(before, newId));
  };
  return (
    <>
      <form
        className="inline-form"
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <label htmlFor="keep-plan">{words.keepAs}</label>
        <input
          id="keep-plan"
          type="text"
          maxLength={200}
          placeholder={nameNewKeptPlan(project)}
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
        <button type="submit">{words.keep}</button>
      </form>
      {b === null ? (
        <p className="register-empty">{words.none}</p>
      ) : (
        <>
          <div className="field-pair">
            <SelectField label={words.one} value={a} choices={choices} onCommit={setLeft} />
            <SelectField label={words.other} value={b} choices={choices} onCommit={setRight} />
          </div>
          <Comparison project={project} plans={[a, b]} names={[labelOf(choices, a), labelOf(choices, b)]} />
          {[...new Set([a, b])]
            .filter((id) => id !== asDrawn)
            .map((id) => (
              <p key={id} className="buttons">
                <button
                  type="button"
                  onClick={() =>
                    void commit(words.goBack({ name: labelOf(choices, id) }), goBackTo(id), { deleting: true })
                  }
                >
                  {words.goBack({ name: labelOf(choices, id) })}
                </button>
                <button
                  type="button"
                  onClick={() => void commit(words.forget({ name: labelOf(choices, id) }), deleteKeptPlan(id))}
                >
                  {words.forget({ name: labelOf(choices, id) })}
                </button>
              </p>
            ))}
          <p className="field-hint">{words.hint}</p>
        </>
      )}
    </>
  );
}

function labelOf(choices: readonly { readonly value: string; readonly label: string }[], id: string): string {
  return choices.find(({ value }) => value === id)?.label ?? id;
}

function projectOfPlan(project: Project, id: string): Project {
  const plan = project.keptPlan.get(id);
  return plan ? withDrawing(project, plan.things) : project;
}

type Said = Texts['window']['order']['compare'];
type Row = readonly [
  label: keyof Said['rows'],
  value: (figures: PlanFigures, habits: OrderHabits, words: Said) => string,
];

const rows: readonly Row[] = [
  ['cost', ({ cost }, habits) => formatMoney(cost.gross, habits)],
  ['fence', ({ fenceM }, { units }) => formatLength(fenceM, units)],
  ['gateways', ({ gateways }) => fixed(gateways, 0)],
  ['switches', ({ switches }) => fixed(switches, 0)],
  ['sections', ({ sections }) => fixed(sections, 0)],
  ['longest', ({ longestSectionM }, { units }) => formatLength(longestSectionM, units)],
  ['weakest', ({ weakestV }, _, words) => (weakestV === null ? words.notKnown : formatVoltage(weakestV))],
];

function Comparison({
  project,
  plans,
  names,
}: {
  readonly project: Project;
  readonly plans: readonly [string, string];
  readonly names: readonly [string, string];
}) {
  const habits = useHabits();
  const { compare: words } = useWords().window.order;
  const a = useFigures(project, plans[0]);
  const b = useFigures(project, plans[1]);
  const shown = ({ worked }: Figures, value: Row[1]) =>
    worked === null ? '…' : worked.ok ? value(worked.figures, habits, words) : words.notKnown;
  return (
    <div className="order-table">
      <WhyNoFigures name={names[0]} figures={a} />
      {plans[0] === plans[1] ? null : <WhyNoFigures name={names[1]} figures={b} />}
      <table>
        <thead>
          <tr>
            <th scope="col">{words.figure}</th>
            <th scope="col" className="sum-cell">
              {names[0]}
            </th>
            <th scope="col" className="sum-cell">
              {names[1]}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([label, value]) => {
            const [x, y] = [shown(a, value), shown(b, value)];
            return (
              <tr key={label}>
                <th scope="row">{words.rows[label]}</th>
                <td className="sum-cell">{x}</td>
                <td className="sum-cell">{x === y ? y : <strong>{y}</strong>}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

interface Figures {
  /** Null: they are being worked out. */
  readonly worked: WorkedFigures | null;
  readonly tryAgain: () => void;
}

/** Figures of a drawing, worked out once for each state of it. */
function useFigures(project: Project, planId: string): Figures {
  const [turn, setTurn] = useState(0);
  const [found, setFound] = useState<{
    readonly of: Project;
    readonly planId: string;
    readonly turn: number;
    readonly worked: WorkedFigures;
  }>();
  useEffect(() => {
    let wanted = true;
    void workOutFigures(projectOfPlan(project, planId)).then((worked) => {
      if (wanted) setFound({ of: project, planId, turn, worked });
    });
    return () => {
      wanted = false;
    };
  }, [project, planId, turn]);
  const isOfNow = found?.of === project && found.planId === planId && found.turn === turn;
  return { worked: isOfNow ? found.worked : null, tryAgain: () => setTurn(turn + 1) };
}

function WhyNoFigures({ name, figures: { worked, tryAgain } }: { readonly name: string; readonly figures: Figures }) {
  const { order, frame } = useWords().window;
  if (worked === null || worked.ok) return null;
  return (
    <p className="field-problem" role="alert">
      {order.compare.failed({ name, why: worked.why })}{' '}
      <button type="button" onClick={tryAgain}>
        {frame.common.tryAgain}
      </button>
    </p>
  );
}
