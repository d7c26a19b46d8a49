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
import { dateText } from '../../words/dates.ts';
import { figures } from '../../words/figures.ts';
import { formatTape } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';
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
  const rows = crossingRows(project, survey);
  const posts = fixedPosts(project, survey);
  const buried = rows.filter(({ crossing }) => crossing.inGround);
  const planned = rows.filter(({ crossing }) => !crossing.inGround);
  const cards = (some: readonly CrossingRow[]) =>
    some
      .map((row) => crossingCard(cardOf(row, figures(property.units)), stakeOut(row.crossing, posts), input))
      .join('\n');
  const left = leftInGround(project, survey).filter(({ thing }) => thing.fate !== 'takenOut');
  const power = powerOf(project, survey);
  const policy = `default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src '${phoneScriptHash}'; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escapeHtml(property.name)}: what is buried</title>
<style>${phoneStyle}</style>
</head>
<body>
<h1>${escapeHtml(property.name)}</h1>
<p>What is buried, as of ${escapeHtml(dateText(date))}.${property.invented ? ' An invented example.' : ''} This page needs no network.</p>
<p class="caution"><strong>Before digging or touching a wire:</strong> turn the energiser off and prove the fence dead. Have all other buried services located: only what was recorded is shown here.</p>
<div class="bar"><label for="search">Search crossings and switches</label><input id="search" type="search" autocomplete="off"></div>
<nav aria-label="On this page"><a href="#crossings">Crossings</a> ${planned.length > 0 ? '<a href="#planned">Planned</a> ' : ''}${left.length > 0 ? '<a href="#left">No longer drawn</a> ' : ''}<a href="#switches">Switches</a> <a href="#property-map">Map</a></nav>
<main>
<p id="none" role="status" hidden>Nothing has all these words.</p>
<h2 id="crossings">Crossings in the ground (${buried.length})</h2>
${cards(buried)}
${left.length > 0 ? `<h2 id="left">In the ground, no longer drawn (${left.length})</h2>\n${left.map((one) => leftCard(one, posts, input)).join('\n')}` : ''}
${planned.length > 0 ? `<h2 id="planned">Planned crossings, not in the ground (${planned.length})</h2>\n<p>Nothing lies there as far as this file knows.</p>\n${cards(planned)}` : ''}
<h2 id="switches">Cut-out switches (${survey.switches.length})</h2>
${usualReadings(power)}
${survey.switches.map((row) => switchCard(row, power)).join('\n')}
<h2 id="property-map">Map</h2>
<p><button id="smaller" type="button" aria-label="Smaller map">−</button> <button id="larger" type="button" aria-label="Larger map">+</button></p>
<div id="map" class="map" role="region" aria-label="Map of the property" tabindex="0">${mapSvg(input)}</div>
<h2>Cautions</h2>
<ul>${cautions(figures(property.units))
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
function leftCard(left: LeftInGround, posts: readonly FixedPost[], input: PhonePageInput): string {
  const { thing, crossing, path } = left;
  const { units, placed } = propertyOf(input.project);
  const f = figures(units);
  const first = f.say(fateInWords(thing));
  const head = { name: leftHeading(thing), thingId: thing.id, tag: f.say(fateInShort(thing)), tagLook: 'warns', first };
  if (crossing && thing.was.what === 'crossing') {
    return crossingCard({ ...head, line: thing.was.lineName, note: thing.note }, stakeOut(crossing, posts), input);
  }
  const within = formatTape(leftWithinM(left), units);
  const places = placed ? path.map((xy) => placeText(input.survey.plane.toLonLat(xy))).join('; ') : '';
  return `<section class="card" data-words="${escapeHtml(`${head.name} ${head.tag} ${thing.note}`)}">
