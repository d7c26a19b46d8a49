import { coilNote, formatAmount, lineCaution, packText } from '../../../core/quantities/formatOrder.ts';
import type { LabourLine, OrderLine, OrderPart } from '../../../core/quantities/order/order.ts';
import { formatMoney } from '../../../core/words/numbers/write.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { light } from '../../state/choose.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { useHabits } from './useHabits.ts';

/** What is bought and what is done, stage by stage, with what it comes to. */
export function GoodsView({ worked }: { readonly worked: WorkedOrder }) {
  const { parts } = worked.order;
  return (
    <>
      <p className="buttons">
        <CommandButton id="printOrder" className="main" />
        <CommandButton id="orderCsv" />
      </p>
      {parts.map((part) => (
        <section key={part.stage?.id ?? 'none'} className="block" aria-label={nameOf(part, parts.length)}>
          {parts.length > 1 ? <h3>{nameOf(part, parts.length)}</h3> : null}
          {part.quantities.length === 0 ? (
            <p className="field-hint">Nothing is in this stage yet.</p>
          ) : (
            <>
              <Goods part={part} />
              <Work part={part} />
              <Sums part={part} />
            </>
          )}
        </section>
      ))}
    </>
  );
}

function nameOf({ stage }: OrderPart, count: number): string {
  return stage?.name ?? (count > 1 ? 'In no stage' : 'The whole job');
}

function Goods({ part }: { readonly part: OrderPart }) {
  const { lines } = part;
  if (lines.length === 0) return <p className="register-empty">Nothing to buy.</p>;
  return (
    <div className="order-table">
      <table>
        <caption>
          Goods, rounded up to packs and rolls, before tax.
          {coilNote(lines)}
          {lines.some(({ item }) => item.invented) ? ' *\u00A0marks a price that is invented.' : ''}
        </caption>
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col" className="sum-cell">
              Packs
            </th>
            <th scope="col" className="sum-cell">
              Net
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <GoodsRow key={line.item.id} line={line} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function GoodsRow({ line }: { readonly line: OrderLine }) {
  const habits = useHabits();
  const { item, needed, packs, cost, quantities } = line;
  const caution = lineCaution(line);
  const things = [...new Set(quantities.flatMap(({ pieces }) => pieces.flatMap(({ thingIds }) => thingIds)))];
  return (
    <tr onPointerEnter={() => light(things)} onPointerLeave={() => light([])}>
      <td>
        {item.name}
        <span className="under">
          {formatAmount(needed, item.unit, habits.units)} needed, {packText(item, habits.units)} at{' '}
          {formatMoney(item.price, habits)}
          {item.invented ? '*' : ''}
        </span>
        {caution ? <strong className="under">{caution}</strong> : null}
      </td>
      <td className="sum-cell">{packs}</td>
      <td className="sum-cell">{formatMoney(cost.net, habits)}</td>
    </tr>
  );
}

function Work({ part }: { readonly part: OrderPart }) {
  if (part.labour.length === 0) return null;
  return (
    <div className="order-table">
      <table>
        <caption>
          Work, before tax.
          {part.labour.some(({ rate }) => rate.invented) ? ' *\u00A0marks a rate that is invented.' : ''}
        </caption>
        <tbody>
          {part.labour.map((line) => (
            <WorkRow key={line.rate.id} line={line} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function WorkRow({ line: { rate, quantity, cost } }: { readonly line: LabourLine }) {
  const habits = useHabits();
  const things = [...new Set(quantity.pieces.flatMap(({ thingIds }) => thingIds))];
  return (
    <tr onPointerEnter={() => light(things)} onPointerLeave={() => light([])}>
      <td>
        {quantity.name}
        <span className="under">
          {formatAmount(quantity.amount, quantity.unit, habits.units)} at {formatMoney(rate.rate, habits)}
          {rate.invented ? '*' : ''}
        </span>
      </td>
      <td className="sum-cell">{formatMoney(cost.net, habits)}</td>
    </tr>
  );
}

function Sums({ part: { materials, work, total } }: { readonly part: OrderPart }) {
  const habits = useHabits();
  return (
    <dl className="sums">
      <dt>Goods</dt>
      <dd>{formatMoney(materials.net, habits)}</dd>
      <dt>Work</dt>
      <dd>{formatMoney(work.net, habits)}</dd>
      <dt>Tax</dt>
      <dd>{formatMoney(total.tax, habits)}</dd>
      <dt className="to-pay">To pay</dt>
      <dd className="to-pay">{formatMoney(total.gross, habits)}</dd>
    </dl>
  );
}
