import { boundsOf, lengthBoundsOf } from '../../../core/kinds/form.ts';
import { catalogueItem } from '../../../core/kinds/order.ts';
import type { CatalogueItem } from '../../../core/model/things.ts';
import { changeItem, deleteItem, type ItemFields } from '../../../core/quantities/edits/changePrices.ts';
import { commit } from '../../state/session.ts';
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
  const set = (fields: ItemFields) => void commit(`Change ${item.name}`, changeItem(item.id, fields));
  const setPack = (packSize: number | null) => {
    if (packSize !== null) set({ packSize });
  };
  return (
    <div className="item-details">
      <TextField label="Name" required value={item.name} onCommit={(name) => set({ name })} />
      <SelectField
        label="Serves"
        value={item.measure ?? ''}
        choices={[{ value: '', label: 'Kits only' }, ...measureChoices(worked, item.measure)]}
        onCommit={(measure) => set({ measure: measure === '' ? null : measure })}
      />
      <div className="field-pair">
        <SelectField
          label="Counted in"
          value={item.unit}
          choices={[
            { value: 'each', label: 'Pieces' },
            { value: 'm', label: 'Length' },
          ]}
          onCommit={(unit) => set({ unit })}
        />
        {item.unit === 'm' ? (
          <LengthField
            label="On one roll"
            valueM={item.packSize}
            {...lengthBoundsOf(catalogueItem.fields.packSize)}
            onCommitM={setPack}
          />
        ) : (
          <NumberField
            label="In one pack"
            unit="pieces"
            decimals={0}
            {...boundsOf(catalogueItem.fields.packSize)}
            value={item.packSize}
            onCommit={setPack}
          />
        )}
      </div>
      <div className="field-pair">
        <NumberField
          label="Added for waste"
          unit="%"
          decimals={1}
          {...boundsOf(catalogueItem.fields.wastePercent)}
          value={item.wastePercent}
          onCommit={(value) => {
            if (value !== null) set({ wastePercent: value });
          }}
        />
        <NumberField
          label="Own tax"
          unit="%"
          decimals={1}
          {...boundsOf(catalogueItem.fields.taxPercent)}
          optional
          placeholder="as the order"
          value={item.taxPercent}
          onCommit={(taxPercent) => set({ taxPercent })}
        />
      </div>
      <CheckField label="The price is invented" value={item.invented} onCommit={(invented) => set({ invented })} />
      <TextField label="Note" value={item.note} onCommit={(note) => set({ note })} />
      <p className="buttons">
        <button
          type="button"
          onClick={() => {
            onGone();
            void commit(`Take out ${item.name}`, deleteItem(item.id));
          }}
        >
          Take it out of the list
        </button>
      </p>
    </div>
  );
}
