import { cableOhm } from '../../electrical/conductors/cableOhm.ts';
import { conductorLibrary } from '../../electrical/conductors/conductorLibrary.ts';
import { leakageOhmKm } from '../../electrical/conductors/leakage.ts';
import { earthFieldOhm } from '../../electrical/earth/earthFieldOhm.ts';
import { betterEarth, moreLiveWires, otherEnergiser } from '../../electrical/effects/changes.ts';
import type { CircuitChange } from '../../electrical/effects/circuitChange.ts';
import { effectsOf } from '../../electrical/effects/effectsOf.ts';
import { ThrowSearch } from '../../electrical/effects/throwSearch.ts';
import { type PlaceVoltage, voltageAt, weakestPlace } from '../../electrical/effects/weakestPlace.ts';
import { REFERENCE_LOAD_OHM } from '../../electrical/energiser/internalOhm.ts';
import { propertyOf } from '../../model/project.ts';
import { shortestWays, wayTo } from '../../network/shortestWays.ts';
import type { Run } from '../../network/types.ts';
import { type Message, message } from '../../words/message.ts';
import { fencePlace } from './fencePlace.ts';
import { ringLink } from './ringLink.ts';
import { sectionLeaks } from './sectionLeaks.ts';
import type { FencePlace, Power, Supply } from './types.ts';

/** Something that could be done for the weakest place, and what it would do. Estimates. */
export interface Improvement {
  readonly key: string;
  readonly name: Message;
  /** At the place that is weakest now. */
  readonly farEndV: number;
  readonly gainV: number;
  /** The weakest place then, perhaps another one. */
  readonly weakest: FencePlace | null;
  /** What it is done to. */
  readonly thingIds: readonly string[];
}

export interface ImprovementsFound {
  readonly farEnd: FencePlace;
  /** The best first. */
  readonly improvements: readonly Improvement[];
}

interface Named {
  readonly key: string;
  readonly name: Message;
  readonly change: CircuitChange;
  readonly thingIds?: readonly string[];
}

/** What each change alone would do at the weakest place of all, with the switches as they normally stand. */
export function improvementsOf(power: Power): ImprovementsFound | null {
  const supply = weakestSupply(power);
  if (!supply) return null;
  const wires = [...moreWires(power, supply), ...heavierLeadOut(power, supply)];
  const others = [...lessGrowthOn(power, supply), ...biggerEnergiser(supply), ...moreRods(power, supply)];
  const named = [...wires, ...others];
  const found = effectsOf(
    supply.prepared,
    named.map(({ change }) => change),
  );
  if (!found.ok) return null;
  const place = (weakest: PlaceVoltage | null) =>
    weakest && fencePlace(power.project, power.survey, supply, weakest.place, weakest.volts);
  const improvements = found.effects.map((effect, index): Improvement => {
    const { key, name, thingIds = [] } = named[index]!;
    const { farEndV, farEndGainV: gainV, weakest } = effect;
    return { key, name, farEndV, gainV, weakest: place(weakest), thingIds };
  });
  const closed = closedSwitches(power, supply, found.farEnd);
  improvements.splice(
    wires.length,
    0,
    ...closed.map((improvement) => ({ ...improvement, weakest: place(improvement.weakest) })),
  );
  const ring = ringLink(power, supply, found.farEnd);
  if (ring) {
    const farEndV = voltageAt(ring.prepared.circuit, ring.voltages, found.farEnd.place);
    const { name, thingIds } = ring;
    // Among the places that are drawn: the inside of the new link has no name yet.
    const weakest = place(weakestPlace(supply.circuit, ring.voltages));
    improvements.push({ key: 'ring', name, farEndV, gainV: farEndV - found.farEnd.volts, weakest, thingIds });
  }
  improvements.sort((a, b) => b.gainV - a.gainV);
  return {
    farEnd: fencePlace(power.project, power.survey, supply, found.farEnd.place, found.farEnd.volts),
    improvements,
  };
}

