import { letters } from '../drawing/style.ts';
import { type Project, propertyOf } from '../model/project.ts';
import { feedInWords } from '../survey/switchInWords.ts';
import type { Survey, SwitchRow } from '../survey/types.ts';
import { figures } from '../words/figures.ts';
import { lengthUnit } from '../words/numbers/units.ts';
import { fixed, type Units } from '../words/numbers/write.ts';
import { inOrder } from '../words/text.ts';
import { space, words } from './flow/block.ts';
import { type Column, type Table, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';
import { latitudeText, longitudeText } from './placeText.ts';

/** The register of cut-out switches: where each is, how it stands, and what goes dead when it alone is opened. */
export function switchRegisterPages(project: Project, survey: Survey, input: TextPagesInput): PageDraft[] {
  const property = propertyOf(project);
  const [left, , right] = textRoom('landscape', property);
  const widthMm = right - left;
  const rows = survey.switches;
  const intro =
    rows.length === 0
      ? 'No cut-out switch is drawn.'
      : 'What goes dead is reckoned with every other switch as it normally stands. A switch that is fed from both sides cuts nothing off alone.';
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: rows.length > 0 }, input.measure),
    ...(rows.length > 0
      ? tableBlocks(switchTable(survey, property.units, property.placed), widthMm, input.measure)
      : []),
    space(2),
  ];
  return textPages('Register of cut-out switches', blocks, 'landscape', input);
}

export function switchTable(survey: Survey, units: Units, placed: boolean): Table {
  const unit = lengthUnit(units);
  const f = figures(units);
  const columns: Column[] = [
    { title: 'Switch', strong: true },
    { title: 'Place' },
    { title: 'Stands' },
    { title: 'State' },
    { title: 'Fed' },
    { title: 'Fence cut off', unit: unit.name, align: 'right' },
    { title: 'Gateways cut off' },
    { title: 'Sections cut off' },
    ...(placed ? [{ title: 'Position', unit: 'WGS 84' }] : []),
    { title: 'Remarks' },
  ];
  const gatewayName = (id: string) => survey.gateways.get(id)?.gateway.name ?? id;
  const rows = survey.switches.map((row) => [
    row.switch.name,
    f.say(row.where),
    row.switch.normally,
    row.switch.status,
    f.say(feedInWords(row.feed)),
    fixed(row.cutsOff.lengthM / unit.lengthM, 0),
    inOrder(row.cutsOff.gatewayIds.map(gatewayName)).join(', ') || '-',
    inOrder(row.cutsOff.sections).join(', ') || '-',
    ...(placed ? [`${latitudeText(row.at[1])}\n${longitudeText(row.at[0])}`] : []),
    remarks(row),
  ]);
  return { columns, rows };
}

function remarks(row: SwitchRow): string {
  const said = [
    row.wrongSide ? 'On the far side of its crossing: the buried cable stays live.' : '',
    row.switch.note.trim(),
  ];
  return said.filter((part) => part !== '').join(' ');
}
