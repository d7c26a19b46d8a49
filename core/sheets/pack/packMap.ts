import type { SheetOptions } from '../../api/sheetOptions.ts';
import { besideMapPages } from '../besideMapPages.ts';
import { indexSheet } from '../indexSheet.ts';
import { planSheets } from '../layoutSheets.ts';
import { mapSheet } from '../mapSheet.ts';
import type { PageDraft } from '../pageDraft.ts';
import { suggestedScales } from '../scales.ts';
import type { PackInput } from './packInput.ts';

/** A pack's maps take no more sheets than this unless a scale is asked for. */
const mostMapSheets = 6;

/** The map sheets at true scale, with their index where there are several. */
export function packMapPages(input: PackInput): PageDraft[] {
  const { project, survey, f, measure, property, date } = input;
  const options = mapOptions(input);
  const tiles = planSheets(project, survey, options, f);
  const sheetInput = { project, survey, options, f, measure };
  const sheets = tiles.map((tile) => mapSheet(sheetInput, tiles, tile));
  const left = sheets.flatMap(({ draft, left: blocks }) => (blocks.length > 0 ? [{ sheet: draft.title, blocks }] : []));
  return [
    ...(tiles.length > 1 ? [indexSheet(sheetInput, tiles)] : []),
    ...sheets.map(({ draft }) => draft),
    ...besideMapPages(left, { property, date, f, measure }),
  ];
}

function mapOptions({ project, survey, options }: PackInput): SheetOptions {
  const { paper, orientation, date } = options;
  const scales = suggestedScales(survey, project, { paper, orientation });
  const chosen = scales.find(({ sheets }) => sheets <= mostMapSheets) ?? scales.at(-1);
  return {
    paper,
    orientation,
    scaleDenominator: options.scaleDenominator ?? chosen?.scaleDenominator ?? 5000,
    centre: null,
    gridM: null,
    withSwitchRegister: false,
    withCrossingSchedule: false,
    withTestSheets: false,
    date,
  };
}
