import { boundsOf } from '../../../core/kinds/form.ts';
import { kitPartFields } from '../../../core/kinds/order.ts';
import type { Kit } from '../../../core/model/things.ts';
import { addKit, changeKit, deleteKit } from '../../../core/quantities/edits/changePrices.ts';
import type { PriceList } from '../../../core/quantities/order/priceList.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { measureChoices } from './measureChoices.ts';

/** Items that go in together for one of a quantity: the hardware of a gateway, a switch with its clamps. */
export function Kits({ prices, worked }: { readonly prices: PriceList; readonly worked: WorkedOrder }) {
  const f = useFigures();
  const { kits: words } = f.words.window.order;
  const [first] = measureChoices(worked, null, f);
  const [item] = prices.items.keys();
  return (
    <section className="block" aria-labelledby="kits">
      <h3 id="kits">{words.title}</h3>
      <p className="field-hint">{words.hint}</p>
      {prices.kits.map((kit) => (
        <details key={kit.id} className="kit">
          <summary>
            {words.parts({
              kit: kit.name,
              parts: kit.parts.map(({ itemId, amount }) => [amount, prices.items.get(itemId)?.name ?? null]),
            })}
          </summary>
          <KitFields kit={kit} prices={prices} worked={worked} />
        </details>
      ))}
      {first && item ? (
        <p className="buttons">
          <button
            type="button"
            onClick={() =>
              void commit(words.add, (before) =>
                addKit(words.newName, first.value, [{ itemId: item, amount: 1 }])(before, newId),
              )
            }
          >
            {words.add}
          </button>
        </p>
      ) : null}
    </section>
  );
}

function KitFields({
  kit,
  prices,
  worked,
}: {
  readonly kit: Kit;
  readonly prices: PriceList;
  readonly worked: WorkedOrder;
}) {
  const f = useFigures();
  const { order, frame } = f.words.window;
  const { kits: words } = order;
  const items = [...prices.items.values()].map(({ id, name }) => ({ value: id, label: name }));
  const set = (fields: Parameters<typeof changeKit>[1]) =>
    void commit(order.item.changed({ name: kit.name }), changeKit(kit.id, fields));
  return (
    <div className="item-details">
      <TextField label={frame.common.name} required value={kit.name} onCommit={(name) => set({ name })} />
      <SelectField
        label={words.forOneOf}
        value={kit.measure}
        choices={measureChoices(worked, kit.measure, f)}
        onCommit={(measure) => set({ measure })}
      />
      {kit.parts.map((part, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a part is told by its place in the kit
        <div key={i} className="field-pair">
          <SelectField
            label={order.goods.item}
            value={part.itemId}
            choices={items}
            onCommit={(itemId) => set({ parts: kit.parts.with(i, { ...part, itemId }) })}
          />
          <NumberField
            label={words.howMuch}
            unit=""
            {...boundsOf(kitPartFields.amount)}
            value={part.amount}
            onCommit={(amount) => {
              if (amount !== null) set({ parts: kit.parts.with(i, { ...part, amount }) });
            }}
          />
          {kit.parts.length > 1 ? (
            <button type="button" onClick={() => set({ parts: kit.parts.toSpliced(i, 1) })}>
              {order.takeOut}
            </button>
          ) : null}
        </div>
      ))}
      <p className="buttons">
        <button type="button" onClick={() => set({ parts: [...kit.parts, { itemId: items[0]!.value, amount: 1 }] })}>
          {words.addItem}
        </button>
        <button type="button" onClick={() => void commit(order.item.takenOut({ name: kit.name }), deleteKit(kit.id))}>
          {words.takeOut}
        </button>
      </p>
    </div>
  );
}