function weakestSupply({ supplies }: Power): Supply | null {
  let lowest: { supply: Supply; volts: number } | null = null;
  for (const supply of supplies) {
    const { asIs } = supply.prepared;
    const weakest = asIs.ok ? weakestPlace(supply.circuit, asIs) : null;
    if (weakest && (!lowest || weakest.volts < lowest.volts)) lowest = { supply, volts: weakest.volts };
  }
  return lowest?.supply ?? null;
}

function runOf({ survey }: Power, { edgeOfSpan }: Supply, span: number): Run {
  return survey.network.edges[edgeOfSpan[span]!] as Run;
}

/** One more live wire beside those there are, everywhere and on the way to the weakest place. */
function moreWires(power: Power, supply: Supply): Named[] {
  const everywhere = supply.circuit.spans.map((_, span) => span);
  const onTheWay = spansToWeakest(power, supply);
  const oneMore = (key: 'wires' | 'wiresOnWay', spans: readonly number[]): Named[] => {
    if (spans.length === 0) return [];
    const byWires = Map.groupBy(spans, (span) => runOf(power, supply, span).liveWires);
    const changes = [...byWires].map(([wires, group]) => moreLiveWires(supply.circuit, group, wires, wires + 1));
    const change = { spans: changes.flatMap((each) => each.spans ?? []) };
    return [
      {
        key,
        name: message(`power.improvements.${key}`),
        change,
        thingIds: [...new Set(spans.map((span) => runOf(power, supply, span).lineId))],
      },
    ];
  };
  const same = onTheWay.length === everywhere.length;
  return [...oneMore('wires', everywhere), ...(same ? [] : oneMore('wiresOnWay', onTheWay))];
}

function spansToWeakest(power: Power, supply: Supply): number[] {
  const { asIs } = supply.prepared;
  const weakest = asIs.ok ? weakestPlace(supply.circuit, asIs) : null;
  if (!weakest) return [];
  const { network } = power.survey;
  const { place } = weakest;
  const node = place.on === 'node' ? place.node : supply.circuit.spans[place.span]!.from;
  const ways = shortestWays(network, (index) => {
    const edge = network.edges[index]!;
    return edge.kind !== 'switch' || edge.normally === 'closed';
  });
  const spans = wayTo(network, ways, node).flatMap((edge) => {
    const span = power.spanOfEdge[edge]!;
    return span >= 0 ? [span] : [];
  });
  return place.on === 'span' && !spans.includes(place.span) ? [...spans, place.span] : spans;
}

/** The lead-out in the fence lead-out cable of least resistance that the library has. */
function heavierLeadOut({ survey }: Power, { circuit, edgeOfLink }: Supply): Named[] {
  const cables = conductorLibrary.filter(({ kind }) => kind === 'cable');
  const best = cables.reduce((a, b) => (b.ohmPerKm < a.ohmPerKm ? b : a));
  const links: { link: number; ohm: number }[] = [];
  const thingIds: string[] = [];
  for (const [link, index] of edgeOfLink.entries()) {
    const edge = survey.network.edges[index]!;
    if (edge.kind !== 'leadOut') continue;
    const ohm = cableOhm({ lengthM: edge.cableLengthM, ohmPerKm: best.ohmPerKm });
    if (ohm < circuit.links[link]!.ohm) {
      links.push({ link, ohm });
      thingIds.push(edge.leadOutId);
    }
  }
  if (links.length === 0) return [];
  return [
    {
      key: 'leadOut',
      name: message('power.improvements.leadOut', { metal: best.core!.material, diameterMm: best.core!.diameterMm }),
      change: { links },
      thingIds,
    },
  ];
}

