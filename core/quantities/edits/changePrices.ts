import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import { EditRefused, type NewId } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf, put, putAll, remove, removeAll } from '../../model/project.ts';
import type { CatalogueItem, Kit, LabourRate, LabourUnit } from '../../model/things.ts';
import { figures } from '../../words/figures.ts';
import { message, say } from '../../words/message.ts';
import { priceListOf } from '../order/priceList.ts';
import type { Quantity } from '../types.ts';

/** The project with its price list written out: the first change puts the whole list that it began with into it. */
export function withOwnPrices(project: Project): Project {
  const prices = priceListOf(project);
  return prices.starting ? putAll(project, [...prices.items.values(), ...prices.kits, ...prices.labour]) : project;
}

export type ItemFields = Partial<Omit<CatalogueItem, 'kind' | 'id'>>;

/** Changes an item. A new price is taken to be a real one. Throws `EditRefused` for what can't be. */
export function changeItem(id: string, to: ItemFields): (project: Project) => Project {
  return (before) => {
    const project = withOwnPrices(before);
    const item = project.catalogueItem.get(id);
    if (!item) throw gone('item');
    refuse(project, 'catalogueItem', id, to);
    const invented = to.price === undefined || to.price === item.price ? item.invented : false;
    return put(project, { ...item, invented, ...to });
  };
}

/** Adds an item without a price, to be filled in. */
export function addItem(name: string, measure: string | null = null, unit: CatalogueItem['unit'] = 'each') {
  return (before: Project, newId: NewId): Project => {
    const item: CatalogueItem = {
      kind: 'catalogueItem',
      id: newId('catalogueItem'),
      name,
      measure,
      unit,
      packSize: 1,
      price: null,
      taxPercent: null,
      wastePercent: 0,
      invented: false,
      note: '',
    };
    return put(withOwnPrices(before), item);
  };
}

/** Adds an item that serves a quantity; of a length, as a roll of 100 m. */
export function addItemFor({ name, key, unit }: Pick<Quantity, 'name' | 'key' | 'unit'>) {
  return (before: Project, newId: NewId): Project => {
    const id = newId('catalogueItem');
    const called = say(name, figures(propertyOf(before).units));
    const project = addItem(called, key, unit === 'm' ? 'm' : 'each')(before, () => id);
    return unit === 'm' ? put(project, { ...project.catalogueItem.get(id)!, packSize: 100 }) : project;
  };
}

/** Takes an item out, also from all kits; a kit that had nothing else goes with it. */
export function deleteItem(id: string): (project: Project) => Project {
  return (before) => {
    const project = withOwnPrices(before);
    const item = project.catalogueItem.get(id);
    if (!item) throw gone('item');
    const kits = [...project.kit.values()].filter(({ parts }) => parts.some(({ itemId }) => itemId === id));
    const lighter = kits.map((kit): Kit => ({ ...kit, parts: kit.parts.filter(({ itemId }) => itemId !== id) }));
    return removeAll(putAll(project, lighter), [item, ...lighter.filter(({ parts }) => parts.length === 0)]);
  };
}

export type KitFields = Partial<Omit<Kit, 'kind' | 'id'>>;

export function changeKit(id: string, to: KitFields): (project: Project) => Project {
  return (before) => {
    const project = withOwnPrices(before);
    const kit = project.kit.get(id);
    if (!kit) throw gone('kit');
    refuse(project, 'kit', id, to);
    return put(project, { ...kit, ...to });
  };
}

export function addKit(name: string, measure: string, parts: Kit['parts']) {
  return (before: Project, newId: NewId): Project =>
    put(withOwnPrices(before), { kind: 'kit', id: newId('kit'), name, measure, parts });
}

export function deleteKit(id: string): (project: Project) => Project {
  return (before) => {
    const project = withOwnPrices(before);
    const kit = project.kit.get(id);
    if (!kit) throw gone('kit');
    return remove(project, kit);
  };
}

/** Sets a labour rate; null leaves it open. */
export function setLabourRate(per: LabourUnit, rate: number | null): (project: Project) => Project {
  return (before) => {
    const project = withOwnPrices(before);
    const id = `labour:${per}`;
    const known: LabourRate = project.labourRate.get(id) ?? {
      kind: 'labourRate',
      id,
      per,
      rate: null,
      taxPercent: null,
      invented: false,
    };
    refuse(project, 'labourRate', id, { rate });
    return known.rate === rate ? before : put(project, { ...known, rate, invented: false });
  };
}

function refuse(project: Project, kind: 'catalogueItem' | 'kit' | 'labourRate', id: string, to: object): void {
  const refusal = whyNotFields(project, kind, id, to as Record<string, unknown>);
  if (refusal) throw new EditRefused(refusal);
}

function gone(what: 'item' | 'kit'): EditRefused {
  return new EditRefused({ code: 'notFound', message: message(`order.gone.${what}`) });
}
