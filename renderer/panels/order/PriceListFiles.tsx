import { useRef, useState } from 'react';
import { type ReadPriceList, readPriceList, takePriceList } from '../../../core/exchange/csv/priceListCsv.ts';
import type { PriceList } from '../../../core/quantities/order/priceList.ts';
import { figures } from '../../../core/words/figures.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';

interface Read {
  readonly fileName: string;
  readonly list: ReadPriceList;
}

/** The price list out as CSV, and in again after a look at what it holds. */
export function PriceListFiles({ prices }: { readonly prices: PriceList }) {
  const input = useRef<HTMLInputElement>(null);
  const [read, setRead] = useState<Read | null>(null);
  const look = async (file: File) => {
    const outcome = readPriceList(await file.text(), prices, newId);
    if (outcome.ok) setRead({ fileName: file.name, list: outcome.value });
    else
      say(
        `${file.name}: ${figures('metric').say(outcome.message)} ${figures('metric').say(outcome.remedy)}`,
        'refused',
      );
  };
  return (
    <section className="block" aria-labelledby="price-files">
      <h3 id="price-files">As a table</h3>
      <p className="buttons">
        <CommandButton id="priceListCsv" />
        <button type="button" onClick={() => input.current?.click()}>
          Bring in a price list
        </button>
      </p>
      <input
        ref={input}
        type="file"
        hidden
        accept=".csv,text/csv"
        aria-label="Price list as CSV"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) void look(file);
        }}
      />
      <p className="field-hint">
        CSV with a heading row. The columns “name” and “price” will do; others are as in the export.
      </p>
      {read ? <LookAt read={read} prices={prices} onDone={() => setRead(null)} /> : null}
    </section>
  );
}

function LookAt({
  read,
  prices,
  onDone,
}: {
  readonly read: Read;
  readonly prices: PriceList;
  readonly onDone: () => void;
}) {
  const { items, kits, labour, leftOut } = read.list;
  const changed = items.filter(({ id }) => prices.items.has(id)).length;
  const take = (only: boolean) => {
    onDone();
    void commit(`Bring in ${read.fileName}`, takePriceList(read.list, only));
  };
  const nothing = items.length + kits.length + labour.length === 0;
  return (
    <div className="look-at" role="status">
      <p>
        <strong>{read.fileName}</strong>: {changed} items that are in the list, {items.length - changed} new ones,{' '}
        {labour.length} labour rates, {kits.length} kits.
      </p>
      {leftOut.length > 0 ? (
        <ul className="left-out">
          {leftOut.slice(0, 20).map(({ line, why }) => (
            <li key={line}>
              Row {line} is left out: {figures('metric').say(why)}
            </li>
          ))}
          {leftOut.length > 20 ? <li>And {leftOut.length - 20} more rows.</li> : null}
        </ul>
      ) : null}
      <p className="buttons">
        <button type="button" className="main" disabled={nothing} onClick={() => take(false)}>
          Take it in
        </button>
        <button type="button" disabled={nothing} onClick={() => take(true)}>
          In place of the whole list
        </button>
        <button type="button" className="plain" onClick={onDone}>
          Leave it
        </button>
      </p>
    </div>
  );
}
