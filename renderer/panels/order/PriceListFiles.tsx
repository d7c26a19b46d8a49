import { useRef, useState } from 'react';
import { type ReadPriceList, readPriceList, takePriceList } from '../../../core/exchange/csv/priceListCsv.ts';
import type { PriceList } from '../../../core/quantities/order/priceList.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';

interface Read {
  readonly fileName: string;
  readonly list: ReadPriceList;
}

/** The price list out as CSV, and in again after a look at what it holds. */
export function PriceListFiles({ prices }: { readonly prices: PriceList }) {
  const f = useFigures();
  const { priceFile: words } = f.words.window.order;
  const input = useRef<HTMLInputElement>(null);
  const [read, setRead] = useState<Read | null>(null);
  const look = async (file: File) => {
    const outcome = readPriceList(await file.text(), prices, newId);
    if (outcome.ok) setRead({ fileName: file.name, list: outcome.value });
    else say(words.refused({ file: file.name, why: f.say(outcome.message), remedy: f.say(outcome.remedy) }), 'refused');
  };
  return (
    <section className="block" aria-labelledby="price-files">
      <h3 id="price-files">{words.title}</h3>
      <p className="buttons">
        <CommandButton id="priceListCsv" />
        <button type="button" onClick={() => input.current?.click()}>
          {words.import}
        </button>
      </p>
      <input
        ref={input}
        type="file"
        hidden
        accept=".csv,text/csv"
        aria-label={words.input}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) void look(file);
        }}
      />
      <p className="field-hint">{words.hint}</p>
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
  const f = useFigures();
  const { priceFile: words } = useWords().window.order;
  const { items, kits, labour, leftOut } = read.list;
  const changed = items.filter(({ id }) => prices.items.has(id)).length;
  const take = (only: boolean) => {
    onDone();
    void commit(words.imported({ file: read.fileName }), takePriceList(read.list, only));
  };
  const nothing = items.length + kits.length + labour.length === 0;
  return (
    <div className="look-at" role="status">
      <p>
        <strong>{read.fileName}</strong>:{' '}
        {words.holds({
          changed,
          added: items.length - changed,
          labour: labour.length,
          kits: kits.length,
        })}
      </p>
      {leftOut.length > 0 ? (
        <ul className="left-out">
          {leftOut.slice(0, 20).map(({ line, why }) => (
            <li key={line}>{words.leftOut({ row: line, why: f.say(why) })}</li>
          ))}
          {leftOut.length > 20 ? <li>{words.moreRows({ count: leftOut.length - 20 })}</li> : null}
        </ul>
      ) : null}
      <p className="buttons">
        <button type="button" className="main" disabled={nothing} onClick={() => take(false)}>
          {words.take}
        </button>
        <button type="button" disabled={nothing} onClick={() => take(true)}>
          {words.replace}
        </button>
        <button type="button" className="plain" onClick={onDone}>
          {words.leave}
        </button>
      </p>
    </div>
  );
}
