import { boundsOf } from '../../../core/kinds/form.ts';
import { kitPartFields } from '../../../core/kinds/order.ts';
import type { Kit } from '../../../core/model/things.ts';
import { addKit, changeKit, deleteKit } from '../../../core/quantities/edits/changePrices.ts';
import type { PriceList } from '../../../core/quantities/order/priceList.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { measureChoices } from './measureChoices.ts';

/** Items that go in together for one of a quantity: the hardware of a gateway, a switch with its clamps. */
export function Kits({ prices, worked }: { readonly prices: PriceList; readonly worked: WorkedOrder }) {
  const [first] = measureChoices(worked, null);
  const [item] = prices.items.keys();
  return (
    <section className="block" aria-labelledby="kits">
      <h3 id="kits">Kits</h3>
      <p className="field-hint">A kit comes before a single item that would serve the same quantity.</p>
      {prices.kits.map((kit) => (
        <details key={kit.id} className="kit">
          <summary>
            {kit.name}:{' '}
            {kit.parts
              .map(({ itemId, amount }) => `${amount} x ${prices.items.get(itemId)?.name ?? 'an item that is gone'}`)
              .join(', ')}
          </summary>
          <KitFields kit={kit} prices={prices} worked={worked} />
        </details>
      ))}
      {first && item ? (
        <p className="buttons">
          <button
            type="button"
            onClick={() =>
              void commit('Add a kit', (before) =>
                addKit('New kit', first.value, [{ itemId: item, amount: 1 }])(before, newId),
              )
            }
          >
            Add a kit
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
  const items = [...prices.items.values()].map(({ id, name }) => ({ value: id, label: name }));
  const set = (fields: Parameters<typeof changeKit>[1]) => void commit(`Change ${kit.name}`, changeKit(kit.id, fields));
  return (
    <div className="item-details">
      <TextField label="Name" required value={kit.name} onCommit={(name) => set({ name })} />
      <SelectField
        label="For one of"
        value={kit.measure}
        choices={measureChoices(worked, kit.measure)}
        onCommit={(measure) => set({ measure })}
      />
      {kit.parts.map((part, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a part is told by its place in the kit
        <div key={i} className="field-pair">
          <SelectField
            label="Item"
            value={part.itemId}
            choices={items}
            onCommit={(itemId) => set({ parts: kit.parts.with(i, { ...part, itemId }) })}
          />
          <NumberField
            label="How much"
            unit=""
            {...boundsOf(kitPartFields.amount)}
            value={part.amount}
            onCommit={(amount) => {
              if (amount !== null) set({ parts: kit.parts.with(i, { ...part, amount }) });
            }}
          />
          {kit.parts.length > 1 ? (
            <button type="button" onClick={() => set({ parts: kit.parts.toSpliced(i, 1) })}>
              Take out
            </button>
          ) : null}
        </div>
      ))}
      <p className="buttons">
        <button type="button" onClick={() => set({ parts: [...kit.parts, { itemId: items[0]!.value, amount: 1 }] })}>
          Add an item to it
        </button>
        <button type="button" onClick={() => void commit(`Take out ${kit.name}`, deleteKit(kit.id))}>
          Take out the kit
        </button>
      </p>
    </div>
  );
}
