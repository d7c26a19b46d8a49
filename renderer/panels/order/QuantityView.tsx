import { Fragment, useEffect, useState } from 'react';
import { formatAmount } from '../../../core/quantities/formatOrder.ts';
import type { Piece, Quantity } from '../../../core/quantities/types.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { choose, light } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import type { WorkedOrder } from '../../work/order.ts';

const piecesAtOnce = 40;

/** What the drawing takes. A figure that is opened shows its pieces, here and on the map. */
export function QuantityView({ worked }: { readonly worked: WorkedOrder }) {
  const { quantities: words } = useWords().window.order;
  const { quantities } = worked.takeOff;
  const { groups: groupWords } = useWords().sheets.order;
  const [open, setOpen] = useState<string | null>(null);
  const opened = quantities.find(({ key }) => key === open);
  const kept = opened ? thingsOf(opened) : [];
  const keptIds = kept.join(' ');
  useEffect(() => light(keptIds === '' ? [] : keptIds.split(' ')), [keptIds]);
  if (quantities.length === 0) {
    return <p className="register-empty">{words.nothing}</p>;
  }
  const groups = [...Map.groupBy(quantities, ({ group }) => group)];
  return (
    <div className="order-table">
      <table>
        <caption>{words.caption}</caption>
        {groups.map(([group, own]) => (
          <tbody key={group}>
            <tr>
              <th colSpan={2} scope="rowgroup">
                {groupWords[group]}
              </th>
            </tr>
            {own.map((quantity) => (
              <QuantityRow
                key={quantity.key}
                quantity={quantity}
                open={quantity.key === open}
                onToggle={() => setOpen(quantity.key === open ? null : quantity.key)}
                onLeave={() => light(kept)}
              />
            ))}
          </tbody>
        ))}
      </table>
      <p className="buttons">
        <CommandButton id="quantitiesCsv" />
      </p>
    </div>
  );
}

function QuantityRow({
  quantity,
  open,
  onToggle,
  onLeave,
}: {
  readonly quantity: Quantity;
  readonly open: boolean;
  readonly onToggle: () => void;
  readonly onLeave: () => void;
}) {
  const f = useFigures();
  const { quantities: words } = f.words.window.order;
  const { amount, unit, pieces } = quantity;
  const name = f.say(quantity.name);
  return (
    <Fragment>
      <tr
        className={open ? 'open' : undefined}
        onPointerEnter={() => light(thingsOf(quantity))}
        onPointerLeave={onLeave}
      >
        <td>{name}</td>
        <td className="sum-cell">
          <button
            type="button"
            className="amount"
            aria-expanded={open}
            aria-label={words.figure({ name, amount: formatAmount(amount, unit, f.units) })}
            onClick={onToggle}
            onFocus={() => light(thingsOf(quantity))}
            onBlur={onLeave}
          >
            {formatAmount(amount, unit, f.units)}
          </button>
        </td>
      </tr>
      {open ? (
        <tr className="open">
          <td colSpan={2}>
            <Pieces pieces={pieces} unit={unit} onLeave={onLeave} />
          </td>
        </tr>
      ) : null}
    </Fragment>
  );
}

function Pieces({
  pieces,
  unit,
  onLeave,
}: {
  readonly pieces: readonly Piece[];
  readonly unit: Quantity['unit'];
  readonly onLeave: () => void;
}) {
  const f = useFigures();
  const { quantities: words } = f.words.window.order;
  const [all, setAll] = useState(false);
  const shown = all ? pieces : pieces.slice(0, piecesAtOnce);
  const show = ({ thingIds }: Piece) => {
    choose(thingIds.slice(0, 1));
    mapView.zoomTo(thingIds[0]!);
  };
  return (
    <ul className="pieces">
      {shown.map((piece, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: pieces have no identity of their own, and are never reordered
        <li key={i}>
          <button
            type="button"
            className="piece"
            onPointerEnter={() => light(piece.thingIds)}
            onPointerLeave={onLeave}
            onFocus={() => light(piece.thingIds)}
            onBlur={onLeave}
            onClick={() => show(piece)}
          >
            <span>{f.say(piece.text)}</span>
            <span>{formatAmount(piece.amount, unit, f.units)}</span>
          </button>
        </li>
      ))}
      {pieces.length > shown.length ? (
        <li>
          <button type="button" className="plain" onClick={() => setAll(true)}>
            {words.more({ count: pieces.length - shown.length })}
          </button>
        </li>
      ) : null}
    </ul>
  );
}

function thingsOf({ pieces }: Quantity): string[] {
  return [...new Set(pieces.flatMap(({ thingIds }) => thingIds))];
}
