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
import { dateText } from '../../words/dates.ts';
import { figures as figuresIn, plainWords } from '../../words/figures.ts';
import { roughUnit } from '../../words/numbers/units.ts';
import { formatTape, type Units } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';
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
  const cards = (rows: readonly CrossingRow[], title: string) =>
    rows.flatMap((row) => {
      const { name } = row.built.figures.gateway;
      return textPages(`${title} at ${name}`, cardBlocks(row, input), 'portrait', input);
    });
  return [...cards(buried!, 'Crossing'), ...cards(planned!, 'Planned crossing')];
}

function cardBlocks(row: CrossingRow, input: PackInput): Block[] {
  const { built } = row;
  const { units, placed } = propertyOf(input.project);
  const widthMm = uprightWidthMm(input);
  const points = cardPoints(built, figuresIn(propertyOf(input.project).units));
  const ties = tieTable(points, units);
  const head = words(
    standing(row, units),
    widthMm,
    { sizePt: letters.body, font: 'bold', afterMm: 1.5 },
    input.measure,
  );
  const below = [
    space(2),
    sectionBlock(built, points, units, widthMm),
    space(2),
    ...tableBlocks(pointTable(built, points, input), widthMm, input.measure),
    ...accuracyNote(built, placed, points, widthMm, input),
    ...depthNote(built, units, widthMm, input),
    ...(ties.rows.length > 0 ? [space(2), ...tableBlocks(ties, widthMm, input.measure)] : []),
    ...tieRemarks(points, units).map((remark) => paragraph(remark, widthMm, input.measure)),
    space(2),
    factsBlock(row, units, widthMm, input),
    space(1.5),
    cableRules(row, widthMm, input),
  ];
  const [, top, , bottom] = textRoom('portrait', input.property);
  const taken = [head, ...below].reduce((sum, block) => sum + block.heightMm, 0);
  const heightMm = Math.min(planHeightMm.most, Math.max(planHeightMm.least, bottom - top - taken - 1));
  return [head, topBlock(built, points, heightMm, input), ...below];
}

/** What the live cable must be and must not lie with; louder where the record names such a cable. */
function cableRules({ built: { record } }: CrossingRow, widthMm: number, { measure }: PackInput): Block {
  const named = cablesNamed(record?.alsoInTrench ?? '');
  const head = named && named.conduit !== 'own' ? `Another cable is recorded here (${named.words.join(', ')}). ` : '';
  const font = head === '' ? 'regular' : 'bold';
  const cables = plainWords().power.conductors;
  return words(
    `${head}${cables.oneConduit} ${cables.ratingCaution}`,
    widthMm,
    { sizePt: letters.small, font },
    measure,
  );
}

/** The one thing to know first: how far this card can be trusted. */
function standing({ built, lacks }: CrossingRow, units: Units): string {
  if (!built.inGround)
    return 'Planned, not in the ground as far as this file knows. Everything here is as drawn, and nothing lies there.';
  const joints = built.record?.jointsUnderground ?? 0;
  const joined =
    joints > 0
      ? ` ${joints === 1 ? 'A joint lies' : `${joints} joints lie`} underground: look there first for a fault.`
      : '';
  const missing = lacks.length > 0 ? ` Not recorded: ${lacks.join(', ')}.` : '';
  const marked =
    built.figures.crossing.status === 'planned'
      ? ' It is marked planned, yet it was recorded: it counts as in the ground.'
      : '';
  return `${figuresIn(units).say(certaintyInWords(built))}${marked}${joined}${missing}`;
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
  const { placed, units } = propertyOf(input.project);
  if (!placed) {
    const block = words(
      'The property has no place on earth yet, so there is no code with its coordinates.',
      right - left,
      { sizePt: letters.table },
      input.measure,
    );
    return [...block.paint([left, top])];
  }
  const at = input.survey.plane.toLonLat(middleOfTrench(built));
  const uri = geoUri(at);
  const what = built.courses.length > 1 ? 'gateway: where the trench lies is not certain' : 'middle of the trench';
  const caption = words(
    `Scan for the ${what}. A phone is off by some ${roughUnit(units)}: dig by the ties.`,
    right - left,
    { sizePt: letters.small },
    input.measure,
  );
  return [
    qrSign(input.makeQr(uri), [left - 3, top - 3], qrMm + 3, `QR code of ${uri}`),
    tagged('P', [text(uri, [left, top + qrMm], { sizePt: letters.panel, font: 'figures' })]),
    ...caption.paint([left, top + qrMm + 1.6]),
  ];
}

