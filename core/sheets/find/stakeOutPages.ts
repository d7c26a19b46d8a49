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
export function stakeOutAt(project: Project, survey: Survey, id: string, f: Figures): SoughtStake {
  const sought = crossingById(project, survey, id);
  const { notBuried, notBuriedRemedy } = f.words.sheets.stake;
  if (!sought) throw new SheetProblem(notBuried, notBuriedRemedy);
  return { stake: stakeOut(sought.crossing, fixedPosts(project, survey)), left: sought.left };
}

/** How to find one crossing again, on one page where its points leave room. */
export function stakeOutPages({ stake, left: gone }: SoughtStake, survey: Survey, input: TextPagesInput): PageDraft[] {
  const { property, f } = input;
  const said = f.words.sheets.stake;
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
      const look = { survey, f, measure: input.measure, sizePt: letters.body };
      return [...stakeSketch(stake, null, [x, y, x + widthMm, y + heightMm], look).items];
    },
  };
  const { figures, inGround } = stake.crossing;
  const title = gone
    ? said.left({ name: gone.name, fate: f.say(fateInShort(gone)) })
    : (inGround ? said.crossing : said.planned)({ gateway: figures.gateway.name });
  return textPages(title, [...above, sketch, ...blocks], 'portrait', input);
}

function wordsBelow(stake: StakeOut, placed: boolean, widthMm: number, input: TextPagesInput): Block[] {
  const { measure, f } = input;
  const said = f.words.sheets.stake;
  const { position, wgs84 } = f.words.sheets.common;
  const points = tableBlocks(
    {
      columns: [
        { title: '', strong: true },
        { title: said.point },
        { title: said.measure },
        { title: f.say(depthHeading(stake.depth)), align: 'right' },
        { title: said.howSure },
        ...(placed ? [{ title: position, unit: wgs84 }] : []),
      ],
      rows: stake.points.map((point, i) => [
        pointLetter(i),
        f.say(point.label),
        tapesInWords(point, f),
        held(f.say(depthThereInShort(point.depth))),
        pointSureInWords(point, f),
        ...(placed ? [placesText(point, f)] : []),
      ]),
    },
    widthMm,
    measure,
  );
  const depth = words(
    f.words.things.sentences({
      all: [
        `${capital(f.say(depthInWords(stake.depth)))}.`,
        ...[leftOutInWords(stake.depth, stake.crossing.lengthM), alsoInTrench(stake.crossing.record)].flatMap((each) =>
          each ? [f.say(each)] : [],
        ),
      ],
    }),
    widthMm,
    { sizePt: letters.body, afterMm: 1.5 },
    measure,
  );
  const heading = words(
    said.alongTheLine({ from: f.say(stake.postNames.start), to: f.say(stake.postNames.end) }),
    widthMm,
    { sizePt: letters.body, font: 'bold', role: 'H2', afterMm: 1, keepWithNext: true },
    measure,
  );
  const steps = tableBlocks(
    {
      columns: [{ title: said.fromFirstPost }, ...stake.steps.map(({ alongM }) => ({ title: f.tape(alongM) }))],
      rows: [
        [stepsHeading(stake, f), ...stake.steps.map((step) => stepOffset(step, stake, f))],
        [f.say(depthHeading(stake.depth)), ...stake.steps.map((step) => f.say(depthThereInShort(step.depth)))],
      ],
    },
    widthMm,
    measure,
  );
  const caution = words(said.caution, widthMm, { sizePt: letters.table, afterMm: 1 }, measure);
  return [depth, ...points, space(3), ...(stake.steps.length > 0 ? [heading, ...steps, space(2)] : []), caution];
}

/** Where a point is on earth; of several places each with its name. */
function placesText({ places }: StakePoint, f: Figures): string {
  const names = placeNames(places).map(f.say);
  const { placeAt } = f.words.sheets.stake;
  const placeOf = ({ at }: (typeof places)[number], i: number) =>
    places.length > 1 ? placeAt({ name: names[i]!, place: placeText(at) }) : placeText(at);
  return places.map(placeOf).join('\n');
}
