import { letters } from '../drawing/style.ts';
import { type Project, propertyOf } from '../model/project.ts';
import { feedInWords } from '../survey/switchInWords.ts';
import type { Survey, SwitchRow } from '../survey/types.ts';
import { lengthUnit } from '../words/numbers/units.ts';
import { fixed } from '../words/numbers/write.ts';
import { inOrder } from '../words/text.ts';
import type { Figures } from '../words/types.ts';
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
  const said = input.f.words.sheets.switches;
  const intro = rows.length === 0 ? said.none : said.intro;
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: rows.length > 0 }, input.measure),
    ...(rows.length > 0 ? tableBlocks(switchTable(survey, input.f, property.placed), widthMm, input.measure) : []),
    space(2),
  ];
  return textPages(said.title, blocks, 'landscape', input);
}

export function switchTable(survey: Survey, f: Figures, placed: boolean): Table {
  const unit = lengthUnit(f.units);
  const { switches: said, heads, cells, common } = f.words.sheets;
  const columns: Column[] = [
    { title: said.switch, strong: true },
    { title: heads.place },
    { title: said.stands },
    { title: heads.state },
    { title: said.fed },
    { title: said.fenceCutOff, unit: unit.name, align: 'right' },
    { title: said.gatewaysCutOff },
    { title: said.sectionsCutOff },
    ...(placed ? [{ title: common.position, unit: common.wgs84 }] : []),
    { title: heads.remarks },
  ];
  const gatewayName = (id: string) => survey.gateways.get(id)?.gateway.name ?? id;
  const rows = survey.switches.map((row) => [
    row.switch.name,
    f.say(row.where),
    cells[row.switch.normally],
    cells[row.switch.status],
    f.say(feedInWords(row.feed)),
    fixed(row.cutsOff.lengthM / unit.lengthM, 0),
    inOrder(row.cutsOff.gatewayIds.map(gatewayName)).join(', ') || '-',
    inOrder(row.cutsOff.sections).join(', ') || '-',
    ...(placed ? [`${latitudeText(row.at[1])}\n${longitudeText(row.at[0])}`] : []),
    remarks(row, f),
  ]);
  return { columns, rows };
}

function remarks(row: SwitchRow, f: Figures): string {
  const said = [row.wrongSide ? f.words.sheets.switches.farSide : '', row.switch.note.trim()];
  return f.words.things.sentences({ all: said.filter((part) => part !== '') });
}
