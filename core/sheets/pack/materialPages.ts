import { propertyOf } from '../../model/project.ts';
import { formatAmount } from '../../quantities/formatOrder.ts';
import type { Block } from '../flow/block.ts';
import { type Column, tableBlocks } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import { groupNames } from '../orderPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** What is in the ground and on the posts: the quantities of everything that is built. */
export function materialPages(input: PackInput): PageDraft[] {
  const { takeOff, measure } = input;
  if (!takeOff) return [];
  const { units } = propertyOf(input.project);
  const widthMm = uprightWidthMm(input);
  const groups = Map.groupBy(
    takeOff.quantities.filter(({ group }) => group !== 'work'),
    ({ group }) => group,
  );
  const columns: Column[] = [{ title: 'For', strong: true }, { title: 'What' }, { title: 'How much', align: 'right' }];
  const rows = [...groups].flatMap(([group, quantities]) =>
    quantities.map(({ name, amount, unit }, i) => [
      i === 0 ? groupNames[group] : '',
      name,
      formatAmount(amount, unit, units),
    ]),
  );
  const blocks: Block[] = [
    paragraph(
      groups.size === 0
        ? 'Nothing is marked built, so there are no materials to list.'
        : 'Counted from what is marked built. Lengths of wire, pipe and cable are worked out from the drawing and are estimates.',
      widthMm,
      measure,
    ),
    ...tableBlocks({ columns, rows }, widthMm, measure),
  ];
  return textPages('Materials as built', blocks, 'portrait', input);
}
