import { leakageOhmKm } from '../../electrical/conductors/leakage.ts';
import { type FittedSection, fitLeakageSteps } from '../../electrical/fit/fitLeakage.ts';
import type { VoltageReading } from '../../electrical/fit/reading.ts';
import { propertyOf } from '../../model/project.ts';
import { pushAll } from '../../model/pushAll.ts';
import { allAtOnce, type Steps } from '../../model/steps.ts';
import type { Run } from '../../network/types.ts';
import { type Message, message } from '../../words/message.ts';
import { readingPlace } from './readingPlace.ts';
import { estimatesBySwitches } from './readingRows.ts';
import type { Power, Supply } from './types.ts';
import { withNodesAt } from './withNodesAt.ts';

/** Readings that were taken together, on a walk of a day or a few. */
export interface ReadingRound {
  /** ISO 8601. */
  readonly firstDay: string;
  readonly lastDay: string;
  readonly count: number;
}

/** The leakage of each section as the readings of one round (or all) tell it. */
export interface ReadingsFit {
  readonly sections: readonly FitRow[];
  /** Letter of the section that leaks the most current. */
  readonly mostLeaking: string;
  /** Groups of sections that these readings can't tell apart, or say nothing about. */
  readonly notToldApart: readonly (readonly string[])[];
  /** By reading id: what is estimated there with the fitted leakage. */
  readonly fittedV: ReadonlyMap<string, number>;
  /** Root mean square of the differences over the readings' own error; about 1 or less is as good as they are. */
  readonly misfit: number;
  readonly converged: boolean;
  /** By fence line id: the fitted resistance to earth of a kilometre of one live wire, where its sections are told. */
  readonly ohmKmPerWireOfLine: ReadonlyMap<string, number>;
}

export interface FitRow extends FittedSection {
  readonly letter: string;
}

export interface FitAnswer {
  /** Round of the readings; null: all of them. */
  readonly round: ReadingRound | null;
  /** Readings that took part. */
  readonly used: number;
  readonly fits: readonly ReadingsFit[];
  /** Why there is none, or what is wrong with it. */
  readonly messages: readonly Message[];
}

/** Days further apart than this are two rounds (an assumption: growth changes in weeks, a round takes days). */
const mostDaysApart = 7;
const msPerDay = 86_400_000;

/** The rounds of readings of a voltage, the newest first. */
export function readingRounds({ project }: Power): ReadingRound[] {
  const days = [...project.reading.values()].flatMap(({ date, voltageV }) => (voltageV === null ? [] : [dayOf(date)]));
  const rounds: ReadingRound[] = [];
  for (const day of days.sort().reverse()) {
    const round = rounds.at(-1);
    const isSame = round && (Date.parse(round.firstDay) - Date.parse(day)) / msPerDay <= mostDaysApart;
    if (isSame) rounds[rounds.length - 1] = { ...round, firstDay: day, count: round.count + 1 };
    else rounds.push({ firstDay: day, lastDay: day, count: 1 });
  }
  return rounds;
}

function dayOf(date: string): string {
  return date.slice(0, 10);
}

/** Fits the readings of a round (null: all of them) to each supply that they were taken on. */
export function fitReadings(power: Power, round: ReadingRound | null): FitAnswer {
  return allAtOnce(fitReadingsSteps(power, round));
}

export function* fitReadingsSteps(power: Power, round: ReadingRound | null): Steps<FitAnswer> {
  const placed = placedReadings(power, round);
  if (placed.length === 0) return { round, used: 0, fits: [], messages: [message('power.fit.noReading')] };
  const answer = { round, used: placed.length, fits: [] as ReadingsFit[], messages: [] as Message[] };
  for (const [index, readings] of Map.groupBy(placed, ({ supply }) => supply)) {
    const result = yield* fitSupply(power, power.supplies[index]!, readings);
    if ('messages' in result) pushAll(answer.messages, result.messages);
    else answer.fits.push(result);
  }
  return answer;
}

type Placed = ReturnType<typeof placedReadings>[number];

function placedReadings(power: Power, round: ReadingRound | null) {
  const estimateAt = estimatesBySwitches(power);
  return [...power.project.reading.values()].flatMap((reading) => {
    if (reading.voltageV === null || (round && !isIn(round, dayOf(reading.date)))) return [];
    const found = readingPlace(power, estimateAt(reading), reading.at);
    return found && found.supply >= 0 ? [{ reading, ...found }] : [];
  });
}

