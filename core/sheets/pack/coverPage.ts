import type { PaperBox } from '../../drawing/displayList.ts';
import { mapWindow } from '../../drawing/mapWindow.ts';
import { box, circle, figure, lines, stroke, tagged, text } from '../../drawing/paint.ts';
import { ink, letters, pen } from '../../drawing/style.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Xy } from '../../geometry/types.ts';
import { leftInGround } from '../../locate/inGround/leftInGround.ts';
import { propertyOf } from '../../model/project.ts';
import { recordSentence } from '../../record/crossingRegister.ts';
import { differencesFromPlan } from '../../record/differences.ts';
import { coverSentence } from '../../survey/sentences.ts';
import { cautions } from '../cautions.ts';
import { type Block, space, words } from '../flow/block.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { type Fact, facts, heading, paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** One part of the pack in the list of contents. */
export interface Content {
  readonly title: string;
  readonly page: number;
}

const sketchHeightMm = 70;

/** What this is, whose, when; what is in it; and what to heed before anything is touched. */
export function coverPages(contents: readonly Content[], input: PackInput): PageDraft[] {
  const { project, survey, options, f, measure } = input;
  const { pack: said, heads } = f.words.sheets;
  const property = propertyOf(project);
  const widthMm = uprightWidthMm(input);
  const particulars: Fact[] = [
    ...(options.handoverNumber === null ? [] : [{ name: said.handover, value: String(options.handoverNumber) }]),
    { name: heads.date, value: f.date(options.date) },
    { name: said.handedOverBy, value: options.preparedBy || '' },
    { name: said.takenOverBy, value: options.preparedFor || '' },
    ...(options.note.trim() === '' ? [] : [{ name: heads.note, value: options.note }]),
  ];
  const blocks: Block[] = [
    words(property.name, widthMm, { sizePt: 26, font: 'bold', role: 'H1', afterMm: 1 }, measure),
    words(said.subtitle, widthMm, { sizePt: letters.title, afterMm: 4 }, measure),
    paragraph(f.say(coverSentence(survey)), widthMm, measure),
    paragraph(f.say(recordSentence(input.crossings, differencesFromPlan(project, survey).length)), widthMm, measure),
    ...leftSentence(input).map((sentence) => paragraph(sentence, widthMm, measure, 'bold')),
    ...(property.note.trim() === '' ? [] : [paragraph(property.note, widthMm, measure)]),
    space(2),
    ...facts(particulars, widthMm, measure),
    space(5),
    sketchBlock(widthMm, input),
    space(5),
    heading(said.before, widthMm, measure),
    ...cautions(f).map((caution) =>
      words(said.caution({ caution }), widthMm, { sizePt: letters.body, afterMm: 0.6 }, measure),
    ),
    space(4),
    heading(said.contents, widthMm, measure),
    ...contents.map((content) => contentRow(content, widthMm, input)),
    ...(options.parts.includes('geoJson') && property.placed
      ? [space(1), paragraph(said.attached, widthMm, measure)]
      : []),
  ];
  return textPages(said.title, blocks, 'portrait', input);
}

/** What is in the ground and not in the drawing; nothing where all is drawn. */
function leftSentence({ project, f }: PackInput): string[] {
  const left = [...project.inGround.values()].filter(({ fate }) => fate !== 'takenOut');
  if (left.length === 0) return [];
  const live = left.filter(({ fate }) => fate === 'inUse').length;
  return [f.words.sheets.pack.left({ count: left.length, live })];
}

function sketchBlock(widthMm: number, { project, survey, crossings, property, f }: PackInput): Block {
  const said = f.words.sheets.pack;
  const old = leftInGround(project, survey).filter(({ thing, crossing }) => crossing && thing.fate !== 'takenOut');
  return {
    heightMm: sketchHeightMm,
    paint: ([x, y]) => {
      const frame: PaperBox = [x, y, x + widthMm, y + sketchHeightMm];
      const points = [...[...survey.lines.values()].flatMap(({ xy }) => xy), ...old.flatMap(({ path }) => path)];
      const extent = boxAround(points);
      if (!extent) return [];
      const centre: Xy = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2];
      const scale =
        1000 * Math.max((extent[2] - extent[0]) / (widthMm - 8), (extent[3] - extent[1]) / (sketchHeightMm - 8));
      const window = mapWindow(frame, centre, Math.max(1, scale), survey.plane);
      const fences = [...survey.lines.values()].flatMap(({ xy }) => window.clip(xy));
      const marks = [
        ...crossings.map(({ built }) => ({ at: window.toPaper(built.shape.centre), full: built.inGround })),
        ...old.map(({ crossing }) => ({ at: window.toPaper(crossing!.shape.centre), full: true })),
      ];
      const planned = marks.some(({ full }) => !full);
      const described = planned ? said.sketchOfWithPlanned : said.sketchOf;
      return [
        figure(described({ property: property.name }), [
          lines(fences, stroke(pen.sign)),
          ...marks.map(({ at, full }) =>
            full ? circle(at, 0.7, ink.black) : circle(at, 0.9, ink.white, stroke(pen.thin)),
          ),
        ]),
        box(frame, null, stroke(pen.hairline)),
        tagged('P', [
          text(planned ? said.sketchWithPlanned : said.sketch, [x + 2, y + sketchHeightMm - 1.6], {
            sizePt: letters.small,
            ink: ink.soft,
            halo: 0.5,
          }),
        ]),
      ];
    },
  };
}

function contentRow({ title, page }: Content, widthMm: number, { measure }: PackInput): Block {
  const label = words(title, widthMm - 20, { sizePt: letters.body }, measure);
  return {
    heightMm: label.heightMm + 0.6,
    paint: ([x, y]) => [
      ...label.paint([x, y]),
      tagged('P', [
        text(String(page), [x + widthMm, y + 3.2], { sizePt: letters.body, align: 'right', font: 'figures' }),
      ]),
    ],
  };
}
