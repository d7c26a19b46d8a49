import type { Item, PaperBox, PaperPoint } from '../drawing/displayList.ts';
import { type MapWindow, mapWindow } from '../drawing/mapWindow.ts';
import { box, figure, lines, stroke, tagged, text } from '../drawing/paint.ts';
import { ink, letters, pen } from '../drawing/style.ts';
import { textBox } from '../drawing/words.ts';
import { type Box, boxAround } from '../geometry/box.ts';
import type { Xy } from '../geometry/types.ts';
import { propertyOf } from '../model/project.ts';
import { type Block, space, words } from './flow/block.ts';
import { type MapSheetInput, sheetAnchor } from './mapSheet.ts';
import type { PageDraft } from './pageDraft.ts';
import { fillColumns } from './panel/fillColumns.ts';
import { cautionBlock } from './panel/mapPanel.ts';
import { orientationBlock } from './panel/orientation.ts';
import { panelFrame, titleBlock } from './panel/titleBlock.ts';
import { sheetFormat } from './paper.ts';
import { fittingScale, scaleText } from './scales.ts';
import type { SheetTile } from './sheetPlan.ts';

const padMm = 2.5;

/** A small-scale sketch of the whole property with the sheets laid over it, each a link to its page. */
export function indexSheet(input: MapSheetInput, tiles: readonly SheetTile[]): PageDraft {
  const { project, survey, options, f, measure } = input;
  const { index, panel } = f.words.sheets.map;
  const property = propertyOf(project);
  const format = sheetFormat(options);
  const ground = groundOf(tiles);
  const scaleDenominator = fittingScale(ground, options) ?? looseScale(ground, format.map);
  const centre: Xy = [(ground[0] + ground[2]) / 2, (ground[1] + ground[3]) / 2];
  const window = mapWindow(format.map, centre, scaleDenominator, survey.plane);
  const fences = [...survey.lines.values()].flatMap(({ xy }) => window.clip(xy));
  const outlines = tiles.flatMap((tile) => tileOutline(tile, window, input));
  const columns = format.columns.map(([l, t, r, b]): PaperBox => [l + padMm, t + padMm, r - padMm, b - padMm]);
  const last = columns.at(-1)!;
  const widthMm = last[2] - last[0];
  const title = titleBlock(
    property,
    index.network({ count: tiles.length }),
    [
      {
        name: index.sheets,
        value: panel.scaleOn({ scale: scaleText(options.scaleDenominator), paper: options.paper }),
      },
      { name: panel.date, value: f.date(options.date) },
    ],
    widthMm,
    f,
    measure,
  );
  const titleTop = last[3] - title.heightMm;
  const rooms = columns.map(([l, t, r, b], i): PaperBox => [l, t, r, i === columns.length - 1 ? titleTop - 2 : b]);
  const filled = fillColumns(indexBlocks(input, tiles, scaleDenominator, widthMm), rooms);
  return {
    widthMm: format.widthMm,
    heightMm: format.heightMm,
    title: index.title,
    items: [
      figure(index.described({ property: property.name, count: tiles.length }), [
        ...(fences.length > 0 ? [lines(fences, stroke(pen.sign))] : []),
        ...outlines,
      ]),
      box(format.map, null, stroke(pen.sign)),
      ...panelFrame(format.frame, format.columns),
      ...filled.items,
      ...title.paint([last[0], titleTop]),
    ],
    pageNumber: { at: [last[2], last[3] - 1.15], style: { sizePt: letters.panel, font: 'bold', align: 'right' } },
  };
}

function indexBlocks(
  { survey, options, f, measure }: MapSheetInput,
  tiles: readonly SheetTile[],
  scale: number,
  widthMm: number,
): Block[] {
  const fit = fittingScale(groundOfProperty(survey.lines.values()) ?? groundOf(tiles), options);
  const { overlap, fits } = f.words.sheets.map.index;
  const advice = fit === null ? [] : [fits({ paper: options.paper, scale: scaleText(fit) })];
  return [
    orientationBlock(scale, options.paper, f, widthMm),
    space(2),
    words(f.words.things.sentences({ all: [overlap, ...advice] }), widthMm, { sizePt: letters.table }, measure),
    space(3),
    cautionBlock(f, widthMm, measure),
  ];
}

function groundOfProperty(shapes: Iterable<{ readonly xy: readonly Xy[] }>): Box | null {
  return boxAround([...shapes].flatMap(({ xy }) => xy));
}

function groundOf(tiles: readonly SheetTile[]): Box {
  const corners = tiles.flatMap(({ ground: [west, south, east, north] }): Xy[] => [
    [west, south],
    [east, north],
  ]);
  return boxAround(corners)!;
}

/** A scale for a ground that no round scale fits. */
function looseScale([west, south, east, north]: Box, [left, top, right, bottom]: PaperBox): number {
  return Math.ceil(Math.max((east - west) / (right - left), (north - south) / (bottom - top)) * 1100);
}

function tileOutline(tile: SheetTile, window: MapWindow, { measure }: MapSheetInput): Item[] {
  const [west, south, east, north] = tile.ground;
  const [left, top] = window.toPaper([west, north]);
  const [right, bottom] = window.toPaper([east, south]);
  const outline: PaperBox = [left, top, right, bottom];
  const at: PaperPoint = [(left + right) / 2, (top + bottom) / 2 + 2];
  const label = text(String(tile.number), at, { sizePt: letters.title, font: 'bold', align: 'centre', halo: 0.6 });
  return [
    box(outline, null, stroke(pen.thin, { ink: ink.soft })),
    tagged('P', [label]),
    { kind: 'link', box: textBox(label, measure), anchor: sheetAnchor(tile) },
  ];
}
