import type { Item, PaperBox } from '../../drawing/displayList.ts';
import { box, stroke, tagged, text } from '../../drawing/paint.ts';
import { letters, pen } from '../../drawing/style.ts';
import { conductorById } from '../../electrical/conductors/conductorLibrary.ts';
import { cablesNamed } from '../../electrical/conductors/otherCables.ts';
import { earthCableLengthM, liveCableLengthM, pipeLengthM } from '../../geometry/conduit.ts';
import { certaintyInWords, stateInWords } from '../../locate/certaintyWords.ts';
import { postSide, sideOfOpening } from '../../locate/compass.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { depthOf } from '../../locate/depth.ts';
import { depthInWords, leftOutInWords } from '../../locate/depthWords.ts';
import { offsetOf, type SolvedPoint } from '../../locate/ties.ts';
import { apartM, doNotMeetInWords, postThen, tiesInWords } from '../../locate/tieWords.ts';
import { largestOf } from '../../model/extremes.ts';
import { propertyOf } from '../../model/project.ts';
import type { Photo } from '../../model/recordThings.ts';
import type { CrossingRow } from '../../record/crossingRegister.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, space, words } from '../flow/block.ts';
import { type Table, tableBlocks } from '../flow/table.ts';
import { textPages, textRoom } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { latitudeText, longitudeText } from '../placeText.ts';
import { cardPlan } from './cardPlan.ts';
import { type CardPoint, cardPoints, middleOfTrench } from './cardPoints.ts';
import { cardSection } from './cardSection.ts';
import { geoUri } from './geoUri.ts';
import { type Fact, facts, held, paragraph, sideBySide, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';
import { qrSign } from './qrSign.ts';

const planWidthMm = 120;
/** Of the plan: as much as fits on one page with all the rest. */
const planHeightMm = { least: 66, most: 94 };
const sectionHeightMm = 42;
const qrMm = 36;
/** The code with what stands below it; the photo has the rest of the plan's height. */
const codeHeightMm = 48;

/**
 * A card for each crossing in the ground: all that somebody needs who stands there with a tape and a spade. Those that
 * are only planned follow, and say so.
 */
export function crossingCardPages(input: PackInput): PageDraft[] {
  const [buried, planned] = [true, false].map((inGround) =>
    input.crossings.filter(({ built }) => built.inGround === inGround),
  );
  const { crossing, plannedCrossing } = input.f.words.sheets.card;
  const cards = (rows: readonly CrossingRow[], title: typeof crossing) =>
    rows.flatMap((row) => {
      const { name } = row.built.figures.gateway;
      return textPages(title({ gateway: name }), cardBlocks(row, input), 'portrait', input);
    });
  return [...cards(buried!, crossing), ...cards(planned!, plannedCrossing)];
}

function cardBlocks(row: CrossingRow, input: PackInput): Block[] {
  const { built } = row;
  const { f } = input;
  const { placed } = propertyOf(input.project);
  const widthMm = uprightWidthMm(input);
  const points = cardPoints(built, f);
  const ties = tieTable(points, f);
  const head = words(standing(row, f), widthMm, { sizePt: letters.body, font: 'bold', afterMm: 1.5 }, input.measure);
  const below = [
    space(2),
    sectionBlock(built, points, widthMm, f),
    space(2),
    ...tableBlocks(pointTable(built, points, input), widthMm, input.measure),
    ...accuracyNote(built, placed, points, widthMm, input),
    ...depthNote(built, widthMm, input),
    ...(ties.rows.length > 0 ? [space(2), ...tableBlocks(ties, widthMm, input.measure)] : []),
    ...tieRemarks(points, f).map((remark) => paragraph(remark, widthMm, input.measure)),
    space(2),
    factsBlock(row, widthMm, input),
    space(1.5),
    cableRules(row, widthMm, input),
  ];
  const [, top, , bottom] = textRoom('portrait', input.property);
  const taken = [head, ...below].reduce((sum, block) => sum + block.heightMm, 0);
  const heightMm = Math.min(planHeightMm.most, Math.max(planHeightMm.least, bottom - top - taken - 1));
  return [head, topBlock(built, points, heightMm, input), ...below];
}

/** What the live cable must be and must not lie with; louder where the record names such a cable. */
function cableRules({ built: { record } }: CrossingRow, widthMm: number, { f, measure }: PackInput): Block {
  const named = cablesNamed(record?.alsoInTrench ?? '');
  const head = named && named.conduit !== 'own' ? [f.words.sheets.card.otherCable({ words: named.words })] : [];
  const cables = f.words.power.conductors;
  const font = head.length === 0 ? 'regular' : 'bold';
  const said = f.words.things.sentences({ all: [...head, cables.oneConduit, cables.ratingCaution] });
  return words(said, widthMm, { sizePt: letters.small, font }, measure);
}

/** The one thing to know first: how far this card can be trusted. */
function standing({ built, lacks }: CrossingRow, f: Figures): string {
  const said = f.words.sheets.card;
  if (!built.inGround) return said.planned;
  const joints = built.record?.jointsUnderground ?? 0;
  const all = [
    f.say(certaintyInWords(built)),
    ...(built.figures.crossing.status === 'planned' ? [said.markedPlanned] : []),
    ...(joints > 0 ? [said.joints({ count: joints })] : []),
    ...(lacks.length > 0 ? [said.lacks({ what: lacks.map(f.say) })] : []),
  ];
  return f.words.things.sentences({ all });
}

function topBlock(built: CrossingAsBuilt, points: readonly CardPoint[], heightMm: number, input: PackInput): Block {
  return {
    heightMm,
    paint: ([x, y]) => {
      const plan = cardPlan(built, points, [x, y, x + planWidthMm, y + heightMm], input);
      const side: PaperBox = [x + planWidthMm + 3, y, x + uprightWidthMm(input), y + heightMm];
      return [...plan.items, ...codeItems(built, side, input), ...photoItems(built, side, input)];
    },
  };
}

/** The QR code with what it holds, or why there is none. */
function codeItems(built: CrossingAsBuilt, [left, top, right]: PaperBox, input: PackInput): Item[] {
  const { placed } = propertyOf(input.project);
  const { card: said, pack } = input.f.words.sheets;
  if (!placed) {
    const block = words(said.noPlaceOnEarth, right - left, { sizePt: letters.table }, input.measure);
    return [...block.paint([left, top])];
  }
  const at = input.survey.plane.toLonLat(middleOfTrench(built));
  const uri = geoUri(at);
  const caption = words(
    built.courses.length > 1 ? said.scanGateway(null) : said.scanTrench(null),
    right - left,
    { sizePt: letters.small },
    input.measure,
  );
  return [
    qrSign(input.makeQr(uri), [left - 3, top - 3], qrMm + 3, pack.qrCode({ uri })),
    tagged('P', [text(uri, [left, top + qrMm], { sizePt: letters.panel, font: 'figures' })]),
    ...caption.paint([left, top + qrMm + 1.6]),
  ];
}

function photoItems(built: CrossingAsBuilt, [left, top, right, bottom]: PaperBox, input: PackInput): Item[] {
  const said = input.f.words.sheets.card;
  const photos = [...input.project.photo.values()].filter(({ of }) => of?.id === built.figures.crossing.id);
  const first = photos.find(({ thumbId }) => input.photoBytes(thumbId) !== null);
  const frame: PaperBox = [left, top + codeHeightMm, right, bottom - 4];
  if (!first) {
    const [x, y] = [(frame[0] + frame[2]) / 2, (frame[1] + frame[3]) / 2];
    return [
      box(frame, null, stroke(pen.hairline)),
      tagged('P', [text(said.noPhoto, [x, y], { sizePt: letters.table, align: 'centre' })]),
    ];
  }
  const caption = said.photo({ caption: first.caption, takenAt: first.takenAt, more: photos.length - 1 });
  const shown = words(caption, right - left, { sizePt: letters.small }, input.measure);
  return [
    {
      kind: 'tagged',
      role: 'Figure',
      alternative: caption,
      items: [
        { kind: 'image', box: fitted(first, frame), bytes: input.photoBytes(first.thumbId)!, alternative: caption },
      ],
    },
    ...shown.paint([left, bottom - 3.6]),
  ];
}

/** The largest box of the photo's shape in the middle of a frame. */
export function fitted(
  { widthPx, heightPx }: Pick<Photo, 'widthPx' | 'heightPx'>,
  [left, top, right, bottom]: PaperBox,
): PaperBox {
  const scale = Math.min((right - left) / widthPx, (bottom - top) / heightPx);
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  return [x - (widthPx * scale) / 2, y - (heightPx * scale) / 2, x + (widthPx * scale) / 2, y + (heightPx * scale) / 2];
}

function sectionBlock(built: CrossingAsBuilt, points: readonly CardPoint[], widthMm: number, f: Figures): Block {
  return {
    heightMm: sectionHeightMm,
    paint: ([x, y]) => [cardSection(built, points, [x, y, x + widthMm, y + sectionHeightMm], f)],
  };
}

/** Where each lettered point is: from the gate, and on earth. */
export function pointTable(
  built: CrossingAsBuilt,
  points: readonly CardPoint[],
  { project, survey, f }: Pick<PackInput, 'project' | 'survey' | 'f'>,
): Table {
  const { placed } = propertyOf(project);
  const { card: said, cells, common } = f.words.sheets;
  return {
    columns: [
      { title: '', strong: true },
      { title: said.point },
      { title: said.foundBy },
      { title: said.alongOpening, align: 'right' },
      { title: said.offIt, align: 'right' },
      ...(placed
        ? [
            { title: said.latitude, unit: common.wgs84, align: 'right' as const },
            { title: said.longitude, unit: common.wgs84, align: 'right' as const },
          ]
        : [
            { title: said.east, align: 'right' as const },
            { title: said.north, align: 'right' as const },
          ]),
      { title: said.within, unit: said.mostly, align: 'right' },
    ],
    rows: points.flatMap(({ letter, label, places, solved }): string[][] => {
      const by = solved ? foundBy(solved, f) : said.drawnOnly;
      if (places.length === 0) return [[letter, label, by, '', '', '', '', cells.notKnown]];
      return places.map(({ name, xy, withinM }) => {
        const at = survey.plane.toLonLat(xy);
        const { alongM, leftM } = offsetOf(xy, built.shape);
        return [
          name,
          label,
          by,
          f.tape(alongM),
          said.off({ offM: Math.abs(leftM), side: sideOfOpening(built.shape, leftM) }),
          ...(placed ? [latitudeText(at[1]), longitudeText(at[0])] : [f.tape(xy[0]), f.tape(xy[1])]),
          withinM === null ? cells.notKnown : f.tape(withinM),
        ];
      });
    }),
  };
}

function foundBy({ by, basis }: SolvedPoint, f: Figures): string {
  const said = f.words.sheets.card;
  if (basis === 'contradictory') return said.doNotMeet({ by });
  return basis === 'ambiguous' ? said.sideNotSaid({ by: by ?? 'ties' }) : said.found[by ?? 'ties'];
}

function accuracyNote(
  { shape }: CrossingAsBuilt,
  placed: boolean,
  points: readonly CardPoint[],
  widthMm: number,
  { f, measure }: PackInput,
): Block[] {
  const { along, againstPosts, asDrawn } = f.words.sheets.card;
  const measured = points.some(({ solved }) => solved);
  const said = [
    along({ from: postSide(shape, 'start'), to: postSide(shape, 'end') }),
    measured ? againstPosts : '',
    placed ? asDrawn : '',
  ].filter((part) => part !== '');
  return [
    space(1),
    words(f.words.things.sentences({ all: said }), widthMm, { sizePt: letters.small, afterMm: 0.5 }, measure),
  ];
}

/** How deep it lies; and what was measured where there is no trench. */
function depthNote(built: CrossingAsBuilt, widthMm: number, { f, measure }: PackInput): Block[] {
  const depth = depthOf(built);
  const leftOut = leftOutInWords(depth, built.lengthM);
  const said = f.words.sheets.card.depth({ depth: f.say(depthInWords(depth)) });
  const all = [said, ...(leftOut ? [f.say(leftOut)] : [])];
  return [space(1), paragraph(f.words.things.sentences({ all }), widthMm, measure)];
}

/** Every tape distance, a row for each point. */
export function tieTable(points: readonly CardPoint[], f: Figures): Table {
  const wording = f.words.sheets.card;
  return {
    columns: [{ title: '', strong: true }, { title: wording.taped }, { title: wording.offBy, align: 'right' }],
    rows: points.flatMap(({ letter, solved }) => {
      if (!solved || solved.ties.length === 0) return [];
      const taped = solved.ties.map((tie) =>
        wording.tape({
          distance: held(f.tape(tie.distanceM)),
          post: f.say(postThen(tie)),
          error: held(f.tape(tie.seM)),
        }),
      );
      if (solved.basis === 'contradictory') return [[letter, taped.join('; '), wording.tapesDoNotMeet]];
      const fix = solved.places[0]?.fix;
      const worst = fix && solved.ties.length > 2 ? largestOf(fix.residualsM.map(Math.abs)) : null;
      return [[letter, taped.join('; '), worst === null ? wording.notChecked : f.tape(worst)]];
    }),
  };
}

/** What must be said of ties that do not simply fix their point. */
function tieRemarks(points: readonly CardPoint[], f: Figures): string[] {
  const { twoPlaces, ofPoint } = f.words.sheets.card;
  const open = points
    .filter(({ solved }) => solved?.basis === 'ambiguous')
    .map(({ letter, places }) => ({ letter, apartM: apartM(places) }));
  const others = points.flatMap(({ letter, solved }) => {
    if (!solved || solved.ties.length === 0 || solved.basis === 'ambiguous') return [];
    if (solved.basis === 'contradictory') return [ofPoint({ letter, said: f.say(doNotMeetInWords(solved)) })];
    const plain = solved.by === 'ties' && solved.places[0]?.fix;
    return plain ? [] : [ofPoint({ letter, said: f.say(tiesInWords(solved)) })];
  });
  return [...(open.length > 0 ? [twoPlaces({ points: open })] : []), ...others];
}

function factsBlock({ built }: CrossingRow, widthMm: number, input: PackInput): Block {
  const { f } = input;
  const { card: said, cells, heads } = f.words.sheets;
  const { record, figures } = built;
  const { crossing } = figures;
  const { lengthM: trenchM } = built;
  const pipe = {
    trenchM,
    depthM: crossing.depthM,
    riserHeightM: crossing.riserHeightM,
    allowanceM: crossing.allowanceM,
  };
  const earthM = earthCableLengthM(pipe, crossing.earthConnectionM);
  const cable = conductorById(crossing.cableId, [...input.project.conductor.values()]);
  const conductor = cable ? f.say(cable.name) : said.unknownCable;
  const state = f.say(stateInWords(crossing.status, built.inGround));
  const joints = record?.jointsUnderground;
  const made = input.project.builtMark.get(`built:crossing:${crossing.id}`);
  const left: Fact[] = [
    {
      name: heads.state,
      value: made?.date ? said.made({ state, on: made.date, by: made.by }) : state,
    },
    { name: said.pipe, value: said.pipeOf({ boreMm: crossing.pipeBoreMm, lengthM: pipeLengthM(pipe) }) },
    {
      name: said.liveCable,
      value: said.cable({ name: conductor, lengthM: liveCableLengthM(pipe, crossing.tailM) }),
    },
    { name: said.earthCable, value: crossing.earth ? said.about({ lengthM: earthM }) : cells.none },
    { name: said.sealed, value: yesNo(crossing.sealed, f) },
    {
      name: said.jointsUnderground,
      value:
        joints == null
          ? cells.notNoted
          : joints === 0
            ? cells.none
            : said.jointsAt({ count: joints, place: record!.jointsNote }),
    },
  ];
  const right: Fact[] = [
    { name: said.riserOn({ side: postSide(built.shape, 'start') }), value: record?.risers.start || cells.notNoted },
    { name: said.riserOn({ side: postSide(built.shape, 'end') }), value: record?.risers.end || cells.notNoted },
    { name: said.alsoInTrench, value: record?.alsoInTrench || cells.notNoted },
    { name: said.soil, value: record?.soil || cells.notNoted },
    { name: said.recorded, value: recordedWords(record?.recordedBy ?? '', record?.recordedOn ?? null, f) },
    { name: said.notes, value: [record?.note, crossing.note].filter((note) => note?.trim()).join('\n') || cells.none },
  ];
  const columnMm = (widthMm - 6) / 2;
  return sideBySide(facts(left, columnMm, input.measure), facts(right, columnMm, input.measure), columnMm + 6);
}

function yesNo(value: boolean | null, f: Figures): string {
  const { notNoted, yes, no } = f.words.sheets.cells;
  return value === null ? notNoted : value ? yes : no;
}

function recordedWords(by: string, on: string | null, f: Figures): string {
  const { notNoted, by: byName } = f.words.sheets.cells;
  if (by === '' && on === null) return notNoted;
  return [by === '' ? '' : byName({ name: by }), on === null ? '' : f.date(on)]
    .filter((part) => part !== '')
    .join(', ');
}
