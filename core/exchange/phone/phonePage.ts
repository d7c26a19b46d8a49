import { mapWindow } from '../../drawing/mapWindow.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { alsoInTrench } from '../../locate/alsoInTrench.ts';
import { leavesOpen } from '../../locate/certainty.ts';
import { certaintyInWords, standingInShort } from '../../locate/certaintyWords.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { type CrossingRow, crossingRows } from '../../locate/crossingSearch.ts';
import {
  depthHeading,
  depthInWords,
  depthThereInShort,
  depthThereInWords,
  leftOutInWords,
} from '../../locate/depthWords.ts';
import { type LeftInGround, leftInGround } from '../../locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../locate/inGround/leftWithin.ts';
import { fateInShort, fateInWords, leftHeading } from '../../locate/inGround/leftWords.ts';
import { type StakeOut, stakeOut } from '../../locate/stakeOut.ts';
import { type FixedPost, fixedPosts } from '../../locate/tieFrom.ts';
import { placeNames } from '../../locate/tieWords.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import { cautions } from '../../sheets/cautions.ts';
import { propertyExtent } from '../../sheets/extent.ts';
import { pointLetter, stakeSketch } from '../../sheets/find/stakeSketch.ts';
import { pointSureInWords, stepOffset, stepsHeading, tapesInWords } from '../../sheets/find/stakeWords.ts';
import { gridDistanceM } from '../../sheets/map/drawGrid.ts';
import { drawMap } from '../../sheets/map/drawMap.ts';
import { placeText } from '../../sheets/placeText.ts';
import { limitsExplained, switchesOff, yardstickSentence } from '../../sheets/yardstickInWords.ts';
import { powerOf } from '../../survey/power/powerOf.ts';
import type { Power } from '../../survey/power/types.ts';
import { nodeAtSwitch, standingOf, yardstickAt } from '../../survey/power/yardstick.ts';
import { cutsOffSentence, feedSentence } from '../../survey/switchInWords.ts';
import type { Survey, SwitchRow } from '../../survey/types.ts';
import { figures } from '../../words/figures.ts';
import { activeLanguage } from '../../words/language.ts';
import type { Figures } from '../../words/types.ts';
import { escapeHtml } from './escapeHtml.ts';
import { phoneScript, phoneScriptHash } from './phoneScript.ts';
import { phoneStyle } from './phoneStyle.ts';
import { svgText } from './svgText.ts';

export interface PhonePhoto {
  readonly crossingId: string;
  readonly caption: string;
  /** JPEG, base64. */
  readonly base64: string;
}

export interface PhonePageInput {
  readonly project: Project;
  readonly survey: Survey;
  /** ISO 8601. */
  readonly date: string;
  readonly measure: MeasureText;
  /** Small copies, of crossings and of what was left in the ground; others are left out. */
  readonly photos: readonly PhonePhoto[];
}

/**
 * Everything that is needed in the paddock as one page of HTML: map, a card for each buried crossing, switch register.
 * It asks nothing of any network, its own script is the only one that can run in it, and all that comes from the
 * project is text.
 */
