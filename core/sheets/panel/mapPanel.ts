import type { SheetOptions } from '../../api/sheetOptions.ts';
import type { Item, PaperBox } from '../../drawing/displayList.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { letters } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { LonLat, Property } from '../../model/things.ts';
import type { Section, Survey } from '../../survey/types.ts';
import { dateText } from '../../words/dates.ts';
import type { Units } from '../../words/numbers/write.ts';
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
  const { project, survey, options, measure, tiles, tile, window, unlabelled } = input;
  const property = propertyOf(project);
  const inner = columns.map(([l, t, r, b]): PaperBox => [l + padMm, t + padMm, r - padMm, b - padMm]);
  const [first, last] = [inner[0]!, inner.at(-1)!];
  const widthMm = last[2] - last[0];
  const title = mapTitle(input, property, widthMm);
  const titleTop = last[3] - title.heightMm;
  const caution = cautionBlock(property.units, widthMm, measure);
  const cautionTop = (inner.length === 1 ? titleTop - 2 : first[3]) - caution.heightMm;
  const rooms = inner.map(([l, t, r, b], i): PaperBox => {
    const bottom = i === 0 ? cautionTop : i === inner.length - 1 ? titleTop : b;
    return [l, t, r, bottom - 1.5];
  });
  const shown = shownThings(project, survey, window);
  const filled = fillColumns(
    [
      orientationBlock(options.scaleDenominator, options.paper, property.units, widthMm),
      heading('Legend', widthMm, measure),
      ...legendBlocks(shown, options.scaleDenominator),
      ...sectionBlocks(shown.sections, widthMm, property.units, measure),
      ...(tiles.length > 1 ? [space(1.5), sheetKey(tiles, tile, widthMm)] : []),
      ...unlabelledBlocks(unlabelled, widthMm, measure),
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
  { survey, options, measure, tiles, tile }: MapPanelInput,
  property: Property,
  widthMm: number,
): Block {
  const subtitle =
    tiles.length > 1 ? `Fence network, map sheet ${tile.number} of ${tiles.length}` : 'Fence network, map sheet';
  const rows = [
    { name: 'Scale', value: `${scaleText(options.scaleDenominator)} on ${options.paper}` },
    { name: 'Grid', value: gridNote(property, survey.plane.origin) },
    { name: 'Date', value: dateText(options.date) },
  ];
  return titleBlock(property, subtitle, rows, widthMm, measure);
}

function gridNote(property: Property, origin: LonLat): string {
  const unit = property.units === 'imperial' ? 'feet' : 'metres';
  if (!property.placed) return `${unit} from the drawing's origin; not yet placed on the earth`;
  return `${unit} from ${placeText(origin)} (WGS 84)`;
}

function heading(title: string, widthMm: number, measure: MeasureText): Block {
  const block = stack([
    space(1.2),
    words(title, widthMm, { sizePt: letters.table, font: 'bold', role: 'H2' }, measure),
  ]);
  return { ...block, keepWithNext: true };
}

export function cautionBlock(units: Units, widthMm: number, measure: MeasureText): Block {
  return stack([
    words('Cautions', widthMm, { sizePt: letters.table, font: 'bold', role: 'H2' }, measure),
    ...cautions(units).map((caution) => words(caution, widthMm, { sizePt: letters.small, afterMm: 0.5 }, measure)),
  ]);
}

function sectionBlocks(
  sections: readonly Section[],
  widthMm: number,
  units: Property['units'],
  measure: MeasureText,
): Block[] {
  if (sections.length === 0) return [];
  return [heading('Sections', widthMm, measure), ...sectionRows(sections, widthMm, units)];
}

/** Names to a block: few enough that a list goes on in the next column. */
const namesPerBlock = 12;

function unlabelledBlocks(names: readonly string[], widthMm: number, measure: MeasureText): Block[] {
  if (names.length === 0) return [];
  const parts: string[] = [];
  for (let i = 0; i < names.length; i += namesPerBlock) {
    const more = i + namesPerBlock < names.length;
    parts.push(`${names.slice(i, i + namesPerBlock).join(', ')}${more ? ',' : ''}`);
  }
  return [
    heading('On the map without room for a name', widthMm, measure),
    ...parts.map((part) => words(part, widthMm, { sizePt: letters.small }, measure)),
  ];
}
