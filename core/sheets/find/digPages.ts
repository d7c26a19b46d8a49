import type { Item, PaperPoint } from '../../drawing/displayList.ts';
import { letters } from '../../drawing/style.ts';
import { type Dig, type DigAnswer, digCheck, numbered } from '../../locate/digCheck.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { cautions } from '../cautions.ts';
import { type Block, space, words } from '../flow/block.ts';
import { tableBlocks } from '../flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { SheetProblem } from '../sheetProblem.ts';
import { digSketch } from './digSketch.ts';
import { awayInWords, depthOfThing, digSentence, errorInWords, verdictInWords } from './digWords.ts';

const sketchMm = 95;

/** What is buried near a dig, to be taken along. Throws `SheetProblem` where no place was given. */
export function digPages(project: Project, survey: Survey, dig: Dig, input: TextPagesInput): PageDraft[] {
  const { f, property } = input;
  const said = f.words.sheets.dig;
  if (dig.path.length === 0) throw new SheetProblem(said.noPlace, said.noPlaceRemedy);
  const [left, , right] = textRoom('portrait', property);
  const widthMm = right - left;
  const answer = digCheck(project, survey, dig);
  const paragraph = (content: string, font: 'regular' | 'bold' = 'regular') =>
    words(content, widthMm, { sizePt: letters.body, font, afterMm: 1.5 }, input.measure);
  const sketch: Block = {
    heightMm: sketchMm + 3,
    paint: ([x, y]: PaperPoint): readonly Item[] => {
      const look = { survey, f, measure: input.measure, sizePt: letters.body };
      return digSketch(dig, answer, [x, y, x + widthMm, y + sketchMm], look).items;
    },
  };
  const place = property.placed && dig.path[0] ? placeText(dig.path[0]) : null;
  const blocks: Block[] = [
    paragraph(digSentence(answer, dig, f), 'bold'),
    paragraph(said.onlyWhatIsKnown, 'bold'),
    paragraph(said.what({ shape: dig.shape, place, errorM: dig.errorM, withinM: dig.withinM })),
    sketch,
    ...findingTable(answer, widthMm, input),
    space(3),
    ...cautions(f).map((caution) => paragraph(caution)),
    space(8),
    paragraph(said.signatures),
  ];
  return textPages(said.title, blocks, 'portrait', input);
}

function findingTable(answer: DigAnswer, widthMm: number, { measure, f }: TextPagesInput): Block[] {
  const said = f.words.sheets.dig;
  const rows = numbered(answer).map(({ finding, number, overhead }) => [
    number,
    overhead
      ? said.overhead({ name: f.say(finding.thing.name) })
      : [finding.thing.name, ...(finding.thing.beside ? [finding.thing.beside] : [])].map(f.say).join('\n'),
    awayInWords(finding, f),
    errorInWords(finding, f),
    overhead ? '' : depthOfThing(finding, f),
    overhead ? said.keepMachinesClear : finding.overlap ? said.mayLieLoud : verdictInWords(finding, f),
  ]);
  if (rows.length === 0) return [];
  return tableBlocks(
    {
      columns: [
        { title: said.number },
        { title: said.thing, strong: true },
        { title: said.howFar },
        { title: said.howSure },
        { title: said.depth },
        { title: said.verdict, strong: true },
      ],
      rows,
    },
    widthMm,
    measure,
  );
}
