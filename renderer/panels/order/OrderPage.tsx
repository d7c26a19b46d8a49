import './order.css';
import { useEffect, useMemo, useState } from 'react';
import { orderSentence } from '../../../core/quantities/formatOrder.ts';
import { priceListOf } from '../../../core/quantities/order/priceList.ts';
import { orderFindings } from '../../../core/quantities/orderFindings.ts';
import { orderSettingsOf } from '../../../core/quantities/takeOff.ts';
import { useOpenFile } from '../../state/appState.ts';
import { light } from '../../state/choose.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { type WorkedOrder, workOutOrder } from '../../work/order.ts';
import { Answer } from '../parts/Answer.tsx';
import { Findings } from '../parts/Findings.tsx';
import { CompareView } from './CompareView.tsx';
import { CutsView } from './CutsView.tsx';
import { GoodsView } from './GoodsView.tsx';
import { PricesView } from './PricesView.tsx';
import { QuantityView } from './QuantityView.tsx';
import { StagesView } from './StagesView.tsx';
import { TermsView } from './TermsView.tsx';
import { useHabits } from './useHabits.ts';
import { useOrder } from './useOrder.ts';

const registers = [
  { name: 'quantities', view: QuantityView },
  { name: 'goods', view: GoodsView },
  { name: 'cuts', view: CutsView },
  { name: 'prices', view: PricesView },
  { name: 'stages', view: StagesView },
  { name: 'compare', view: CompareView },
  { name: 'terms', view: TermsView },
] as const;

/** Order: how much of what the drawing takes, what it costs, how it is cut and in which stages it is done. */
export function OrderPage() {
  const { worked, fresh, failed } = useOrder();
  useEffect(() => () => light([]), []);
  const { project } = useOpenFile();
  const { order: words, frame } = useWords().window;
  if (failed) {
    return (
      <p className="field-problem" role="alert">
        {words.failed({ why: failed })}{' '}
        <button type="button" onClick={() => workOutOrder(project)}>
          {frame.common.tryAgain}
        </button>
      </p>
    );
  }
  if (!worked) return <Answer>{words.counting}</Answer>;
  return <Worked worked={worked} fresh={fresh} />;
}

function Worked({ worked, fresh }: { readonly worked: WorkedOrder; readonly fresh: boolean }) {
  const { project } = useOpenFile();
  const habits = useHabits();
  const f = useFigures();
  const { order: words } = f.words.window;
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('quantities');
  const View = registers.find(({ name }) => name === open)!.view;
  const { takeOff, order } = worked;
  const findings = useMemo(
    () => orderFindings({ project, takeOff, prices: priceListOf(project), settings: orderSettingsOf(project) }, order),
    [project, takeOff, order],
  );
  return (
    <>
      <Answer>{orderSentence(order, takeOff, habits, f)}</Answer>
      {fresh ? null : (
        <p className="field-hint" role="status">
          {words.countingAgain}
        </p>
      )}
      <Findings findings={findings} nothing={words.nothingFound} />
      <nav className="register-choice" aria-label={words.registers.section}>
        {registers.map(({ name }) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => setOpen(name)}>
            {words.registers[name]}
          </button>
        ))}
      </nav>
      <View worked={worked} />
    </>
  );
}
