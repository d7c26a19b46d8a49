import { setLabourRate } from '../../../core/quantities/edits/changePrices.ts';
import { labourUnits, workMeasure } from '../../../core/quantities/measures.ts';
import type { PriceList } from '../../../core/quantities/order/priceList.ts';
import { commit } from '../../state/session.ts';
import { PriceInput } from './PriceInput.tsx';

const unitWords = { each: 'each', m: 'for each metre', km: 'for each kilometre' } as const;

/** What the work is paid by, before tax. */
export function LabourRates({ prices }: { readonly prices: PriceList }) {
  return (
    <section className="block" aria-labelledby="labour-rates">
      <h3 id="labour-rates">Labour</h3>
      <ul className="price-items">
        {labourUnits.map((per) => {
          const { name, unit } = workMeasure(per);
          const rate = prices.labour.find((each) => each.per === per);
          return (
            <li key={per} className="price-row">
              <span className="price-name">
                {name}
                <span className="under">
                  {unitWords[unit]}
                  {rate?.invented ? ', invented' : ''}
                </span>
              </span>
              <PriceInput
                label={`Rate: ${name}`}
                value={rate?.rate ?? null}
                onCommit={(value) => void commit(`Rate: ${name}`, setLabourRate(per, value))}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}
