import { propertyOf } from '../../model/project.ts';
import { changeSinceInWords, changesSince } from '../../record/changesSince.ts';
import { differencesFromPlan } from '../../record/differences.ts';
import { handoversOf } from '../../record/edits/handOver.ts';
import { dateText } from '../../words/dates.ts';
import { figures } from '../../words/figures.ts';
import { formatLength } from '../../words/numbers/write.ts';
import type { Block } from '../flow/block.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { listed, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** Built otherwise than planned, and what has changed since the handover before this one. */
export function changePages(input: PackInput): PageDraft[] {
  const { project, survey, options, measure } = input;
  const { units } = propertyOf(project);
  const widthMm = uprightWidthMm(input);
  const before = handoversOf(project).find(
    ({ number }) => options.handoverNumber === null || number < options.handoverNumber,
  );
  const differences: Table = {
    columns: [
      { title: 'What', strong: true },
      { title: 'Built' },
      { title: 'Moved', align: 'right' },
      { title: 'Planned, now' },
    ],
    rows: differencesFromPlan(project, survey).map(({ name, mark, movedM, changes }) => [
      figures(units).say(name),
      [mark.date === null ? '' : dateText(mark.date), mark.by].filter((part) => part !== '').join(', ') || '-',
      movedM === 0 ? '-' : formatLength(movedM, units),
      changes.map((change) => figures(units).words.record.changed(change)).join('\n') || '-',
    ]),
  };
  const since: Block[] = before
    ? listed(
        `Since handover ${before.number} of ${dateText(before.date)}`,
        {
          columns: [{ title: 'Change' }],
          rows: changesSince(before, project, survey).map((change) => [figures(units).say(changeSinceInWords(change))]),
        },
        'Nothing has changed.',
        widthMm,
        measure,
      )
    : [];
  const blocks = [
    ...listed(
      'Built otherwise than planned',
      differences,
      'Everything that was marked built stands as it was planned.',
      widthMm,
      measure,
    ),
    ...since,
  ];
  return textPages('Changes', blocks, 'portrait', input);
}
