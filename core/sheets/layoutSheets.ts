import type { SheetOptions } from '../api/sheetOptions.ts';
import type { Page } from '../drawing/displayList.ts';
import type { MeasureText } from '../drawing/words.ts';
import type { Xy } from '../geometry/types.ts';
import { type Project, propertyOf } from '../model/project.ts';
import type { Survey, TestSheet } from '../survey/types.ts';
import type { Figures } from '../words/types.ts';
import { besideMapPages } from './besideMapPages.ts';
import { crossingSchedulePages } from './crossingSchedulePages.ts';
import { propertyExtent } from './extent.ts';
import { indexSheet } from './indexSheet.ts';
import { type MapSheetInput, mapSheet } from './mapSheet.ts';
import { paddockTablePages } from './paddockTablePages.ts';
import { numberPages, type PageDraft } from './pageDraft.ts';
import { fittingScale, scaleText } from './scales.ts';
import { sectionTablePages } from './sectionTablePages.ts';
import { mostSheets, type SheetTile, sheetAround, sheetsCovering, sheetsToCover } from './sheetPlan.ts';
import { SheetProblem } from './sheetProblem.ts';
import { switchRegisterPages } from './switchRegisterPages.ts';
import { testSheetPages } from './testSheetPages.ts';

export interface SheetsInput {
  readonly project: Project;
  readonly survey: Survey;
  readonly testSheets: readonly TestSheet[];
  readonly options: SheetOptions;
  readonly f: Figures;
  readonly measure: MeasureText;
}

/**
 * All pages of a print: the index where there are several map sheets, the map sheets, then the tables and test sheets
 * that were asked for (sections and paddocks come with the register of switches).
 * @throws SheetProblem where the sheets cannot be made as asked.
 */
export function layoutSheets({ project, survey, testSheets, options, f, measure }: SheetsInput): Page[] {
  const property = propertyOf(project);
  const input: MapSheetInput = { project, survey, options, f, measure };
  const tiles = planSheets(project, survey, options, f);
  const sheets = tiles.map((tile) => mapSheet(input, tiles, tile));
  const left = sheets.flatMap(({ draft, left: blocks }) => (blocks.length > 0 ? [{ sheet: draft.title, blocks }] : []));
  const pages = { property, date: options.date, f, measure };
  const drafts: PageDraft[] = [
    ...(tiles.length > 1 ? [indexSheet(input, tiles)] : []),
    ...sheets.map(({ draft }) => draft),
    ...besideMapPages(left, pages),
    ...(options.withSwitchRegister
      ? [
          ...sectionTablePages(project, survey, pages),
          ...paddockTablePages(project, survey, pages),
          ...switchRegisterPages(project, survey, pages),
        ]
      : []),
    ...(options.withCrossingSchedule ? crossingSchedulePages(project, survey, pages) : []),
    ...(options.withTestSheets ? testSheetPages(project, survey, testSheets, pages) : []),
  ];
  return numberPages(drafts, f);
}

/**
 * The map sheets that a print takes: one about the chosen centre, else as many as cover the property.
 * @throws SheetProblem where the scale is no scale, or would take too many sheets.
 */
export function planSheets(project: Project, survey: Survey, options: SheetOptions, f: Figures): SheetTile[] {
  const { scaleDenominator, centre } = options;
  if (!(scaleDenominator >= 1 && scaleDenominator <= 10_000_000)) {
    const { scale, scaleRemedy } = f.words.sheets.map.problem;
    throw new SheetProblem(scale({ scaleDenominator }), scaleRemedy);
  }
  const { toXy } = survey.plane;
  if (centre !== null) return [sheetAround(toXy(centre), options)];
  const extent = propertyExtent(survey, project);
  if (extent === null) return [sheetAround([0, 0], options)];
  const [columns, rows] = sheetsToCover(extent, options);
  if (columns * rows > mostSheets) throw tooManySheets(columns * rows, extent, options, f);
  return sheetsCovering(extent, drawnPaths(project, survey, toXy), options);
}

function tooManySheets(
  count: number,
  extent: NonNullable<ReturnType<typeof propertyExtent>>,
  options: SheetOptions,
  f: Figures,
) {
  const fit = fittingScale(extent, options);
  const { tooMany, farAway, fitsAt, ...papers } = f.words.sheets.map.problem;
  const paper = papers[options.orientation]({ paper: options.paper });
  const scale = scaleText(options.scaleDenominator);
  return new SheetProblem(
    tooMany({ scale, count, paper, most: mostSheets }),
    fit === null ? farAway : fitsAt({ scale: scaleText(fit) }),
  );
}

function drawnPaths(
  project: Project,
  survey: Survey,
  toXy: (place: readonly [number, number]) => Xy,
): (readonly Xy[])[] {
  return [
    ...[...survey.lines.values()].map(({ xy }) => xy),
    ...[...survey.crossings.values()].map(({ path }) => path),
    ...survey.switches.map(({ xy }) => [xy]),
    ...[...project.leadOut.values()].map(({ path }) => path.map(toXy)),
    ...[...project.energiser.values(), ...project.earthField.values()].map(({ at }) => [toXy(at)]),
    ...[...project.post.values()].map(({ at }) => [toXy(at)]),
  ];
}
