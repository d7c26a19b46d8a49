import { useState } from 'react';
import type { CatalogueItem } from '../../../core/model/things.ts';
import { addItem, changeItem } from '../../../core/quantities/edits/changePrices.ts';
import { packText } from '../../../core/quantities/formatOrder.ts';
import { type PriceList, priceListOf } from '../../../core/quantities/order/priceList.ts';
import { useOpenFile } from '../../state/appState.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { CheckField } from '../parts/fields.tsx';
import { ItemDetails } from './ItemDetails.tsx';
import { Kits } from './Kits.tsx';
import { LabourRates } from './LabourRates.tsx';
import { PriceInput } from './PriceInput.tsx';
import { PriceListFiles } from './PriceListFiles.tsx';

/** The price list: items, kits, labour; out as CSV and in again. */
export function PricesView({ worked }: { readonly worked: WorkedOrder }) {
  const { project } = useOpenFile();
  const prices = priceListOf(project);
  return (
    <>
      <Items prices={prices} worked={worked} />
      <LabourRates prices={prices} />
      <Kits prices={prices} worked={worked} />
      <PriceListFiles prices={prices} />
    </>
  );
}

function Items({ prices, worked }: { readonly prices: PriceList; readonly worked: WorkedOrder }) {
  const [needed, setNeeded] = useState(true);
  const [sought, setSought] = useState('');
  const [open, setOpen] = useState<string | null>(null);
  const used = new Set(worked.order.parts.flatMap(({ lines }) => lines.map(({ item }) => item.id)));
  const wanted = sought.trim().toLowerCase();
  const items = [...prices.items.values()].filter(({ id, name }) =>
    wanted === '' ? !needed || used.has(id) || id === open : name.toLowerCase().includes(wanted),
  );
  const add = () => {
    const id = newId('catalogueItem');
    setOpen(id);
    void commit('Add an item', (before) => addItem('New item')(before, () => id));
  };
  return (
    <section className="block" aria-labelledby="price-items">
      <h3 id="price-items">Items</h3>
      {prices.starting ? (
        <p className="field-hint">
          This is the list that every property begins with; its prices are invented. Type over them.
        </p>
      ) : null}
      <div className="field">
        <label htmlFor="seek-item">Look for</label>
        <input id="seek-item" type="search" value={sought} onChange={(event) => setSought(event.target.value)} />
      </div>
      <CheckField label="Only what this order needs" value={needed} onCommit={setNeeded} />
      {items.length === 0 ? (
        <p className="register-empty">No such item.</p>
      ) : (
        <ul className="price-items">
          {items.map((item) => (
            <ItemRow
              key={item.id}
              item={item}
              open={item.id === open}
              onToggle={() => setOpen(item.id === open ? null : item.id)}
              worked={worked}
            />
          ))}
        </ul>
      )}
      <p className="buttons">
        <button type="button" onClick={add}>
          Add an item
        </button>
      </p>
    </section>
  );
}

function ItemRow({
  item,
  open,
  onToggle,
  worked,
}: {
  readonly item: CatalogueItem;
  readonly open: boolean;
  readonly onToggle: () => void;
  readonly worked: WorkedOrder;
}) {
  const units = useUnits();
  return (
    <li>
      <div className="price-row">
        <button type="button" className="price-name" aria-expanded={open} onClick={onToggle}>
          {item.name}
          <span className="under">
            {packText(item, units)}
            {item.invented ? ', invented' : ''}
          </span>
        </button>
        <PriceInput
          label={`Price of ${item.name}`}
          value={item.price}
          onCommit={(price) => void commit(`Price of ${item.name}`, changeItem(item.id, { price }))}
        />
      </div>
      {open ? <ItemDetails item={item} worked={worked} onGone={onToggle} /> : null}
    </li>
  );
}
