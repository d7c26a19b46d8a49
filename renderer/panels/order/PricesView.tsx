import { useState } from 'react';
import type { CatalogueItem } from '../../../core/model/things.ts';
import { addItem, changeItem } from '../../../core/quantities/edits/changePrices.ts';
import { packText } from '../../../core/quantities/formatOrder.ts';
import { type PriceList, priceListOf } from '../../../core/quantities/order/priceList.ts';
import { useOpenFile } from '../../state/appState.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
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
  const { prices: words } = useWords().window.order;
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
    void commit(words.add, (before) => addItem(words.newName)(before, () => id));
  };
  return (
    <section className="block" aria-labelledby="price-items">
      <h3 id="price-items">{words.items}</h3>
      {prices.starting ? <p className="field-hint">{words.starting}</p> : null}
      <div className="field">
        <label htmlFor="seek-item">{words.seek}</label>
        <input id="seek-item" type="search" value={sought} onChange={(event) => setSought(event.target.value)} />
      </div>
      <CheckField label={words.onlyNeeded} value={needed} onCommit={setNeeded} />
      {items.length === 0 ? (
        <p className="register-empty">{words.nothing}</p>
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
          {words.add}
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
  const f = useFigures();
  const { prices: words } = f.words.window.order;
  return (
    <li>
      <div className="price-row">
        <button type="button" className="price-name" aria-expanded={open} onClick={onToggle}>
          {item.name}
          <span className="under">
            {item.invented ? words.invented({ pack: packText(item, f) }) : packText(item, f)}
          </span>
        </button>
        <PriceInput
          label={words.priceOf({ name: item.name })}
          value={item.price}
          onCommit={(price) => void commit(words.priceOf({ name: item.name }), changeItem(item.id, { price }))}
        />
      </div>
      {open ? <ItemDetails item={item} worked={worked} onGone={onToggle} /> : null}
    </li>
  );
}
