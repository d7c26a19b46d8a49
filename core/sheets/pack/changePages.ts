import { changeSinceInWords, changesSince } from '../../record/changesSince.ts';
import { differencesFromPlan } from '../../record/differences.ts';
import { handoversOf } from '../../record/edits/handOver.ts';
import type { Block } from '../flow/block.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { listed, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** Built otherwise than planned, and what has changed since the handover before this one. */
export function changePages(input: PackInput): PageDraft[] {
  const { project, survey, options, f, measure } = input;
  const { changes: said, heads } = f.words.sheets;
  const widthMm = uprightWidthMm(input);
  const before = handoversOf(project).find(
    ({ number }) => options.handoverNumber === null || number < options.handoverNumber,
  );
  const differences: Table = {
    columns: [
      { title: heads.what, strong: true },
      { title: said.built },
      { title: said.moved, align: 'right' },
      { title: said.plannedNow },
    ],
    rows: differencesFromPlan(project, survey).map(({ name, mark, movedM, changes }) => [
      f.say(name),
      [mark.date === null ? '' : f.date(mark.date), mark.by].filter((part) => part !== '').join(', ') || '-',
      movedM === 0 ? '-' : f.length(movedM),
      changes.map((change) => f.words.record.changed(change)).join('\n') || '-',
    ]),
  };
  const since: Block[] = before
    ? listed(
        said.since({ number: before.number, date: f.date(before.date) }),
        {
          columns: [{ title: said.change }],
          rows: changesSince(before, project, survey).map((change) => [f.say(changeSinceInWords(change))]),
        },
        said.nothing,
        widthMm,
        measure,
      )
    : [];
  const blocks = [...listed(said.otherwise, differences, said.asPlanned, widthMm, measure), ...since];
  return textPages(said.title, blocks, 'portrait', input);
}
