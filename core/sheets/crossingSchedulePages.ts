import { letters } from '../drawing/style.ts';
import { stateInWords } from '../locate/certaintyWords.ts';
import { postSide } from '../locate/compass.ts';
import { openingDug } from '../locate/crossingSource.ts';
import { depthAtGateway } from '../locate/depth.ts';
import { isInTheGround } from '../locate/inTheGround.ts';
import { openingMovedM } from '../locate/recordedOpening.ts';
import { samePostM } from '../locate/tieFrom.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { LineEnd, LonLat } from '../model/things.ts';
import type { CrossingFigures, GatewayShape } from '../shapes/types.ts';
import type { Survey } from '../survey/types.ts';
import { lengthUnit } from '../words/numbers/units.ts';
import { fixed } from '../words/numbers/write.ts';
import type { Figures } from '../words/types.ts';
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
  const table = crossingTable(project, survey, input.f, property.placed);
  const assumed = [...survey.crossings.values()].some(({ bowAssumed }) => bowAssumed);
  const none = table.rows.length === 0;
  const said = input.f.words.sheets.crossings;
  const cables = input.f.words.power.conductors;
  const all = [said.estimates, ...(assumed ? [said.assumed] : []), cables.ratingCaution, cables.oneConduit];
  const intro = none ? said.none : input.f.words.things.sentences({ all });
  const blocks = [
    words(intro, widthMm, { sizePt: letters.body, afterMm: 2, keepWithNext: !none }, input.measure),
    ...(none ? [] : tableBlocks(table, widthMm, input.measure)),
  ];
  return textPages(said.title, blocks, 'landscape', input);
}

export function crossingTable(project: Project, survey: Survey, f: Figures, placed: boolean): Table {
  const unit = lengthUnit(f.units);
  const { crossings: said, heads, common } = f.words.sheets;
  const length = (title: string): Column => ({ title, unit: unit.name, align: 'right' });
  const columns: Column[] = [
    { title: heads.gateway, strong: true },
    { title: said.crossing },
    { title: heads.state },
    length(said.opening),
    length(said.curve),
    length(said.depth),
    { title: said.bore, unit: 'mm', align: 'right' },
    length(said.trench),
    length(said.pipe),
    length(said.liveCable),
    length(said.earthCable),
    { title: said.sealed },
    ...(placed
      ? [
          { title: said.onePost, unit: common.wgs84 },
          { title: said.otherPost, unit: common.wgs84 },
        ]
      : []),
    { title: heads.remarks },
  ];
  const live = [...survey.gateways].filter(([id, { lineLive }]) => lineLive || survey.crossings.has(id));
  const dug = new Map([...survey.crossings.keys()].map((id) => [id, openingDug(project, survey, id)!]));
  const rows = live.map(([id, shape]) => {
    const opening = dug.get(id);
    if (!opening) return bareRow(shape, f, placed);
    const { figures } = opening;
    const state = f.say(stateInWords(figures.crossing.status, isInTheGround(project, figures.crossing)));
    const depth = depthWords(project, survey, figures, f);
    const isMoved = openingMovedM(opening.shape, shape) >= samePostM;
    return crossingRow(shape, figures, { state, depth, isMoved }, f, placed);
  });
  const sum = (value: (figures: CrossingFigures) => number) =>
    tape(
      [...dug.values()].reduce((total, { figures }) => total + value(figures), 0),
      f,
    );
  const totals = [
    heads.together,
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
function depthWords(project: Project, survey: Survey, figures: CrossingFigures, f: Figures): string {
  if (figures.crossing.method !== 'buried') return '-';
  const depth = depthAtGateway(project, survey, figures);
  const { range: rangeWords, measuredAt } = f.words.locate.depth;
  const { toPipe, trenchPlanned } = f.words.sheets.crossings;
  const range = rangeWords(depth).replace(/ \S+$/, '');
  return depth.measured ? toPipe({ range, measuredAt: measuredAt(depth) }) : trenchPlanned({ range });
}

function crossingRow(
  shape: GatewayShape,
  figures: CrossingFigures,
  { state, depth, isMoved }: { readonly state: string; readonly depth: string; readonly isMoved: boolean },
  f: Figures,
  placed: boolean,
): string[] {
  const { cells } = f.words.sheets;
  const { crossing, gateway } = figures;
  const buried = crossing.method === 'buried';
  return [
    gateway.name,
    cells[crossing.method],
    state,
    tape(gateway.widthM, f),
    buried ? `${tape(figures.bowM, f)}${figures.bowAssumed ? '*' : ''}` : '-',
    depth,
    buried ? fixed(crossing.pipeBoreMm, Number.isInteger(crossing.pipeBoreMm) ? 0 : 1) : '-',
    buried ? tape(figures.trenchM, f) : '-',
    buried ? tape(figures.pipeM, f) : '-',
    tape(figures.liveCableM, f),
    figures.earthCableM > 0 ? tape(figures.earthCableM, f) : cells.none,
    crossing.sealed === null ? cells.notNoted : crossing.sealed ? cells.yes : cells.no,
    ...(placed ? postPlaces(shape, f) : []),
    crossingRemarks(figures, isMoved, f),
  ];
}

function bareRow(shape: GatewayShape, f: Figures, placed: boolean): string[] {
  const { gateway } = shape;
  const { cells, crossings } = f.words.sheets;
  const blanks = Array<string>(8).fill('-');
  return [
    gateway.name,
    cells.none,
    cells[gateway.status],
    tape(gateway.widthM, f),
    ...blanks,
    ...(placed ? postPlaces(shape, f) : []),
    crossings.noCrossing,
  ];
}

/** Each post by the side of the opening that it stands on, for nobody can see which is the start. */
function postPlaces(shape: GatewayShape, f: Figures): string[] {
  const { compass } = f.words.things;
  const placeOf = (post: LineEnd, [lon, lat]: LonLat) =>
    `${compass[postSide(shape, post)]}\n${latitudeText(lat)}\n${longitudeText(lon)}`;
  return [placeOf('start', shape.startPostAt), placeOf('end', shape.endPostAt)];
}

function crossingRemarks(
  { crossing, gateway, tighterThanPipeAllows, bendRadiusM }: CrossingFigures,
  isMoved: boolean,
  f: Figures,
): string {
  const { moved, vehicles, tightBend } = f.words.sheets.crossings;
  const said = [
    isMoved ? moved : '',
    gateway.vehicles ? vehicles : '',
    tighterThanPipeAllows ? tightBend({ bendM: bendRadiusM, leastM: crossing.minBendRadiusM }) : '',
    crossing.note.trim(),
  ];
  return f.words.things.sentences({ all: said.filter((part) => part !== '') });
}

function tape(lengthM: number, f: Figures): string {
  return Number.isFinite(lengthM) ? fixed(lengthM / lengthUnit(f.units).lengthM, 2) : f.words.things.notKnown;
}
