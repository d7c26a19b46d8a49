import { boundsOf, lengthBoundsOf } from '../../../core/kinds/form.ts';
import { catalogueItem } from '../../../core/kinds/order.ts';
import type { CatalogueItem } from '../../../core/model/things.ts';
import { changeItem, deleteItem, type ItemFields } from '../../../core/quantities/edits/changePrices.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import type { WorkedOrder } from '../../work/order.ts';
import { CheckField, NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { measureChoices } from './measureChoices.ts';

/** All fields of one item. */
export function ItemDetails({
  item,
  worked,
  onGone,
}: {
  readonly item: CatalogueItem;
  readonly worked: WorkedOrder;
  readonly onGone: () => void;
}) {
  const f = useFigures();
  const { order, frame } = f.words.window;
  const { item: words } = order;
  const set = (fields: ItemFields) => void commit(words.changed({ name: item.name }), changeItem(item.id, fields));
  const setPack = (packSize: number | null) => {
    if (packSize !== null) set({ packSize });
  };
  return (
    <div className="item-details">
      <TextField label={frame.common.name} required value={item.name} onCommit={(name) => set({ name })} />
      <SelectField
        label={words.serves}
        value={item.measure ?? ''}
        choices={[{ value: '', label: words.kitsOnly }, ...measureChoices(worked, item.measure, f)]}
        onCommit={(measure) => set({ measure: measure === '' ? null : measure })}
      />
      <div className="field-pair">
        <SelectField
          label={words.countedIn}
          value={item.unit}
          choices={[
            { value: 'each', label: words.pieces },
            { value: 'm', label: words.length },
          ]}
          onCommit={(unit) => set({ unit })}
        />
        {item.unit === 'm' ? (
          <LengthField
            label={words.onRoll}
            valueM={item.packSize}
            {...lengthBoundsOf(catalogueItem.fields.packSize)}
            onCommitM={setPack}
          />
        ) : (
          <NumberField
            label={words.inPack}
            unit={words.pieceUnit}
            decimals={0}
            {...boundsOf(catalogueItem.fields.packSize)}
            value={item.packSize}
            onCommit={setPack}
          />
        )}
      </div>
      <div className="field-pair">
        <NumberField
          label={words.waste}
          unit="%"
          decimals={1}
          {...boundsOf(catalogueItem.fields.wastePercent)}
          value={item.wastePercent}
          onCommit={(value) => {
            if (value !== null) set({ wastePercent: value });
          }}
        />
        <NumberField
          label={words.ownTax}
          unit="%"
          decimals={1}
          {...boundsOf(catalogueItem.fields.taxPercent)}
          optional
          placeholder={words.asOrder}
          value={item.taxPercent}
          onCommit={(taxPercent) => set({ taxPercent })}
        />
      </div>
      <CheckField label={words.invented} value={item.invented} onCommit={(invented) => set({ invented })} />
      <TextField label={frame.common.note} value={item.note} onCommit={(note) => set({ note })} />
      <p className="buttons">
        <button
          type="button"
          onClick={() => {
            onGone();
            void commit(words.takenOut({ name: item.name }), deleteItem(item.id));
          }}
        >
          {words.takeOut}
        </button>
      </p>
    </div>
  );
}
