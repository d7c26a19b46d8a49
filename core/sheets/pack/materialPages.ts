import { propertyOf } from '../../model/project.ts';
import { formatAmount } from '../../quantities/formatOrder.ts';
import { type Block, space } from '../flow/block.ts';
import { tableBlocks } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import { groupNames } from '../orderPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { heading, paragraph, uprightWidthMm } from './packBlocks.ts';
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
  const blocks: Block[] = [
    paragraph(
      groups.size === 0
        ? 'Nothing is marked built, so there are no materials to list.'
        : 'Counted from what is marked built. Lengths of wire, pipe and cable are worked out from the drawing and are estimates.',
      widthMm,
      measure,
    ),
    ...[...groups].flatMap(([group, quantities]) => [
      heading(groupNames[group], widthMm, measure),
      ...tableBlocks(
        {
          columns: [{ title: 'What' }, { title: 'How much', align: 'right' }],
          rows: quantities.map(({ name, amount, unit }) => [name, formatAmount(amount, unit, units)]),
        },
        widthMm,
        measure,
      ),
      space(3),
    ]),
  ];
  return textPages('Materials as built', blocks, 'portrait', input);
}
