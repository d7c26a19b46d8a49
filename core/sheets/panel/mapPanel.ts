import type { SheetOptions } from '../../api/sheetOptions.ts';
import type { Item, PaperBox } from '../../drawing/displayList.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { LonLat, Property } from '../../model/things.ts';
import type { Section, Survey } from '../../survey/types.ts';
import type { Figures } from '../../words/types.ts';
import { cautions } from '../cautions.ts';
import { type Block, space, stack, words } from '../flow/block.ts';
import { shownThings } from '../map/shownThings.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { scaleText } from '../scales.ts';
import type { SheetTile } from '../sheetPlan.ts';
import { fillColumns } from './fillColumns.ts';
import { legendBlocks } from './legend.ts';
import { orientationBlock } from './orientation.ts';
import { sectionRows } from './sectionList.ts';
import { sheetKey } from './sheetKey.ts';
import { titleBlock } from './titleBlock.ts';

const padMm = 2.5;

export interface MapPanelInput {
  readonly f: Figures;
  readonly project: Project;
  readonly survey: Survey;
  readonly options: SheetOptions;
  readonly measure: MeasureText;
  readonly tiles: readonly SheetTile[];
  readonly tile: SheetTile;
  readonly window: MapWindow;
  /** Names that found no room on the map. */
  readonly unlabelled: readonly string[];
}

export interface DrawnPanel {
  readonly items: readonly Item[];
  readonly pageNumber: PageDraft['pageNumber'];
  /** What found no room; columns as wide as the panel's hold it. */
  readonly left: readonly Block[];
}

/**
 * What stands beside a map: scale and north, legend, sections, names without room on the map; the cautions at the foot
 * of the first column, the title block at the foot of the last. Cautions and title always have their room.
 */
export function drawMapPanel(input: MapPanelInput, columns: readonly PaperBox[]): DrawnPanel {
  const { project, survey, options, f, measure, tiles, tile, window, unlabelled } = input;
  const { legend, panel } = f.words.sheets.map;
  const property = propertyOf(project);
  const inner = columns.map(([l, t, r, b]): PaperBox => [l + padMm, t + padMm, r - padMm, b - padMm]);
  const [first, last] = [inner[0]!, inner.at(-1)!];
  const widthMm = last[2] - last[0];
  const title = mapTitle(input, property, widthMm);
  const titleTop = last[3] - title.heightMm;
  const caution = cautionBlock(f, widthMm, measure);
  const cautionTop = (inner.length === 1 ? titleTop - 2 : first[3]) - caution.heightMm;
  const rooms = inner.map(([l, t, r, b], i): PaperBox => {
    const bottom = i === 0 ? cautionTop : i === inner.length - 1 ? titleTop : b;
    return [l, t, r, bottom - 1.5];
  });
  const shown = shownThings(project, survey, window);
  const filled = fillColumns(
    [
      orientationBlock(options.scaleDenominator, options.paper, f, widthMm),
      heading(legend.title, widthMm, measure),
      ...legendBlocks(shown, options.scaleDenominator, widthMm, f, measure),
      ...sectionBlocks(shown.sections, widthMm, panel.sections, f, measure),
      ...(tiles.length > 1 ? [space(1.5), sheetKey(tiles, tile, widthMm)] : []),
      ...unlabelledBlocks(unlabelled, panel.withoutRoom, widthMm, measure),
    ],
    rooms,
  );
  return {
    items: [...filled.items, ...caution.paint([first[0], cautionTop]), ...title.paint([last[0], titleTop])],
    pageNumber: { at: [last[2], last[3] - 1.15], style: { sizePt: letters.panel, font: 'bold', align: 'right' } },
    left: filled.left,
  };
}

function mapTitle(
  { survey, options, f, measure, tiles, tile }: MapPanelInput,
  property: Property,
  widthMm: number,
): Block {
  const { panel, sheet } = f.words.sheets.map;
  const subtitle = tiles.length > 1 ? sheet.networkOf({ number: tile.number, of: tiles.length }) : sheet.networkOne;
  const scale = scaleText(options.scaleDenominator);
  const rows = [
    { name: panel.scale, value: panel.scaleOn({ scale, paper: options.paper }) },
    { name: panel.grid, value: gridNote(property, survey.plane.origin, f) },
    { name: panel.date, value: f.date(options.date) },
  ];
  return titleBlock(property, subtitle, rows, widthMm, f, measure);
}

function gridNote({ placed }: Property, origin: LonLat, f: Figures): string {
  const { metresFrom, metresFromOrigin, feetFrom, feetFromOrigin } = f.words.sheets.map.panel;
  const feet = f.units === 'imperial';
  if (!placed) return feet ? feetFromOrigin : metresFromOrigin;
  return (feet ? feetFrom : metresFrom)({ place: placeText(origin) });
}

function heading(title: string, widthMm: number, measure: MeasureText): Block {
  const block = stack([
    space(1.2),
    words(title, widthMm, { sizePt: letters.table, font: 'bold', role: 'H2' }, measure),
  ]);
  return { ...block, keepWithNext: true };
}

export function cautionBlock(f: Figures, widthMm: number, measure: MeasureText): Block {
  return stack([
    words(f.words.sheets.map.panel.cautions, widthMm, { sizePt: letters.table, font: 'bold', role: 'H2' }, measure),
    ...cautions(f).map((caution) => words(caution, widthMm, { sizePt: letters.small, afterMm: 0.5 }, measure)),
  ]);
}

function sectionBlocks(
  sections: readonly Section[],
  widthMm: number,
  title: string,
  f: Figures,
  measure: MeasureText,
): Block[] {
  if (sections.length === 0) return [];
  return [heading(title, widthMm, measure), ...sectionRows(sections, widthMm, f)];
}

/** Names to a block: few enough that a list goes on in the next column. */
const namesPerBlock = 12;

function unlabelledBlocks(names: readonly string[], title: string, widthMm: number, measure: MeasureText): Block[] {
  if (names.length === 0) return [];
  const parts: string[] = [];
  for (let i = 0; i < names.length; i += namesPerBlock) {
    const more = i + namesPerBlock < names.length;
    parts.push(`${names.slice(i, i + namesPerBlock).join(', ')}${more ? ',' : ''}`);
  }
  return [
    heading(title, widthMm, measure),
    ...parts.map((part) => words(part, widthMm, { sizePt: letters.small }, measure)),
  ];
}
