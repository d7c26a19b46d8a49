import { setLabourRate } from '../../../core/quantities/edits/changePrices.ts';
import { labourUnits, workMeasure } from '../../../core/quantities/measures.ts';
import type { PriceList } from '../../../core/quantities/order/priceList.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { PriceInput } from './PriceInput.tsx';

/** What the work is paid by, before tax. */
export function LabourRates({ prices }: { readonly prices: PriceList }) {
  const f = useFigures();
  const { labour: words } = f.words.window.order;
  return (
    <section className="block" aria-labelledby="labour-rates">
      <h3 id="labour-rates">{words.title}</h3>
      <ul className="price-items">
        {labourUnits.map((per) => {
          const { name: work, unit } = workMeasure(per);
          const name = f.say(work);
          const rate = prices.labour.find((each) => each.per === per);
          return (
            <li key={per} className="price-row">
              <span className="price-name">
                {name}
                <span className="under">{(rate?.invented ? words.inventedUnits : words.units)[unit]}</span>
              </span>
              <PriceInput
                label={words.rate({ name })}
                value={rate?.rate ?? null}
                onCommit={(value) => void commit(words.rate({ name }), setLabourRate(per, value))}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}
