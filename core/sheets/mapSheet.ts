import type { SheetOptions } from '../api/sheetOptions.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { LonLat, Property } from '../model/things.ts';
import type { Survey } from '../registers/types.ts';
import { cautions } from './cautions.ts';
import { dateText } from './dateText.ts';
import type { Item, PaperBox } from './displayList.ts';
import { type Block, space, stack, words } from './flow/block.ts';
import { drawMapFrame, gridDistanceM } from './map/drawGrid.ts';
import { drawMap } from './map/drawMap.ts';
import { mapWindow } from './map/mapWindow.ts';
import type { PageDraft } from './pageDraft.ts';
import { figure, text } from './paint.ts';
import { fillColumns } from './panel/fillColumns.ts';
import { legendBlocks } from './panel/legend.ts';
import { orientationBlock } from './panel/orientation.ts';
import { sectionRows } from './panel/sectionList.ts';
import { sheetKey } from './panel/sheetKey.ts';
import { panelFrame, titleBlock } from './panel/titleBlock.ts';
import { sheetFormat } from './paper.ts';
import { placeText } from './placeText.ts';
import { scaleText } from './scales.ts';
import type { SheetTile, Side } from './sheetPlan.ts';
import { letters } from './style.ts';
import { type MeasureText, textBox } from './words.ts';

const panelPadMm = 2.5;

export interface MapSheetInput {
  readonly project: Project;
  readonly survey: Survey;
  readonly options: SheetOptions;
  readonly measure: MeasureText;
}

export interface MapSheet {
  readonly draft: PageDraft;
  /** Names that stand neither on the map nor in the sheet's own list. */
  readonly unlisted: readonly string[];
}

/** One map sheet of a set: the map at true scale, its frame, and the panel with legend, cautions and title. */
export function mapSheet(input: MapSheetInput, tiles: readonly SheetTile[], tile: SheetTile): MapSheet {
  const { project, survey, options, measure } = input;
  const property = propertyOf(project);
  const format = sheetFormat(options);
  const gridM = gridDistanceM(options.gridM, options.scaleDenominator);
  const window = mapWindow(format.map, tile.centre, options.scaleDenominator, survey.plane);
  const map = drawMap(project, survey, window, tile.ground, gridM, measure);
  const onward = neighbourNotes(tile, format.map);
  const frame = drawMapFrame(
    window,
    tile.ground,
    gridM,
    onward.map((note) => textBox(note, measure)),
    measure,
  );
  const panel = drawPanel(input, tiles, tile, format.columns, map.unlabelled);
  const sheetName = tiles.length > 1 ? `Map sheet ${tile.number} of ${tiles.length}` : 'Map sheet';
  const description = `${sheetName} of ${property.name} at ${scaleText(options.scaleDenominator)}`;
  return {
    draft: {
      widthMm: format.widthMm,
      heightMm: format.heightMm,
      title: sheetName,
      items: [
        { kind: 'anchor', name: sheetAnchor(tile), at: [0, 0] },
        figure(description, map.items),
        ...frame,
        ...onward,
        ...panelFrame(format.frame, format.columns),
        ...panel.items,
      ],
      pageNumber: panel.pageNumber,
    },
    unlisted: panel.unlisted,
  };
}

/** Where a link to a sheet leads. */
export function sheetAnchor({ number }: SheetTile): string {
  return `map-sheet-${number}`;
}

/** "Sheet 3" outside each edge beyond which another sheet carries on. */
function neighbourNotes(tile: SheetTile, [left, top, right, bottom]: PaperBox) {
  const middle = [(left + right) / 2, (top + bottom) / 2] as const;
  const places: Record<Side, { at: readonly [number, number]; rotationDeg: number }> = {
    north: { at: [middle[0], top - 1.6], rotationDeg: 0 },
    south: { at: [middle[0], bottom + 3.2], rotationDeg: 0 },
    west: { at: [left - 1.6, middle[1]], rotationDeg: -90 },
    east: { at: [right + 1.6, middle[1]], rotationDeg: 90 },
  };
  return (Object.keys(places) as Side[]).flatMap((side) => {
    const number = tile.next[side];
    if (number === undefined) return [];
    const { at, rotationDeg } = places[side];
    return [text(`Sheet ${number}`, at, { sizePt: letters.panel, font: 'bold', align: 'centre', rotationDeg })];
  });
}

