import type { Item, PaperPoint } from '../../drawing/displayList.ts';
import { box, circle, stroke, tagged, text } from '../../drawing/paint.ts';
import { ink, letters, pen } from '../../drawing/style.ts';
import { cablesNamed } from '../../electrical/conductors/otherCables.ts';
import { alsoInTrench } from '../../locate/alsoInTrench.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { depthOf } from '../../locate/depth.ts';
import { depthInWords } from '../../locate/depthWords.ts';
import { placeNames, postThen } from '../../locate/tieWords.ts';
import { propertyOf } from '../../model/project.ts';
import type { CrossingRow } from '../../record/crossingRegister.ts';
import { figures } from '../../words/figures.ts';
import { formatTape, type Units } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, words } from '../flow/block.ts';
import { textPage, textRoom } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { middleOfTrench } from './cardPoints.ts';
import { geoUri } from './geoUri.ts';
import { held } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';
import { qrSign } from './qrSign.ts';

const tagMm = { width: 91, height: 60 } as const;
const gapMm = 4;
const columns = 2;
const rows = 4;
const qrMm = 34;
/** Between the gateway's name and the foot. */
const bodyHeightMm = tagMm.height - 28;

/** Tags to cut out, laminate and fix to the gate: what lies below, and a code with its coordinates. Only of what is in the ground. */
export function gateTagPages(input: PackInput): PageDraft[] {
  const perPage = columns * rows;
  const built = input.crossings.filter(({ built: crossing }) => crossing.inGround);
  const pages: PageDraft[] = [];
  for (let from = 0; from < built.length; from += perPage) {
    const own = built.slice(from, from + perPage);
    pages.push(textPage('Gate tags to cut out', tagSheet(own, input), 'portrait', input, from / perPage));
  }
  return pages;
}

function tagSheet(crossings: readonly CrossingRow[], input: PackInput): Item[] {
  const [left, top] = textRoom('portrait', input.property);
  return crossings.flatMap((row, i) => {
    const x = left + (i % columns) * (tagMm.width + gapMm);
    const y = top + Math.floor(i / columns) * (tagMm.height + gapMm);
    return tag(row, [x, y], input);
  });
}

function tag({ built }: CrossingRow, [x, y]: PaperPoint, input: PackInput): Item[] {
  const { placed, units, name } = propertyOf(input.project);
  const f = figures(units);
  const { gateway } = built.figures;
  const uri = geoUri(input.survey.plane.toLonLat(middleOfTrench(built)));
  const innerMm = tagMm.width - (placed ? qrMm : 0) - 8;
  const size = [30, 24, 18, 14, 11].find((pt) => input.measure(gateway.name, 'bold', pt) <= innerMm - 8) ?? 9;
  const first = [
    `Live cable buried ${built.movedM > 0 ? 'near here' : 'here'}: ${heldFigures(f.say(depthInWords(depthOf(built))))}.`,
    ...movedInWords(built, units),
  ];
  const also = alsoInTrench(built.record);
  const others = also && cablesNamed(built.record?.alsoInTrench ?? '') ? f.say(also) : '';
  const last = 'Do not dig. Energiser off, fence proven dead, other services located first.';
  const body = fitting(
    [
      [...first, others, bendInWords(built, units), ...feetInWords(built, f), last],
      [...first, others === '' ? '' : otherCables, moreOnCard, last],
    ],
    innerMm,
    input,
  );
  const foot = words(
    `${name}${input.property.invented ? ' (invented example)' : ''}`,
    tagMm.width - 8,
    { sizePt: letters.small },
    input.measure,
  );
  return [
    box([x, y, x + tagMm.width, y + tagMm.height], null, stroke(pen.hairline, { dash: [1.5, 1] })),
    circle([x + tagMm.width / 2, y + 5], 2.2, ink.white, stroke(pen.hairline)),
    tagged('P', [text(gateway.name, [x + 4, y + 17], { sizePt: size, font: 'bold' })]),
    ...body.paint([x + 4, y + 21]),
    ...foot.paint([x + 4, y + tagMm.height - 5]),
    ...(placed
      ? [
          qrSign(input.makeQr(uri), [x + tagMm.width - qrMm - 2, y + 12], qrMm, `QR code of ${uri}`),
          tagged('P', [
            text(uri, [x + tagMm.width - 4, y + 12 + qrMm + 2], {
              sizePt: letters.small,
              align: 'right',
              font: 'figures',
            }),
          ]),
        ]
      : []),
  ];
}

const otherCables = 'Other cables lie in this trench.';
const moreOnCard = 'Its tapes are more than this tag holds: find it by its card in the pack.';

/** The first of the texts that stays on the tag, in smaller letters where it is much: half a tape is worse than none. */
function fitting(texts: readonly (readonly string[])[], widthMm: number, { measure }: PackInput): Block {
  const sizes = [letters.body, letters.table, letters.panel, letters.small];
  const blocks = texts.flatMap((said) => {
    const whole = said.filter((each) => each !== '').join('\n');
    return sizes.map((sizePt) => words(whole, widthMm, { sizePt }, measure));
  });
  return blocks.find(({ heightMm }) => heightMm <= bodyHeightMm) ?? blocks.at(-1)!;
}

/** A range and its unit are not parted at the end of a line. */
function heldFigures(words: string): string {
  return words.replace(/[\d.,’\u00a0\u202f]+( to [\d.,’\u00a0\u202f]+)? (m|ft)\b/, held);
}

/** A tag hangs at the gate: where that was moved the cable is not below it. */
function movedInWords({ movedM }: CrossingAsBuilt, units: Units): string[] {
  return movedM > 0
    ? [`The gate was moved: the cable lies where it stood, up to ${held(formatTape(movedM, units))} from here.`]
    : [];
}

/** What is open of the riser feet, for the bend alone does not tell where the trench runs. */
function feetInWords({ points }: CrossingAsBuilt, f: Figures): string[] {
  return points.flatMap(({ point, basis, label, places }) => {
    if (point.role === 'bend') return [];
    if (basis === 'contradictory') return [`${capital(f.say(label))}: its tapes do not meet.`];
    return basis === 'ambiguous'
      ? [`${capital(f.say(label))}: on the ${placeNames(places).map(f.say).join(' or the ')}: not said which.`]
      : [];
  });
}

/** The tapes of the bend, with which side it lies on; and what is wrong with them, for a tag is all that some will read. */
function bendInWords({ points }: CrossingAsBuilt, units: Units): string {
  const f = figures(units);
  const bend = points.find(({ point, ties }) => point.role === 'bend' && ties.length > 0);
  if (!bend) return 'Not taped: find it with care.';
  const { ties, basis, places } = bend;
  const tapes = ties.map((tie) => `${held(formatTape(tie.distanceM, units))} from ${f.say(postThen(tie))}`).slice(0, 3);
  const more = ties.length > 3 ? ` and ${ties.length - 3} more` : '';
  const said = `Bend: ${tapes.join(', ')}${more}`;
  if (basis === 'contradictory') return `${said}: these tapes do not meet. Find it with care.`;
  if (basis === 'ambiguous')
    return `${said}, on the ${placeNames(places).map(f.say).join(' or the ')}: not said which.`;
  const side = places[0]?.side;
  return side ? `${said}, on the ${f.words.locate.points.side({ side })}.` : `${said}.`;
}
