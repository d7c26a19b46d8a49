import type { PaperPoint } from '../../drawing/displayList.ts';
import { letters } from '../../drawing/style.ts';
import { crossingById } from '../../locate/allCrossings.ts';
import { alsoInTrench } from '../../locate/alsoInTrench.ts';
import { certaintyInWords } from '../../locate/certaintyWords.ts';
import { depthHeading, depthInWords, depthThereInShort, leftOutInWords } from '../../locate/depthWords.ts';
import { fateInShort, fateInWords } from '../../locate/inGround/leftWords.ts';
import { type StakeOut, type StakePoint, stakeOut } from '../../locate/stakeOut.ts';
import { fixedPosts } from '../../locate/tieFrom.ts';
import { placeNames } from '../../locate/tieWords.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import type { Project } from '../../model/project.ts';
import type { Survey } from '../../survey/types.ts';
import { figures as figuresIn } from '../../words/figures.ts';
import { formatTape } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, space, words } from '../flow/block.ts';
import { tableBlocks } from '../flow/table.ts';
import { type TextPagesInput, textPages, textRoom } from '../flow/textPages.ts';
import { held } from '../pack/packBlocks.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { SheetProblem } from '../sheetProblem.ts';
import { pointLetter, stakeSketch } from './stakeSketch.ts';
import { pointSureInWords, stepOffset, stepsHeading, tapesInWords } from './stakeWords.ts';

/** Room left for the sketch, at least and at most. */
const sketchMm = { least: 75, most: 135 };

export interface SoughtStake {
  readonly stake: StakeOut;
  /** Null while the crossing is drawn. */
  readonly left: InGround | null;
}

/**
 * How to find the crossing of a gateway, or one left in the ground that is drawn no longer. Throws `SheetProblem` where it
 * is not buried.
 */
export function stakeOutAt(project: Project, survey: Survey, id: string): SoughtStake {
  const sought = crossingById(project, survey, id);
  if (!sought) throw new SheetProblem('This gateway has no buried crossing to find.', 'Choose another gateway.');
  return { stake: stakeOut(sought.crossing, fixedPosts(project, survey)), left: sought.left };
}

/** How to find one crossing again, on one page where its points leave room. */
export function stakeOutPages({ stake, left: gone }: SoughtStake, survey: Survey, input: TextPagesInput): PageDraft[] {
  const { property } = input;
  const f = figuresIn(property.units);
  const [left, top, right, bottom] = textRoom('portrait', property);
  const widthMm = right - left;
  const blocks = wordsBelow(stake, property.placed, widthMm, input);
  const bold = { sizePt: letters.body, font: 'bold', afterMm: 2 } as const;
  const above = [
    ...(gone ? [words(f.say(fateInWords(gone)), widthMm, bold, input.measure)] : []),
    words(f.say(certaintyInWords(stake.crossing)), widthMm, bold, input.measure),
    ...(gone && gone.note.trim() !== ''
      ? [words(gone.note.trim(), widthMm, { sizePt: letters.body, afterMm: 2 }, input.measure)]
      : []),
  ];
  const taken = [...above, ...blocks].reduce((sum, block) => sum + block.heightMm, 0);
  const heightMm = Math.min(sketchMm.most, Math.max(sketchMm.least, bottom - top - taken - 3));
  const sketch: Block = {
    heightMm: heightMm + 3,
    paint: ([x, y]: PaperPoint) => {
      const { units } = property;
      const look = { survey, units, measure: input.measure, sizePt: letters.body };
      return [...stakeSketch(stake, null, [x, y, x + widthMm, y + heightMm], look).items];
    },
  };
  const { figures, inGround } = stake.crossing;
  const title = gone
    ? `To find the ${gone.name} (${f.say(fateInShort(gone))})`
    : inGround
      ? `To find the crossing at ${figures.gateway.name}`
      : `Planned crossing at ${figures.gateway.name}`;
  return textPages(title, [...above, sketch, ...blocks], 'portrait', input);
}

function wordsBelow(stake: StakeOut, placed: boolean, widthMm: number, input: TextPagesInput): Block[] {
  const { measure, property } = input;
  const { units } = property;
  const f = figuresIn(units);
  const points = tableBlocks(
    {
      columns: [
        { title: '', strong: true },
        { title: 'Point' },
        { title: 'Measure' },
        { title: f.say(depthHeading(stake.depth)), align: 'right' },
        { title: 'How sure' },
        ...(placed ? [{ title: 'Position', unit: 'WGS 84' }] : []),
      ],
      rows: stake.points.map((point, i) => [
        pointLetter(i),
        f.say(point.label),
        tapesInWords(point, units),
        held(f.say(depthThereInShort(point.depth))),
        pointSureInWords(point, units),
        ...(placed ? [placesText(point, f)] : []),
      ]),
    },
    widthMm,
    measure,
  );
  const leftOut = leftOutInWords(stake.depth, stake.crossing.lengthM);
  const also = alsoInTrench(stake.crossing.record);
  const depth = words(
    `${capital(f.say(depthInWords(stake.depth)))}. ${leftOut ? f.say(leftOut) : ''} ${also ? f.say(also) : ''}`.trim(),
    widthMm,
    { sizePt: letters.body, afterMm: 1.5 },
    measure,
  );
  const heading = words(
    `Along the straight line from the ${f.say(stake.postNames.start)} to the ${f.say(stake.postNames.end)}`,
    widthMm,
    { sizePt: letters.body, font: 'bold', role: 'H2', afterMm: 1, keepWithNext: true },
    measure,
  );
  const steps = tableBlocks(
    {
      columns: [
        { title: 'From the first post' },
        ...stake.steps.map(({ alongM }) => ({ title: formatTape(alongM, units) })),
      ],
      rows: [
        [stepsHeading(stake), ...stake.steps.map((step) => stepOffset(step, stake, units))],
        [f.say(depthHeading(stake.depth)), ...stake.steps.map((step) => f.say(depthThereInShort(step.depth)))],
      ],
    },
    widthMm,
    measure,
  );
  const caution = words(
    'Energiser off and the fence proven dead before you dig. Locate all other buried services first. Dig by hand near the cable. Level tapes, held to the middle of each post at the ground. Local codes come first.',
    widthMm,
    { sizePt: letters.table, afterMm: 1 },
    measure,
  );
  return [depth, ...points, space(3), ...(stake.steps.length > 0 ? [heading, ...steps, space(2)] : []), caution];
}

/** Where a point is on earth; of several places each with its name. */
function placesText({ places }: StakePoint, f: Figures): string {
  const names = placeNames(places).map(f.say);
  return places.map(({ at }, i) => (places.length > 1 ? `${names[i]!}: ${placeText(at)}` : placeText(at))).join('\n');
}
