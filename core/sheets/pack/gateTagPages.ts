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
    pages.push(textPage(input.f.words.sheets.tag.title, tagSheet(own, input), 'portrait', input, from / perPage));
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
  const { placed, name, invented } = propertyOf(input.project);
  const { f } = input;
  const { tag: said, pack } = f.words.sheets;
  const { gateway } = built.figures;
  const uri = geoUri(input.survey.plane.toLonLat(middleOfTrench(built)));
  const innerMm = tagMm.width - (placed ? qrMm : 0) - 8;
  const size = [30, 24, 18, 14, 11].find((pt) => input.measure(gateway.name, 'bold', pt) <= innerMm - 8) ?? 9;
  const first = [
    (built.movedM > 0 ? said.nearHere : said.here)({ depth: heldFigures(f.say(depthInWords(depthOf(built)))) }),
    ...(built.movedM > 0 ? [said.moved({ moved: held(f.tape(built.movedM)) })] : []),
  ];
  const also = alsoInTrench(built.record);
  const others = also && cablesNamed(built.record?.alsoInTrench ?? '') ? f.say(also) : '';
  const body = fitting(
    [
      [...first, others, bendInWords(built, f), ...feetInWords(built, f), said.doNotDig],
      [...first, others === '' ? '' : said.otherCables, said.moreOnCard, said.doNotDig],
    ],
    innerMm,
    input,
  );
  const foot = words(
    invented ? said.invented({ property: name }) : name,
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
          qrSign(input.makeQr(uri), [x + tagMm.width - qrMm - 2, y + 12], qrMm, pack.qrCode({ uri })),
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

/** What is open of the riser feet, for the bend alone does not tell where the trench runs. */
function feetInWords({ points }: CrossingAsBuilt, f: Figures): string[] {
  return points.flatMap(({ point, basis, label, places }) => {
    if (point.role === 'bend') return [];
    const { pointDoesNotMeet, pointOpen } = f.words.sheets.tag;
    const name = capital(f.say(label));
    if (basis === 'contradictory') return [pointDoesNotMeet({ point: name })];
    return basis === 'ambiguous' ? [pointOpen({ point: name, places: placeNames(places).map(f.say) })] : [];
  });
}

/** The tapes of the bend, with which side it lies on; and what is wrong with them, for a tag is all that some will read. */
function bendInWords({ points }: CrossingAsBuilt, f: Figures): string {
  const said = f.words.sheets.tag;
  const bend = points.find(({ point, ties }) => point.role === 'bend' && ties.length > 0);
  if (!bend) return said.notTaped;
  const { ties, basis, places } = bend;
  const tapes = ties
    .slice(0, 3)
    .map((tie) => said.tape({ distance: held(f.tape(tie.distanceM)), post: f.say(postThen(tie)) }));
  const taped = { tapes, more: ties.length - tapes.length };
  if (basis === 'contradictory') return said.bendDoesNotMeet(taped);
  if (basis === 'ambiguous') return said.bendOpen({ ...taped, places: placeNames(places).map(f.say) });
  const side = places[0]?.side;
  return side ? said.bendOnSide({ ...taped, side: f.words.locate.points.side({ side }) }) : said.bend(taped);
}
