import type { CatalogueItem } from '../../model/things.ts';

/** Packs that hold so much of an item and its waste. A little slack, so that 300 of 100 are three packs and not four. */
export function packsFor(item: Pick<CatalogueItem, 'packSize' | 'wastePercent'>, amount: number): number {
  return Math.max(0, Math.ceil((amount * (1 + item.wastePercent / 100)) / item.packSize - 1e-9));
}

/** Of items that serve alike, the one that comes cheapest for so much; those without a price come last. */
export function cheapestFor(items: readonly CatalogueItem[], amount: number): CatalogueItem | null {
  const cost = (item: CatalogueItem) => (item.price === null ? Infinity : packsFor(item, amount) * item.price);
  return items.reduce<CatalogueItem | null>(
    (best, item) => (best === null || cost(item) < cost(best) ? item : best),
    null,
  );
}

/** Money to the hundredth of its unit. */
export function money(amount: number): number {
  return Math.round(amount * 100 + (amount < 0 ? -1e-6 : 1e-6)) / 100;
}