export function phonePage(input: PhonePageInput): string {
  const { project, survey, date } = input;
  const property = propertyOf(project);
  const f = figures(property.units);
  const words = f.words.exchange.phone;
  const rows = crossingRows(project, survey);
  const posts = fixedPosts(project, survey);
  const buried = rows.filter(({ crossing }) => crossing.inGround);
  const planned = rows.filter(({ crossing }) => !crossing.inGround);
  const cards = (some: readonly CrossingRow[]) =>
    some.map((row) => crossingCard(cardOf(row, f), stakeOut(row.crossing, posts), input, f)).join('\n');
  const left = leftInGround(project, survey).filter(({ thing }) => thing.fate !== 'takenOut');
  const power = powerOf(project, survey);
  const policy = `default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src '${phoneScriptHash}'; base-uri 'none'; form-action 'none'`;
  const to = (id: string, text: string) => `<a href="#${id}">${escapeHtml(text)}</a>`;
  const links = [
    to('crossings', words.toCrossings),
    ...(planned.length > 0 ? [to('planned', words.toPlanned)] : []),
    ...(left.length > 0 ? [to('left', words.toLeft)] : []),
    to('switches', words.toSwitches),
    to('property-map', words.map),
  ];
  const heading = (id: string, text: string) => `<h2 id="${id}">${escapeHtml(text)}</h2>`;
  return `<!doctype html>
<html lang="${escapeHtml(activeLanguage().tag)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(words.title({ name: property.name }))}</title>
<style>${phoneStyle}</style>
</head>
<body>
<h1>${escapeHtml(property.name)}</h1>
<p>${escapeHtml(words.asOf({ date, invented: property.invented }))}</p>
<p class="caution"><strong>${escapeHtml(words.before)}</strong> ${escapeHtml(words.caution)}</p>
<div class="bar"><label for="search">${escapeHtml(words.search)}</label><input id="search" type="search" autocomplete="off"></div>
<nav aria-label="${escapeHtml(words.onThisPage)}">${links.join(' ')}</nav>
<main>
<p id="none" role="status" hidden>${escapeHtml(words.noneFound)}</p>
${heading('crossings', words.inTheGround({ count: buried.length }))}
${cards(buried)}
${left.length > 0 ? `${heading('left', words.left({ count: left.length }))}\n${left.map((one) => leftCard(one, posts, input, f)).join('\n')}` : ''}
${planned.length > 0 ? `${heading('planned', words.planned({ count: planned.length }))}\n<p>${escapeHtml(words.nothingLies)}</p>\n${cards(planned)}` : ''}
${heading('switches', words.switches({ count: survey.switches.length }))}
${usualReadings(power, f)}
${survey.switches.map((row) => switchCard(row, power, f)).join('\n')}
${heading('property-map', words.map)}
<p><button id="smaller" type="button" aria-label="${escapeHtml(words.smaller)}">−</button> <button id="larger" type="button" aria-label="${escapeHtml(words.larger)}">+</button></p>
<div id="map" class="map" role="region" aria-label="${escapeHtml(words.mapOf)}" tabindex="0">${mapSvg(input, f)}</div>
<h2>${escapeHtml(words.cautions)}</h2>
<ul>${cautions(f)
    .map((caution) => `<li>${escapeHtml(caution)}</li>`)
    .join('')}</ul>
</main>
<script>${phoneScript}</script>
</body>
</html>
`;
}

const sketch = { widthMm: 92, heightMm: 80, sizePt: 10.5 };

interface CardHead {
  readonly name: string;
  readonly line: string;
  /** Whose photos are shown. */
  readonly thingId: string;
  readonly tag: string;
  readonly tagLook: string;
  /** What comes first, before how sure it is; empty: nothing. */
  readonly first: string;
  readonly note: string;
}

function cardOf({ name, line, crossing }: CrossingRow, f: Figures): CardHead {
  const thingId = crossing.figures.crossing.id;
  const tag = f.say(standingInShort(crossing));
  return { name, line, thingId, tag, tagLook: tagLook(crossing), first: '', note: '' };
}

/** What is in the ground and no longer drawn: a crossing with all that finds it, anything else with where it was drawn. */
function leftCard(left: LeftInGround, posts: readonly FixedPost[], input: PhonePageInput, f: Figures): string {
  const { thing, crossing, path } = left;
  const { placed } = propertyOf(input.project);
  const first = f.say(fateInWords(thing));
  const head = { name: leftHeading(thing), thingId: thing.id, tag: f.say(fateInShort(thing)), tagLook: 'warns', first };
  if (crossing && thing.was.what === 'crossing') {
    return crossingCard({ ...head, line: thing.was.lineName, note: thing.note }, stakeOut(crossing, posts), input, f);
  }
  const places = placed ? path.map((xy) => placeText(input.survey.plane.toLonLat(xy))).join('; ') : '';
  return `<section class="card" data-words="${escapeHtml(`${head.name} ${head.tag} ${thing.note}`)}">
<h3>${escapeHtml(head.name)} <span class="tag warns">${escapeHtml(head.tag)}</span></h3>
<p>${escapeHtml(first)}</p>
<p>${escapeHtml(f.words.exchange.phone.notMeasured({ withinM: leftWithinM(left), places }))}</p>
${thing.note ? `<p>${escapeHtml(thing.note)}</p>` : ''}
</section>`;
}

