import type { PackPart } from '../../api/packOptions.ts';
import type { Page } from '../../drawing/displayList.ts';
import { crossingSchedulePages } from '../crossingSchedulePages.ts';
import { paddockTablePages } from '../paddockTablePages.ts';
import { numberPages, type PageDraft } from '../pageDraft.ts';
import { sectionTablePages } from '../sectionTablePages.ts';
import { switchRegisterPages } from '../switchRegisterPages.ts';
import { testSheetPages } from '../testSheetPages.ts';
import { changePages } from './changePages.ts';
import { type Content, coverPages } from './coverPage.ts';
import { crossingCardPages } from './crossingCardPages.ts';
import { gateTagPages } from './gateTagPages.ts';
import { leftPages } from './leftPages.ts';
import { materialPages } from './materialPages.ts';
import type { PackInput } from './packInput.ts';
import { packMapPages } from './packMap.ts';
import { powerPages } from './powerPages.ts';
import { testResultPages } from './testResultPages.ts';

interface Part {
  readonly part: Exclude<PackPart, 'geoJson'>;
  readonly pages: (input: PackInput) => PageDraft[];
}

/** In the order in which they are bound. */
const parts: readonly Part[] = [
  { part: 'map', pages: packMapPages },
  {
    part: 'switches',
    pages: (input) => {
      const { project, survey } = input;
      return [
        ...sectionTablePages(project, survey, input),
        ...paddockTablePages(project, survey, input),
        ...switchRegisterPages(project, survey, input),
      ];
    },
  },
  {
    part: 'crossings',
    pages: (input) => [
      ...crossingSchedulePages(input.project, input.survey, input),
      ...crossingCardPages(input),
      ...leftPages(input),
    ],
  },
  {
    part: 'tests',
    pages: (input) => [
      ...testResultPages(input),
      ...testSheetPages(input.project, input.survey, input.testSheets, input),
    ],
  },
  { part: 'power', pages: powerPages },
  { part: 'materials', pages: materialPages },
  { part: 'changes', pages: changePages },
  { part: 'tags', pages: gateTagPages },
];

/**
 * All pages of a handover pack, the cover with the list of contents first.
 * @throws SheetProblem where the map can't be made as asked.
 */
export function layoutPack(input: PackInput): Page[] {
  const chosen = parts.filter(({ part }) => input.options.parts.includes(part));
  const made = chosen
    .map(({ part, pages }) => ({ title: input.f.words.sheets.pack.parts[part], drafts: pages(input) }))
    .filter(({ drafts }) => drafts.length > 0);
  const contents = (coverCount: number): Content[] => {
    let page = coverCount + 1;
    return made.map(({ title, drafts }) => {
      const content = { title, page };
      page += drafts.length;
      return content;
    });
  };
  // The cover's own length does not hang on the page numbers in it.
  const coverCount = coverPages(contents(1), input).length;
  return numberPages([...coverPages(contents(coverCount), input), ...made.flatMap(({ drafts }) => drafts)], input.f);
}
