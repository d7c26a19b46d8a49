import { letters } from '../drawing/style.ts';
import { stateInWords } from '../locate/certaintyWords.ts';
import { openingDug } from '../locate/crossingSource.ts';
import { depthAtGateway } from '../locate/depth.ts';
import { isInTheGround } from '../locate/inTheGround.ts';
import { openingMovedM } from '../locate/recordedOpening.ts';
import { samePostM } from '../locate/tieFrom.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { CrossingFigures, GatewayShape } from '../shapes/types.ts';
import type { Survey } from '../survey/types.ts';
import { figures, figures as figuresIn } from '../words/figures.ts';
import { lengthUnit } from '../words/numbers/units.ts';
import { fixed, formatTape, type Units } from '../words/numbers/write.ts';
import { words } from './flow/block.ts';
import { type Column, type Table, tableBlocks } from './flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';
import { latitudeText, longitudeText } from './placeText.ts';

/** The schedule of crossings: every gateway of a live line with the trench, pipe and cables that it takes. */
export function crossingSchedulePages(project: Project, survey: Survey, input: TextPagesInput): PageDraft[] {
  const property = propertyOf(project);
  const [left, , right] = textRoom('landscape', property);
  const widthMm = right - left;
  const table = crossingTable(project, survey, property.units, property.placed);
  const assumed = [...survey.crossings.values()].some(({ bowAssumed }) => bowAssumed);
  const none = table.rows.length === 0;
  const cables = figures(property.units).words.power.conductors;
  const intro = none
    ? 'No gateway stands in a live fence line.'
    : `Trench, pipe and cable lengths are estimates. Depth is to the top of the pipe where it was measured, else of the trench as planned.${assumed ? ' A bow marked * is assumed as a share of the opening until it is measured.' : ''} ${cables.ratingCaution} ${cables.oneConduit}`;
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: !none }, input.measure),
    ...(none ? [] : tableBlocks(table, widthMm, input.measure)),
  ];
  return textPages('Schedule of crossings', blocks, 'landscape', input);
}

export function crossingTable(project: Project, survey: Survey, units: Units, placed: boolean): Table {
  const unit = lengthUnit(units);
  const f = figuresIn(units);
  const length = (title: string): Column => ({ title, unit: unit.name, align: 'right' });
  const columns: Column[] = [
    { title: 'Gateway', strong: true },
    { title: 'Crossing' },
    { title: 'State' },
    length('Opening'),
    length('Bow'),
    length('Depth'),
    { title: 'Pipe bore', unit: 'mm', align: 'right' },
    length('Trench'),
    length('Pipe'),
    length('Live cable'),
    length('Earth cable'),
    { title: 'Sealed' },
    ...(placed
      ? [
          { title: 'Start post', unit: 'WGS 84' },
          { title: 'End post', unit: 'WGS 84' },
        ]
      : []),
    { title: 'Remarks' },
  ];
  const live = [...survey.gateways].filter(([id, { lineLive }]) => lineLive || survey.crossings.has(id));
  const dug = new Map([...survey.crossings.keys()].map((id) => [id, openingDug(project, survey, id)!]));
  const rows = live.map(([id, shape]) => {
    const opening = dug.get(id);
    if (!opening) return bareRow(shape, unit.lengthM, placed);
    const { figures } = opening;
    const state = f.say(stateInWords(figures.crossing.status, isInTheGround(project, figures.crossing)));
    const depth = depthWords(project, survey, figures, units);
    const isMoved = openingMovedM(opening.shape, shape) >= samePostM;
    return crossingRow(shape, figures, { state, depth, isMoved }, units, placed);
  });
  const sum = (value: (figures: CrossingFigures) => number) =>
    tape(
      [...dug.values()].reduce((total, { figures }) => total + value(figures), 0),
      unit.lengthM,
    );
  const totals = [
    'Together',
    '',
    '',
    '',
    '',
    '',
    '',
    sum(({ trenchM }) => trenchM),
    sum(({ pipeM }) => pipeM),
    sum(({ liveCableM }) => liveCableM),
    sum(({ earthCableM }) => earthCableM),
    '',
    ...(placed ? ['', ''] : []),
    '',
  ];
  return { columns, rows, totals };
}

/** "0.10 to 0.42, measured"; "0.45 planned, not measured". */
function depthWords(project: Project, survey: Survey, figures: CrossingFigures, units: Units): string {
  if (figures.crossing.method !== 'buried') return '-';
  const depth = depthAtGateway(project, survey, figures);
  const { range: rangeWords, measuredAt } = figuresIn(units).words.locate.depth;
  const range = rangeWords(depth).replace(/ \S+$/, '');
  return depth.measured ? `${range} to pipe, ${measuredAt(depth)}` : `${range} trench planned, not measured`;
}

function crossingRow(
  shape: GatewayShape,
  figures: CrossingFigures,
  { state, depth, isMoved }: { readonly state: string; readonly depth: string; readonly isMoved: boolean },
  units: Units,
  placed: boolean,
): string[] {
  const { lengthM: unitM } = lengthUnit(units);
  const { crossing, gateway } = figures;
  const buried = crossing.method === 'buried';
  return [
    gateway.name,
    crossing.method,
    state,
    tape(gateway.widthM, unitM),
    buried ? `${tape(figures.bowM, unitM)}${figures.bowAssumed ? '*' : ''}` : '-',
    depth,
    buried ? fixed(crossing.pipeBoreMm, Number.isInteger(crossing.pipeBoreMm) ? 0 : 1) : '-',
    buried ? tape(figures.trenchM, unitM) : '-',
    buried ? tape(figures.pipeM, unitM) : '-',
    tape(figures.liveCableM, unitM),
    figures.earthCableM > 0 ? tape(figures.earthCableM, unitM) : 'none',
    crossing.sealed === null ? 'not noted' : crossing.sealed ? 'yes' : 'no',
    ...(placed ? postPlaces(shape) : []),
    crossingRemarks(figures, isMoved, units),
  ];
}

function bareRow(shape: GatewayShape, unitM: number, placed: boolean): string[] {
  const { gateway } = shape;
  const blanks = Array<string>(8).fill('-');
  const remark = 'No crossing: the live wire stops at this gateway.';
  return [
    gateway.name,
    'none',
    gateway.status,
    tape(gateway.widthM, unitM),
    ...blanks,
    ...(placed ? postPlaces(shape) : []),
    remark,
  ];
}

function postPlaces({ startPostAt, endPostAt }: GatewayShape): string[] {
  return [startPostAt, endPostAt].map(([lon, lat]) => `${latitudeText(lat)}\n${longitudeText(lon)}`);
}

function crossingRemarks(
  { crossing, gateway, tighterThanPipeAllows, bendRadiusM }: CrossingFigures,
  isMoved: boolean,
  units: Units,
): string {
  const said = [
    isMoved ? 'Lies where the gate’s posts stood when it was dug; its lengths are of that opening.' : '',
    gateway.vehicles ? 'Vehicles pass.' : '',
    tighterThanPipeAllows
      ? `Bend of ${formatTape(bendRadiusM, units)} is tighter than the pipe allows (${formatTape(crossing.minBendRadiusM, units)}).`
      : '',
    crossing.note.trim(),
  ];
  return said.filter((part) => part !== '').join(' ');
}

function tape(lengthM: number, unitM: number): string {
  return Number.isFinite(lengthM) ? fixed(lengthM / unitM, 2) : 'not known';
}