/** Each switch that normally stands open, closed. There may be hundreds: each is asked for by itself, not solved anew. */
function closedSwitches({ project, normallyOpen }: Power, { linkOfSwitch, prepared }: Supply, farEnd: PlaceVoltage) {
  const ids = [...normallyOpen].filter((id) => linkOfSwitch.has(id));
  if (ids.length === 0) return [];
  const search = new ThrowSearch(prepared);
  return ids.flatMap((id) => {
    const thrown = search.throwLink(linkOfSwitch.get(id)!, [farEnd.place]);
    if (!thrown) return [];
    const farEndV = thrown.volts[0]!;
    const name = message('power.improvements.switchOn', { name: project.switch.get(id)?.name ?? id });
    const { weakest } = thrown;
    return [{ key: `close:${id}`, name, farEndV, gainV: farEndV - farEnd.volts, weakest, thingIds: [id] }];
  });
}

/** All fence as clean as new, and the section that leaks most by itself. */
function lessGrowthOn(power: Power, supply: Supply): Named[] {
  const { survey } = power;
  const cleaned = (spans: readonly number[]): CircuitChange => ({
    spans: spans.flatMap((span) => {
      const cleanOhmKm = leakageOhmKm('clean', runOf(power, supply, span).liveWires);
      return supply.circuit.spans[span]!.leakageOhmKm < cleanOhmKm ? [{ span, leakageOhmKm: cleanOhmKm }] : [];
    }),
  });
  const everywhere = cleaned(supply.circuit.spans.map((_, span) => span));
  if (everywhere.spans!.length === 0) return [];
  const lineIds = (change: CircuitChange) => [
    ...new Set(change.spans!.map(({ span }) => runOf(power, supply, span).lineId)),
  ];
  const all: Named = {
    key: 'growth',
    name: message('power.improvements.growth'),
    change: everywhere,
    thingIds: lineIds(everywhere),
  };
  const leakA = sectionLeaks(power);
  const inSupply = Map.groupBy(supply.edgeOfSpan.keys(), (span) => survey.sectionOfEdge[supply.edgeOfSpan[span]!]!);
  const [worst] = [...inSupply.keys()].filter((section) => section >= 0).sort((a, b) => leakA[b]! - leakA[a]!);
  if (worst === undefined || inSupply.size < 2) return [all];
  const { letter: section } = survey.sections[worst]!;
  const one = cleaned(inSupply.get(worst)!);
  if (one.spans!.length === 0) return [all];
  const name = message('power.improvements.growthWorst', { section });
  return [all, { key: 'growthWorst', name, change: one, thingIds: lineIds(one) }];
}

/** The same output with no load from half the internal resistance: twice the output into a heavy load. */
function biggerEnergiser({ energiser, internalOhm, earth }: Supply): Named[] {
  if (!(internalOhm > 0)) return [];
  const { openCircuitV } = energiser;
  const into500OhmV = (openCircuitV * REFERENCE_LOAD_OHM) / (REFERENCE_LOAD_OHM + internalOhm / 2);
  const name = message('power.improvements.energiser', { openCircuitV, into500OhmV });
  const change = otherEnergiser({ openCircuitV, into500OhmV }, earth.ohm ?? 0);
  return [{ key: 'energiser', name, change, thingIds: [energiser.id] }];
}

/** Twice the earth rods in each field. */
function moreRods({ project }: Power, { circuit, earth }: Supply): Named[] {
  if (earth.ohm === null) return [];
  const { soilOhmM } = propertyOf(project).power;
  const siemens = earth.fields.reduce(
    (sum, { field }) => sum + 1 / earthFieldOhm({ ...field, rods: 2 * field.rods }, soilOhmM).ohm,
    0,
  );
  const rods = earth.fields.reduce((sum, { field }) => sum + field.rods, 0);
  return [
    {
      key: 'earth',
      name: message('power.improvements.rods', { rods }),
      change: betterEarth(circuit, earth.ohm, 1 / siemens),
      thingIds: earth.fields.map(({ field }) => field.id),
    },
  ];
}
