import type { SheetOptions } from '../api/sheetOptions.ts';
import type { PaperBox, TaggedItem } from '../drawing/displayList.ts';
import { mapWindow } from '../drawing/mapWindow.ts';
import { figure, tagged, text } from '../drawing/paint.ts';
import { letters } from '../drawing/style.ts';
import { type MeasureText, textBox } from '../drawing/words.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Survey } from '../survey/types.ts';
import type { Figures } from '../words/types.ts';
import { propertyExtent } from './extent.ts';
import type { Block } from './flow/block.ts';
import { drawMapFrame, gridDistanceM } from './map/drawGrid.ts';
import { drawMap } from './map/drawMap.ts';
import type { PageDraft } from './pageDraft.ts';
import { drawMapPanel } from './panel/mapPanel.ts';
import { panelFrame } from './panel/titleBlock.ts';
import { sheetFormat } from './paper.ts';
import { scaleText } from './scales.ts';
import type { SheetTile, Side } from './sheetPlan.ts';

export interface MapSheetInput {
  readonly f: Figures;
  readonly project: Project;
  readonly survey: Survey;
  readonly options: SheetOptions;
  readonly measure: MeasureText;
}

export interface MapSheet {
  readonly draft: PageDraft;
  /** What belongs beside the map and found no room there. */
  readonly left: readonly Block[];
}

/** One map sheet of a set: the map at true scale, its frame, and the panel with legend, cautions and title. */
export function mapSheet(input: MapSheetInput, tiles: readonly SheetTile[], tile: SheetTile): MapSheet {
  const { project, survey, options, f, measure } = input;
  const property = propertyOf(project);
  const format = sheetFormat(options);
  const gridM = gridDistanceM(options.gridM, options.scaleDenominator, property.units);
  const window = mapWindow(format.map, tile.centre, options.scaleDenominator, survey.plane);
  const map = drawMap(project, survey, window, tile.ground, gridM, f, measure);
  const onward = neighbourNotes(tile, format.map, f);
  const frame = drawMapFrame(
    window,
    tile.ground,
    gridM,
    f,
    onward.map((note) => textBox(note, measure)),
    measure,
  );
  const panel = drawMapPanel({ ...input, tiles, tile, window, unlabelled: map.unlabelled }, format.columns);
  const { sheet } = f.words.sheets.map;
  const sheetName = tiles.length > 1 ? sheet.of({ number: tile.number, of: tiles.length }) : sheet.one;
  const scale = scaleText(options.scaleDenominator);
  const description = sheet.described({ sheet: sheetName, property: property.name, scale });
  return {
    draft: {
      widthMm: format.widthMm,
      heightMm: format.heightMm,
      title: sheetName,
      items: [
        { kind: 'anchor', name: sheetAnchor(tile), at: [0, 0] },
        figure(description, map.items),
        ...(map.blank ? [blankNote(format.map, propertyExtent(survey, project) === null, f)] : []),
        ...frame,
        ...onward,
        ...panelFrame(format.frame, format.columns),
        ...panel.items,
      ],
      pageNumber: panel.pageNumber,
    },
    left: panel.left,
  };
}

/** A sheet with nothing on it says so, lest somebody take it for a fault of the printer. */
function blankNote([left, top, right, bottom]: PaperBox, isEmpty: boolean, f: Figures): TaggedItem {
  const { nothingDrawn, blank } = f.words.sheets.map.sheet;
  const said = isEmpty ? nothingDrawn : blank;
  const middle = [(left + right) / 2, (top + bottom) / 2] as const;
  return tagged('P', [text(said, middle, { sizePt: letters.title, align: 'centre', halo: 0.6 })]);
}

/** Where a link to a sheet leads. */
export function sheetAnchor({ number }: SheetTile): string {
  return `map-sheet-${number}`;
}

/** "Sheet 3" outside each edge beyond which another sheet carries on. */
function neighbourNotes(tile: SheetTile, [left, top, right, bottom]: PaperBox, f: Figures) {
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
    return [
      text(f.words.sheets.map.sheet.next({ number }), at, {
        sizePt: letters.panel,
        font: 'bold',
        align: 'centre',
        rotationDeg,
      }),
    ];
  });
}
