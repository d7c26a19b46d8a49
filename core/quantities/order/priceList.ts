import { keptFor } from '../../model/memo.ts';
import type { Project } from '../../model/project.ts';
import type { CatalogueItem, Kit, LabourRate } from '../../model/things.ts';
import { serves } from '../measures.ts';
import { type StartingPrices, startingPrices } from './startingPrices.ts';

/** What the order is priced with. */
export interface PriceList {
  readonly items: ReadonlyMap<string, CatalogueItem>;
  readonly kits: readonly Kit[];
  readonly labour: readonly LabourRate[];
  /** Nothing of it is in the file yet: it is the list that every property begins with. */
  readonly starting: boolean;
}

/** What every property begins with, made of the starting prices once. */
const beginningOf = keptFor(({ items, kits, labour }: StartingPrices): PriceList => {
  return { items: new Map(items.map((item) => [item.id, item])), kits, labour, starting: true };
});

/** The property's own price list; until something of it was changed, the one that every property begins with. */
export function priceListOf(project: Project): PriceList {
  if (project.catalogueItem.size + project.kit.size + project.labourRate.size === 0)
    return beginningOf(startingPrices());
  return {
    items: project.catalogueItem,
    kits: [...project.kit.values()],
    labour: [...project.labourRate.values()],
    starting: false,
  };
}

/** The kit that serves a quantity: one for just it before one for its sort. */
export function kitFor({ kits }: PriceList, key: string): Kit | null {
  return kits.find(({ measure }) => measure === key) ?? kits.find(({ measure }) => serves(measure, key)) ?? null;
}

/** The items that serve a quantity; those for just it, or else those for its sort. */
export function itemsFor({ items }: PriceList, key: string): CatalogueItem[] {
  const serving = [...items.values()].filter(({ measure }) => serves(measure, key));
  const own = serving.filter(({ measure }) => measure === key);
  return own.length > 0 ? own : serving;
}
