import { coilNote, formatAmount, lineCaution, packText } from '../../../core/quantities/formatOrder.ts';
import type { LabourLine, OrderLine, OrderPart } from '../../../core/quantities/order/order.ts';
import type { Texts } from '../../../core/words/message.ts';
import { formatMoney } from '../../../core/words/numbers/write.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { light } from '../../state/choose.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { useHabits } from './useHabits.ts';

/** What is bought and what is done, stage by stage, with what it comes to. */
export function GoodsView({ worked }: { readonly worked: WorkedOrder }) {
  const { order: words } = useWords().window;
  const { parts } = worked.order;
  return (
    <>
      <p className="buttons">
        <CommandButton id="printOrder" className="main" />
        <CommandButton id="orderCsv" />
      </p>
      {parts.map((part) => (
        <section key={part.stage?.id ?? 'none'} className="block" aria-label={nameOf(part, parts.length, words)}>
          {parts.length > 1 ? <h3>{nameOf(part, parts.length, words)}</h3> : null}
          {part.quantities.length === 0 ? (
            <p className="field-hint">{words.goods.emptyStage}</p>
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

function nameOf({ stage }: OrderPart, count: number, words: Texts['window']['order']): string {
  return stage?.name ?? (count > 1 ? words.inNoStage : words.goods.wholeJob);
}

function Goods({ part }: { readonly part: OrderPart }) {
  const f = useFigures();
  const { goods: words } = f.words.window.order;
  const { lines } = part;
  const note = coilNote(lines);
  if (lines.length === 0) return <p className="register-empty">{words.nothing}</p>;
  return (
    <div className="order-table">
      <table>
        <caption>
          {words.caption}
          {note ? ` ${f.say(note)}` : ''}
          {lines.some(({ item }) => item.invented) ? words.inventedPrice : ''}
        </caption>
        <thead>
          <tr>
            <th scope="col">{words.item}</th>
            <th scope="col" className="sum-cell">
              {words.packs}
            </th>
            <th scope="col" className="sum-cell">
              {words.net}
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
  const f = useFigures();
  const { goods: words } = f.words.window.order;
  const { item, needed, packs, cost, quantities } = line;
  const caution = lineCaution(line);
  const things = [...new Set(quantities.flatMap(({ pieces }) => pieces.flatMap(({ thingIds }) => thingIds)))];
  return (
    <tr onPointerEnter={() => light(things)} onPointerLeave={() => light([])}>
      <td>
        {item.name}
        <span className="under">
          {words.needed({
            amount: formatAmount(needed, item.unit, habits.units),
            pack: packText(item, f),
            price: formatMoney(item.price, habits),
            invented: item.invented,
          })}
        </span>
        {caution ? <strong className="under">{f.say(caution)}</strong> : null}
      </td>
      <td className="sum-cell">{packs}</td>
      <td className="sum-cell">{formatMoney(cost.net, habits)}</td>
    </tr>
  );
}

function Work({ part }: { readonly part: OrderPart }) {
  const { goods: words } = useWords().window.order;
  if (part.labour.length === 0) return null;
  return (
    <div className="order-table">
      <table>
        <caption>
          {words.workCaption}
          {part.labour.some(({ rate }) => rate.invented) ? words.inventedRate : ''}
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
  const f = useFigures();
  const { goods: words } = f.words.window.order;
  const things = [...new Set(quantity.pieces.flatMap(({ thingIds }) => thingIds))];
  return (
    <tr onPointerEnter={() => light(things)} onPointerLeave={() => light([])}>
      <td>
        {f.say(quantity.name)}
        <span className="under">
          {words.worked({
            amount: formatAmount(quantity.amount, quantity.unit, habits.units),
            rate: formatMoney(rate.rate, habits),
            invented: rate.invented,
          })}
        </span>
      </td>
      <td className="sum-cell">{formatMoney(cost.net, habits)}</td>
    </tr>
  );
}

function Sums({ part: { materials, work, total } }: { readonly part: OrderPart }) {
  const habits = useHabits();
  const { sums } = useWords().window.order.goods;
  return (
    <dl className="sums">
      <dt>{sums.goods}</dt>
      <dd>{formatMoney(materials.net, habits)}</dd>
      <dt>{sums.work}</dt>
      <dd>{formatMoney(work.net, habits)}</dd>
      <dt>{sums.tax}</dt>
      <dd>{formatMoney(total.tax, habits)}</dd>
      <dt className="to-pay">{sums.toPay}</dt>
      <dd className="to-pay">{formatMoney(total.gross, habits)}</dd>
    </dl>
  );
}
