import type { Item, PaperPoint } from '../../drawing/displayList.ts';
import { letters } from '../../drawing/style.ts';
import { type Dig, type DigAnswer, digCheck, numbered } from '../../locate/digCheck.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { figures } from '../../words/figures.ts';
import { formatLength } from '../../words/numbers/write.ts';
import { cautions } from '../cautions.ts';
import { type Block, space, words } from '../flow/block.ts';
import { tableBlocks } from '../flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { SheetProblem } from '../sheetProblem.ts';
import { digSketch } from './digSketch.ts';
import {
  awayInWords,
  depthOfThing,
  digSentence,
  errorInWords,
  onlyWhatIsInTheFile,
  verdictInWords,
} from './digWords.ts';

const sketchMm = 95;

/** What is buried near a dig, to be taken along. Throws `SheetProblem` where no place was given. */
export function digPages(project: Project, survey: Survey, dig: Dig, input: TextPagesInput): PageDraft[] {
  if (dig.path.length === 0)
    throw new SheetProblem('No place to dig was given.', 'Draw it on the map, or type a place.');
  const { units, placed } = propertyOf(project);
  const [left, , right] = textRoom('portrait', input.property);
  const widthMm = right - left;
  const answer = digCheck(project, survey, dig);
  const paragraph = (content: string, font: 'regular' | 'bold' = 'regular') =>
    words(content, widthMm, { sizePt: letters.body, font, afterMm: 1.5 }, input.measure);
  const sketch: Block = {
    heightMm: sketchMm + 3,
    paint: ([x, y]: PaperPoint): readonly Item[] => {
      const look = { survey, units, measure: input.measure, sizePt: letters.body };
      return digSketch(dig, answer, [x, y, x + widthMm, y + sketchMm], look).items;
    },
  };
  const place = placed && dig.path[0] ? ` at ${placeText(dig.path[0])}` : '';
  const what = { point: 'A hole', line: 'A trench', area: 'An area' }[dig.shape];
  const blocks: Block[] = [
    paragraph(digSentence(answer, dig, units), 'bold'),
    paragraph(onlyWhatIsInTheFile, 'bold'),
    paragraph(
      `${what}${place}, its own place good to ${formatLength(dig.errorM, units)}. Looked at: everything that may lie within ${formatLength(dig.withinM, units)}.`,
    ),
    sketch,
    ...findingTable(answer, widthMm, input),
    space(3),
    ...cautions(units).map((caution) => paragraph(caution)),
    space(8),
    paragraph(
      'Services located by, date: ______________________      Energiser off and fence proven dead by: ______________________',
    ),
  ];
  return textPages('Dig sheet', blocks, 'portrait', input);
}

function findingTable(answer: DigAnswer, widthMm: number, { property, measure }: TextPagesInput): Block[] {
  const { units } = property;
  const f = figures(units);
  const rows = numbered(answer).map(({ finding, number, overhead }) => [
    number,
    overhead
      ? `${f.say(finding.thing.name)} (overhead)`
      : [finding.thing.name, ...(finding.thing.beside ? [finding.thing.beside] : [])].map(f.say).join('\n'),
    awayInWords(finding, units),
    errorInWords(finding, units),
    overhead ? '' : depthOfThing(finding, units),
    overhead
      ? 'Keep machines clear: ask its owner by how much'
      : finding.overlap
        ? 'MAY LIE IN THE DIG'
        : verdictInWords(finding),
  ]);
  if (rows.length === 0) return [];
  return tableBlocks(
    {
      columns: [
        { title: 'No.' },
        { title: 'What', strong: true },
        { title: 'How far' },
        { title: 'How sure' },
        { title: 'Depth, the shallowest first' },
        { title: 'Verdict', strong: true },
      ],
      rows,
    },
    widthMm,
    measure,
  );
}
