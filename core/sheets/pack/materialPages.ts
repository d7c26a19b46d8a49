import { formatAmount } from '../../quantities/formatOrder.ts';
import type { Block } from '../flow/block.ts';
import { type Column, tableBlocks } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** What is in the ground and on the posts: the quantities of everything that is built. */
export function materialPages(input: PackInput): PageDraft[] {
  const { takeOff, f, measure } = input;
  if (!takeOff) return [];
  const { materials: said, heads, order } = f.words.sheets;
  const widthMm = uprightWidthMm(input);
  const groups = Map.groupBy(
    takeOff.quantities.filter(({ group }) => group !== 'work'),
    ({ group }) => group,
  );
  const columns: Column[] = [
    { title: said.for, strong: true },
    { title: heads.what },
    { title: said.howMuch, align: 'right' },
  ];
  const rows = [...groups].flatMap(([group, quantities]) =>
    quantities.map(({ name, amount, unit }, i) => [
      i === 0 ? order.groups[group] : '',
      f.say(name),
      formatAmount(amount, unit, f.units),
    ]),
  );
  const blocks: Block[] = [
    paragraph(groups.size === 0 ? said.none : said.intro, widthMm, measure),
    ...tableBlocks({ columns, rows }, widthMm, measure),
  ];
  return textPages(said.title, blocks, 'portrait', input);
}