<h3>${escapeHtml(head.name)} <span class="tag warns">${escapeHtml(head.tag)}</span></h3>
<p>${escapeHtml(first)}</p>
<p>Not measured (from the plan). It is assumed to lie within ${escapeHtml(within)} of where it was drawn${places ? `: ${escapeHtml(places)}` : ''}.</p>
${thing.note ? `<p>${escapeHtml(thing.note)}</p>` : ''}
</section>`;
}

function crossingCard(
  { name, line, thingId, tag, tagLook: look, first, note: ownNote }: CardHead,
  stake: StakeOut,
  { project, survey, measure, photos }: PhonePageInput,
): string {
  const { units, placed } = propertyOf(project);
  const f = figures(units);
  const { crossing } = stake;
  const sketchLook = { survey, f, measure, sizePt: sketch.sizePt };
  const plan = stakeSketch(stake, null, [0, 0, sketch.widthMm, sketch.heightMm], sketchLook);
  const points = stake.points.map((point, i) => {
    const names = placeNames(point.places).map(f.say);
    const places = point.places.map(({ at }, k) => `${names.length > 1 ? `${names[k]!}: ` : ''}${placeText(at)}`);
    const place = placed && places.length > 0 ? ` ${escapeHtml(places.join('; '))}.` : '';
    const depth = capital(f.say(depthThereInWords(point.depth)));
    const words = `${tapesInWords(point, f)} ${depth}. ${pointSureInWords(point, f)}`;
    return `<li><strong>${pointLetter(i)} ${escapeHtml(f.say(point.label))}.</strong> ${escapeHtml(words)}${place}</li>`;
  });
  const steps = stake.steps.map((step) => {
    const depth = f.say(depthThereInShort(step.depth));
    const cells = [formatTape(step.alongM, units), stepOffset(step, stake, f), depth];
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
        `<img src="data:image/jpeg;base64,${escapeHtml(base64)}" alt="${escapeHtml(caption || `Photo at ${name}`)}">`,
    );
  const leftOut = leftOutInWords(stake.depth, crossing.lengthM);
  const depth = `${capital(f.say(depthInWords(stake.depth)))}. ${leftOut ? f.say(leftOut) : ''}`;
  const also = alsoInTrench(crossing.record);
  const along = `${f.say(stake.postNames.start)} to the ${f.say(stake.postNames.end)}`;
  return `<section class="card" data-words="${escapeHtml([name, line, tag, ...notes].join(' '))}">
<h3>${escapeHtml(name)} <span class="tag ${look}">${tag}</span></h3>
${first ? `<p>${escapeHtml(first)}</p>\n` : ''}<p>On ${escapeHtml(line)}. ${escapeHtml(f.say(certaintyInWords(crossing)))}</p>
<p>${escapeHtml([depth.trim(), also ? f.say(also) : ''].join(' ').trim())}</p>
<details><summary>Find it</summary>
${svgText(plan.items, sketch.widthMm, sketch.heightMm, `Plan of the crossing at ${name}, north up`)}
<ul>${points.join('')}</ul>
${steps.length > 0 ? `<p>Along the straight line from the ${escapeHtml(along)}:</p><table><thead><tr><th>Along</th><th>${stepsHeading(stake, f)}</th><th>${escapeHtml(f.say(depthHeading(stake.depth)))}</th></tr></thead><tbody>${steps.join('')}</tbody></table>` : ''}
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
function usualReadings(power: Power): string {
  const { project, survey, normallyOpen } = power;
  const standing = standingOf(power, normallyOpen);
  const f = figures(propertyOf(project).units);
  const lines = survey.network.sources.flatMap(({ energiserId, node }) => {
    if (node === null) return [];
    const name = project.energiser.get(energiserId)?.name ?? energiserId;
    const yardstick = yardstickAt(power, { node, standing });
    return [`<li>${escapeHtml(f.say(yardstickSentence(yardstick, switchesOff(project, []), { at: name })))}</li>`];
  });
  if (lines.length === 0) return '';
  return `<p><strong>What the fence should read:</strong></p><ul>${lines.join('')}</ul><p>${escapeHtml(f.say(limitsExplained()))}</p>`;
}

/** Read beside it on the energiser's side, it alone off besides what normally is. */
function readsWithItOff({ switch: { id }, feed }: SwitchRow, power: Power): string | null {
  if (feed.off || feed.from === 'nowhere' || feed.from === 'notInFence') return null;
  const standing = standingOf(power, new Set([...power.normallyOpen, id]));
  const node = nodeAtSwitch(power, id, standing);
  if (node === null) return null;
  const yardstick = yardstickAt(power, { node, standing });
  const where = feed.from === 'bothSides' ? 'beside' : 'supplySide';
  const f = figures(propertyOf(power.project).units);
  return f.say(yardstickSentence(yardstick, switchesOff(power.project, [id]), where));
}

function switchCard(row: SwitchRow, power: Power): string {
  const { project } = power;
  const { switch: cutOut, placeText: place, at, feed } = row;
  const { units, placed } = propertyOf(project);
  const stands = `Normally ${feed.off ? 'off (open)' : 'on (closed)'}.`;
  const said = [
    `${place}.`,
    feedSentence(feed),
    stands,
    cutsOffSentence(row, project, units),
    readsWithItOff(row, power),
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

function mapSvg({ project, survey, measure }: PhonePageInput): string {
  const { widthMm, heightMm, rimMm } = mapPaper;
  const extent = propertyExtent(survey, project);
  if (!extent) return '<p>Nothing is drawn yet.</p>';
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
    figures(propertyOf(project).units),
    measure,
  );
  return svgText(items, widthMm, heightMm, 'Map of the property, north up');
}