function isIn({ firstDay, lastDay }: ReadingRound, day: string): boolean {
  return firstDay <= day && day <= lastDay;
}

function* fitSupply(
  power: Power,
  supply: Supply,
  placed: readonly Placed[],
): Steps<ReadingsFit | { readonly messages: readonly Message[] }> {
  const { circuit, nodeOfPlace, piecesOfSpan } = withNodesAt(
    supply.circuit,
    placed.map(({ place }) => place),
  );
  const sections = leakingSections(power, supply).map(({ name, spans }) => ({
    name,
    spans: spans.flatMap((span) => piecesOfSpan[span]!),
  }));
  const readings = placed.map(({ reading }, i): VoltageReading => {
    const open = new Set(reading.openSwitchIds);
    const links = (ids: Iterable<string>) => [...ids].flatMap((id) => supply.linkOfSwitch.get(id) ?? []);
    return {
      node: nodeOfPlace[i]!,
      volts: reading.voltageV!,
      openLinks: links(open),
      closedLinks: links(power.normallyOpen).filter((link) => !links(open).includes(link)),
    };
  });
  const fit = yield* fitLeakageSteps(circuit, sections, readings);
  if (!fit.ok) return fit;
  const letters = sections.map(({ name }) => name);
  const fittedV = new Map<string, number>();
  fit.residualV.forEach((residualV, i) => {
    if (residualV !== null) fittedV.set(placed[i]!.reading.id, placed[i]!.reading.voltageV! + residualV);
  });
  return {
    sections: fit.sections.map((section) => ({ ...section, letter: section.name })),
    mostLeaking: letters[fit.mostLeaking]!,
    notToldApart: fit.notToldApart.map((group) => group.map((s) => letters[s]!)),
    fittedV,
    misfit: fit.misfit,
    converged: fit.converged,
    ohmKmPerWireOfLine: perWireOfLine(power, supply, fit.sections),
  };
}

/** The sections of a supply that have fence which leaks, by letter, with their spans. */
function leakingSections({ survey }: Power, { circuit, edgeOfSpan }: Supply): { name: string; spans: number[] }[] {
  const spansOf = new Map<number, number[]>();
  for (const [span, { lengthM, leakageOhmKm: leak }] of circuit.spans.entries()) {
    const section = survey.sectionOfEdge[edgeOfSpan[span]!]!;
    if (section < 0 || !(lengthM > 0 && leak < Infinity)) continue;
    const known = spansOf.get(section);
    if (known) known.push(span);
    else spansOf.set(section, [span]);
  }
  return [...spansOf]
    .sort(([a], [b]) => a - b)
    .map(([section, spans]) => ({ name: survey.sections[section]!.letter, spans }));
}

/** Of the lines whose every section is told: their leakage by length, over the growth that they have now. */
function perWireOfLine(
  { project, survey }: Power,
  { edgeOfSpan }: Supply,
  sections: readonly FittedSection[],
): Map<string, number> {
  const told = new Map(sections.map((section) => [section.name, section]));
  const sums = new Map<string, { km: number; siemens: number } | null>();
  for (const edge of edgeOfSpan) {
    const { lineId, lengthM } = survey.network.edges[edge] as Run;
    const section = told.get(survey.sections[survey.sectionOfEdge[edge]!]?.letter ?? '');
    const line = project.fenceLine.get(lineId);
    if (!line || sums.get(lineId) === null) continue;
    if (section?.verdict !== 'told') {
      sums.set(lineId, null);
      continue;
    }
    const km = lengthM / 1000;
    const perWire = leakageOhmKm(line.growth ?? propertyOf(project).power.growth, 1);
    const sum = sums.get(lineId) ?? { km: 0, siemens: 0 };
    sums.set(lineId, { km: sum.km + km, siemens: sum.siemens + (km * section.timesAssumed) / perWire });
  }
  const figures = new Map<string, number>();
  for (const [lineId, sum] of sums) if (sum && sum.siemens > 0) figures.set(lineId, sum.km / sum.siemens);
  return figures;
}