function crossingCard(
  { name, line, thingId, tag, tagLook: look, first, note: ownNote }: CardHead,
  stake: StakeOut,
  { project, survey, measure, photos }: PhonePageInput,
  f: Figures,
): string {
  const { placed } = propertyOf(project);
  const words = f.words.exchange.phone;
  const { crossing } = stake;
  const sketchLook = { survey, f, measure, sizePt: sketch.sizePt };
  const plan = stakeSketch(stake, null, [0, 0, sketch.widthMm, sketch.heightMm], sketchLook);
  const points = stake.points.map((point, i) => {
    const names = placeNames(point.places).map(f.say);
    const places = point.places.map(({ at }, k) => `${names.length > 1 ? `${names[k]!}: ` : ''}${placeText(at)}`);
    const said = words.point({
      tapes: tapesInWords(point, f),
      depth: f.say(depthThereInWords(point.depth)),
      sure: pointSureInWords(point, f),
      places: placed ? places.join('; ') : '',
    });
    return `<li><strong>${pointLetter(i)} ${escapeHtml(f.say(point.label))}.</strong> ${escapeHtml(said)}</li>`;
  });
  const steps = stake.steps.map((step) => {
    const depth = f.say(depthThereInShort(step.depth));
    const cells = [f.tape(step.alongM), stepOffset(step, stake, f), depth];
    return `<tr>${cells.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`;
  });
  const notes = [
    ownNote,
    crossing.figures.gateway.note,
    crossing.figures.crossing.note,
    crossing.record?.note ?? '',
  ].filter(Boolean);
  const pictures = photos
    .filter(({ crossingId }) => crossingId === thingId)
    .map(
      ({ base64, caption }) =>
        `<img src="data:image/jpeg;base64,${escapeHtml(base64)}" alt="${escapeHtml(caption || words.photoAt({ name }))}">`,
    );
  const leftOut = leftOutInWords(stake.depth, crossing.lengthM);
  const depth = words.depth({ depth: depthInWords(stake.depth), leftOut });
  const also = alsoInTrench(crossing.record);
  const along = words.alongFrom({ from: stake.postNames.start, to: stake.postNames.end });
  const sure = words.onLine({ line, sure: certaintyInWords(crossing) });
  return `<section class="card" data-words="${escapeHtml([name, line, tag, ...notes].join(' '))}">
<h3>${escapeHtml(name)} <span class="tag ${look}">${escapeHtml(tag)}</span></h3>
${first ? `<p>${escapeHtml(first)}</p>\n` : ''}<p>${escapeHtml(sure)}</p>
<p>${escapeHtml([depth, also ? f.say(also) : ''].join(' ').trim())}</p>
<details><summary>${escapeHtml(words.findIt)}</summary>
${svgText(plan.items, sketch.widthMm, sketch.heightMm, words.planOf({ name }))}
<ul>${points.join('')}</ul>
${steps.length > 0 ? `<p>${escapeHtml(along)}</p><table><thead><tr>${[words.along, stepsHeading(stake, f), f.say(depthHeading(stake.depth))].map((head) => `<th>${escapeHtml(head)}</th>`).join('')}</tr></thead><tbody>${steps.join('')}</tbody></table>` : ''}
${notes.map((note) => `<p>${escapeHtml(note)}</p>`).join('')}
${pictures.join('')}
</details>
</section>`;
}

/** A tag's rim: full for what was measured, heavy for what warns, dotted for what is not measured. */
function tagLook({ inGround, certainty: { basis } }: CrossingAsBuilt): string {
  if (!inGround) return 'planned';
  if (leavesOpen(basis)) return 'warns';
  return basis === 'drawn' ? 'drawn' : '';
}