function photoItems(built: CrossingAsBuilt, [left, top, right, bottom]: PaperBox, input: PackInput): Item[] {
  const photos = [...input.project.photo.values()].filter(({ of }) => of?.id === built.figures.crossing.id);
  const first = photos.find(({ thumbId }) => input.photoBytes(thumbId) !== null);
  const frame: PaperBox = [left, top + codeHeightMm, right, bottom - 4];
  if (!first) {
    const [x, y] = [(frame[0] + frame[2]) / 2, (frame[1] + frame[3]) / 2];
    return [
      box(frame, null, stroke(pen.hairline)),
      tagged('P', [text('No photo', [x, y], { sizePt: letters.table, align: 'centre' })]),
    ];
  }
  const taken = first.takenAt === null ? '' : `, ${dateText(first.takenAt)}`;
  const more = photos.length > 1 ? ` (${photos.length - 1} more in the file)` : '';
  const caption = `${first.caption || 'Photo'}${taken}${more}`;
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

function sectionBlock(built: CrossingAsBuilt, points: readonly CardPoint[], units: Units, widthMm: number): Block {
  return {
    heightMm: sectionHeightMm,
    paint: ([x, y]) => [cardSection(built, points, [x, y, x + widthMm, y + sectionHeightMm], units)],
  };
}

/** Where each lettered point is: from the gate, and on earth. */
export function pointTable(
  built: CrossingAsBuilt,
  points: readonly CardPoint[],
  { project, survey }: Pick<PackInput, 'project' | 'survey'>,
): Table {
  const { units, placed } = propertyOf(project);
  return {
    columns: [
      { title: '', strong: true },
      { title: 'Point' },
      { title: 'Found by' },
      { title: 'Along the opening', align: 'right' },
      { title: 'Off it, to the', align: 'right' },
      ...(placed
        ? [
            { title: 'Latitude', unit: 'WGS 84', align: 'right' as const },
            { title: 'Longitude', unit: 'WGS 84', align: 'right' as const },
          ]
        : [
            { title: 'East on the grid', align: 'right' as const },
            { title: 'North on the grid', align: 'right' as const },
          ]),
      { title: 'Within', unit: '19 in 20', align: 'right' },
    ],
    rows: points.flatMap(({ letter, label, places, solved }): string[][] => {
      const by = solved ? foundBy(solved) : 'drawn only';
      if (places.length === 0) return [[letter, label, by, '', '', '', '', 'not known']];
      return places.map(({ name, xy, withinM }) => {
        const at = survey.plane.toLonLat(xy);
        const { alongM, leftM } = offsetOf(xy, built.shape);
        return [
          name,
          label,
          by,
          formatTape(alongM, units),
          `${formatTape(Math.abs(leftM), units)} ${figuresIn(units).words.things.compass[sideOfOpening(built.shape, leftM)]}`,
          ...(placed
            ? [latitudeText(at[1]), longitudeText(at[0])]
            : [formatTape(xy[0], units), formatTape(xy[1], units)]),
          withinM === null ? 'not known' : formatTape(withinM, units),
        ];
      });
    }),
  };
}

function foundBy({ by, basis }: SolvedPoint): string {
  const how = { ties: 'ties', offset: 'tape, along and off', gps: 'GPS' }[by ?? 'ties'];
  if (basis === 'ambiguous') return `${how}, side not said`;
  return basis === 'contradictory' ? `${by ? `${how}; ` : ''}ties that do not meet` : how;
}

function accuracyNote(
  { shape }: CrossingAsBuilt,
  placed: boolean,
  points: readonly CardPoint[],
  widthMm: number,
  { measure }: PackInput,
): Block[] {
  const { compass } = plainWords().things;
  const measured = points.some(({ solved }) => solved);
  const said = [
    `Along is from the ${compass[postSide(shape, 'start')]} post towards the ${compass[postSide(shape, 'end')]} one.`,
    measured ? '“Within” is against the posts that the point was taped from.' : '',
    placed ? 'How well the property itself lies on earth is not known: coordinates are as drawn.' : '',
  ].filter((part) => part !== '');
  return [space(1), words(said.join(' '), widthMm, { sizePt: letters.small, afterMm: 0.5 }, measure)];
}

/** How deep it lies; and what was measured where there is no trench. */
function depthNote(built: CrossingAsBuilt, units: Units, widthMm: number, { measure }: PackInput): Block[] {
  const depth = depthOf(built);
  const leftOut = leftOutInWords(depth, built.lengthM);
  const { say } = figuresIn(units);
  const said = `Depth: ${say(depthInWords(depth))}. ${leftOut ? say(leftOut) : ''}`;
  return [space(1), paragraph(said.trim(), widthMm, measure)];
}

/** Every tape distance, a row for each point. */
export function tieTable(points: readonly CardPoint[], units: Units): Table {
  return {
    columns: [{ title: '', strong: true }, { title: 'Taped' }, { title: 'Tapes off by', align: 'right' }],
    rows: points.flatMap(({ letter, solved }) => {
      if (!solved || solved.ties.length === 0) return [];
      const taped = solved.ties.map(
        ({ name, gone, movedM, distanceM, seM }) =>
          `${held(formatTape(distanceM, units))} from ${figuresIn(units).say(postThen({ name, gone, movedM }))} (±${held(formatTape(seM, units))})`,
      );
      if (solved.basis === 'contradictory') return [[letter, taped.join('; '), 'do not meet']];
      const fix = solved.places[0]?.fix;
      const worst = fix && solved.ties.length > 2 ? largestOf(fix.residualsM.map(Math.abs)) : null;
      return [[letter, taped.join('; '), worst === null ? 'not checked' : formatTape(worst, units)]];
    }),
  };
}

/** What must be said of ties that do not simply fix their point. */
function tieRemarks(points: readonly CardPoint[], units: Units): string[] {
  const open = points
    .filter(({ solved }) => solved?.basis === 'ambiguous')
    .map(({ letter, places }) => `${letter} (its places are ${formatTape(apartM(places), units)} apart)`);
  const others = points.flatMap(({ letter, solved }) => {
    if (!solved || solved.ties.length === 0 || solved.basis === 'ambiguous') return [];
    if (solved.basis === 'contradictory') return [`${letter}: ${figuresIn(units).say(doNotMeetInWords(solved))}`];
    const plain = solved.by === 'ties' && solved.places[0]?.fix;
    return plain ? [] : [`${letter}: ${figuresIn(units).say(tiesInWords(solved))}`];
  });
  return [
    ...(open.length > 0 ? [`These tapes fit two places each, and nobody said which: ${open.join(', ')}.`] : []),
    ...others,
  ];
}

function factsBlock({ built }: CrossingRow, units: Units, widthMm: number, input: PackInput): Block {
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
  const conductor = cable ? figuresIn(propertyOf(input.project).units).say(cable.name) : 'cable of an unknown kind';
  const f = figuresIn(units);
  const { compass } = f.words.things;
  const state = f.say(stateInWords(crossing.status, built.inGround));
  const joints = record?.jointsUnderground;
  const made = input.project.builtMark.get(`built:crossing:${crossing.id}`);
  const left: Fact[] = [
    {
      name: 'State',
      value: made?.date ? `${state}, ${dateText(made.date)}${made.by ? `, by ${made.by}` : ''}` : state,
    },
    { name: 'Pipe', value: `${crossing.pipeBoreMm} mm bore, about ${formatTape(pipeLengthM(pipe), units)}` },
    { name: 'Live cable', value: `${conductor}, about ${formatTape(liveCableLengthM(pipe, crossing.tailM), units)}` },
    { name: 'Earth cable', value: crossing.earth ? `about ${formatTape(earthM, units)}` : 'none' },
    { name: 'Riser ends sealed', value: yesNo(crossing.sealed) },
    {
      name: 'Joints underground',
      value:
        joints == null ? 'not noted' : joints === 0 ? 'none' : `${joints}: ${record!.jointsNote || 'place not noted'}`,
    },
  ];
  const right: Fact[] = [
    {
      name: `${capital(compass[postSide(built.shape, 'start')])} riser on`,
      value: record?.risers.start || 'not noted',
    },
    { name: `${capital(compass[postSide(built.shape, 'end')])} riser on`, value: record?.risers.end || 'not noted' },
    { name: 'Also in the trench', value: record?.alsoInTrench || 'not noted' },
    { name: 'Soil', value: record?.soil || 'not noted' },
    { name: 'Recorded', value: recordedWords(record?.recordedBy ?? '', record?.recordedOn ?? null) },
    { name: 'Notes', value: [record?.note, crossing.note].filter((note) => note?.trim()).join('\n') || 'none' },
  ];
  const columnMm = (widthMm - 6) / 2;
  return sideBySide(facts(left, columnMm, input.measure), facts(right, columnMm, input.measure), columnMm + 6);
}

function yesNo(value: boolean | null): string {
  return value === null ? 'not noted' : value ? 'yes' : 'no';
}

function recordedWords(by: string, on: string | null): string {
  if (by === '' && on === null) return 'not noted';
  return [by === '' ? '' : `by ${by}`, on === null ? '' : dateText(on)].filter((part) => part !== '').join(', ');
}