interface DrawnPanel {
  readonly items: readonly Item[];
  readonly pageNumber: PageDraft['pageNumber'];
  readonly unlisted: readonly string[];
}

function drawPanel(
  { project, survey, options, measure }: MapSheetInput,
  tiles: readonly SheetTile[],
  tile: SheetTile,
  columns: readonly PaperBox[],
  unlabelled: readonly string[],
): DrawnPanel {
  const property = propertyOf(project);
  const inner = columns.map(
    ([l, t, r, b]): PaperBox => [l + panelPadMm, t + panelPadMm, r - panelPadMm, b - panelPadMm],
  );
  const first = inner[0]!;
  const last = inner.at(-1)!;
  const widthMm = last[2] - last[0];
  const set = tiles.length > 1;
  const title = titleBlock(
    property,
    set ? `Fence network, map sheet ${tile.number} of ${tiles.length}` : 'Fence network, map sheet',
    [
      { name: 'Scale', value: `${scaleText(options.scaleDenominator)} on ${options.paper}` },
      { name: 'Grid', value: gridNote(property, survey.plane.origin) },
      { name: 'Date', value: dateText(options.date) },
    ],
    widthMm,
    measure,
  );
  const titleTop = last[3] - title.heightMm;
  const caution = cautionBlock(first[2] - first[0], measure);
  // The cautions stand at the foot of the first column, above the title where that is the same column.
  const cautionBottom = inner.length === 1 ? titleTop - 2 : first[3];
  const cautionTop = cautionBottom - caution.heightMm;
  const rooms = inner.map(([l, t, r, b], i): PaperBox => {
    const bottom = i === 0 ? cautionTop : i === inner.length - 1 ? titleTop : b;
    return [l, t, r, bottom - 1.5];
  });
  const key = set ? [sheetKey(tiles, tile, widthMm)] : [];
  const fixedBlocks: Block[] = [
    orientationBlock(options.scaleDenominator, options.paper, property.units, widthMm),
    ...key,
    heading('Legend', widthMm, measure),
    ...legendBlocks(project, survey),
  ];
  const sections = sectionBlocks(survey, widthMm, property.units, measure);
  const missing = unlabelledBlocks(unlabelled, widthMm, measure);
  const filled = fillColumns([...fixedBlocks, ...missing.blocks, ...sections], rooms);
  const unlisted = missing.blocks.some((block) => filled.left.includes(block)) ? unlabelled : [];
  return {
    items: [...filled.items, ...caution.paint([first[0], cautionTop]), ...title.paint([last[0], titleTop])],
    pageNumber: {
      at: [last[2], last[3] - 0.4],
      style: { sizePt: letters.panel, font: 'bold', align: 'right' },
    },
    unlisted,
  };
}

function heading(title: string, widthMm: number, measure: MeasureText): Block {
  return stackKept([space(1.2), words(title, widthMm, { sizePt: letters.table, font: 'bold', role: 'H2' }, measure)]);
}

function stackKept(blocks: readonly Block[]): Block {
  return { ...stack(blocks), keepWithNext: true };
}

function cautionBlock(widthMm: number, measure: MeasureText): Block {
  return stack([
    words('Cautions', widthMm, { sizePt: letters.table, font: 'bold', role: 'H2' }, measure),
    ...cautions.map((caution) => words(caution, widthMm, { sizePt: letters.small, afterMm: 0.5 }, measure)),
  ]);
}

function sectionBlocks(survey: Survey, widthMm: number, units: Property['units'], measure: MeasureText): Block[] {
  if (survey.sections.length === 0) return [];
  return [heading('Sections', widthMm, measure), ...sectionRows(survey.sections, widthMm, units)];
}

function unlabelledBlocks(names: readonly string[], widthMm: number, measure: MeasureText): { blocks: Block[] } {
  if (names.length === 0) return { blocks: [] };
  const list = words(names.join(', '), widthMm, { sizePt: letters.small, afterMm: 1 }, measure);
  return { blocks: [heading('On the map without room for a name', widthMm, measure), list] };
}

function gridNote(property: Property, origin: LonLat): string {
  if (!property.placed) return "metres from the drawing's origin; not yet placed on the earth";
  return `metres from ${placeText(origin)} (WGS 84)`;
}