/** What each energiser usually reads, and from where on that is low; nothing where none feeds a fence. */
function usualReadings(power: Power, f: Figures): string {
  const { project, survey, normallyOpen } = power;
  const standing = standingOf(power, normallyOpen);
  const words = f.words.exchange.phone;
  const lines = survey.network.sources.flatMap(({ energiserId, node }) => {
    if (node === null) return [];
    const name = project.energiser.get(energiserId)?.name ?? energiserId;
    const yardstick = yardstickAt(power, { node, standing });
    return [`<li>${escapeHtml(f.say(yardstickSentence(yardstick, switchesOff(project, []), { at: name })))}</li>`];
  });
  if (lines.length === 0) return '';
  return `<p><strong>${escapeHtml(words.shouldRead)}</strong></p><ul>${lines.join('')}</ul><p>${escapeHtml(f.say(limitsExplained()))}</p>`;
}

/** Read beside it on the energiser's side, it alone off besides what normally is. */
function readsWithItOff({ switch: { id }, feed }: SwitchRow, power: Power, f: Figures): string | null {
  if (feed.off || feed.from === 'nowhere' || feed.from === 'notInFence') return null;
  const standing = standingOf(power, new Set([...power.normallyOpen, id]));
  const node = nodeAtSwitch(power, id, standing);
  if (node === null) return null;
  const yardstick = yardstickAt(power, { node, standing });
  const where = feed.from === 'bothSides' ? 'beside' : 'supplySide';
  return f.say(yardstickSentence(yardstick, switchesOff(power.project, [id]), where));
}

function switchCard(row: SwitchRow, power: Power, f: Figures): string {
  const { project } = power;
  const { switch: cutOut, where, at, feed } = row;
  const { placed } = propertyOf(project);
  const place = f.say(where);
  const cutsOff = cutsOffSentence(row, project);
  const { normallyOff, normallyOn } = f.words.exchange.phone;
  const said = [
    `${place}.`,
    f.say(feedSentence(feed)),
    feed.off ? normallyOff : normallyOn,
    cutsOff && f.say(cutsOff),
    readsWithItOff(row, power, f),
  ];
  const words = said.filter(Boolean).join(' ');
  return `<section class="card" data-words="${escapeHtml(`${cutOut.name} ${place} ${cutOut.note}`)}">
<h3>${escapeHtml(cutOut.name)}</h3>
<p>${escapeHtml(words)}${placed ? ` ${escapeHtml(placeText(at))}` : ''}</p>
${cutOut.note ? `<p>${escapeHtml(cutOut.note)}</p>` : ''}
</section>`;
}

/** The map's paper: upright, as a phone is held. */
const mapPaper = { widthMm: 180, heightMm: 230, rimMm: 8 };

function mapSvg({ project, survey, measure }: PhonePageInput, f: Figures): string {
  const { widthMm, heightMm, rimMm } = mapPaper;
  const extent = propertyExtent(survey, project);
  if (!extent) return `<p>${escapeHtml(f.words.exchange.phone.nothingDrawn)}</p>`;
  const [minX, minY, maxX, maxY] = extent;
  const scale = Math.max((maxX - minX) / (widthMm - 2 * rimMm), (maxY - minY) / (heightMm - 2 * rimMm), 0.1) * 1000;
  const centre = [(minX + maxX) / 2, (minY + maxY) / 2] as const;
  const window = mapWindow([0, 0, widthMm, heightMm], centre, scale, survey.plane);
  const [halfX, halfY] = [(widthMm * scale) / 2000, (heightMm * scale) / 2000];
  const ground = [centre[0] - halfX, centre[1] - halfY, centre[0] + halfX, centre[1] + halfY] as const;
  const { items } = drawMap(
    project,
    survey,
    window,
    ground,
    gridDistanceM(null, scale, propertyOf(project).units),
    f,
    measure,
  );
  return svgText(items, widthMm, heightMm, f.words.exchange.phone.mapNorthUp);
}
