import { capital } from '../text.ts';
import type { Figures, Phrase, ThingRef } from '../types.ts';
import { type ServiceRef, theService } from './things.ts';

type One = { readonly thing: ThingRef };
type Two = { readonly thing: ThingRef; readonly other: ThingRef };
type AtGateway = { readonly gateway: ThingRef };
type WithService = { readonly service: ServiceRef };

/** Of a list of names so many are said. */
const most = 4;

const annexBb = 'IEC 60335-2-76, Annex BB, BB.1 (paraphrased)';
const oneTrench =
  'In one trench, each in a conduit of its own: ask its owner and the local rules how far apart they must lie.';
const assumedLeast = 'is assumed by this program to be the least';

const whoPasses = (vehicles: boolean) => (vehicles ? 'vehicles pass there' : 'stock pass there');

/** Where the trench is that lies under a gateway, or that a lead-out lies in. */
const trenchOf = (thing: ThingRef, f: Figures) => `${thing.kind === 'gateway' ? 'under' : 'of'} ${f.thing(thing)}`;

const recordedIn = ({ gateway, text }: { gateway: ThingRef; text: string }, f: Figures) =>
  `In the trench under ${f.thing(gateway)} lies, by its record, "${text}"`;

/** What is said of a part of the fence that is dead, before the reason. */
const isDead = ({ lengthM, lines }: Dead, f: Figures) =>
  `${f.length(lengthM)} of live fence (${f.list(lines, most)}) is dead`;
type Dead = { readonly lengthM: number; readonly lines: readonly string[] };

const noEarth = ({ overhead, gateway }: NoEarth, f: Figures) =>
  `The ${overhead ? 'overhead ' : ''}crossing of ${f.thing(gateway)} carries no earth`;
type NoEarth = { readonly overhead: boolean; readonly gateway: ThingRef };
const carryEarth = (overhead: boolean) =>
  overhead ? 'Carry an earth wire across overhead as well' : 'Lay an earth cable in the trench as well';

/** What the checks say, by rule. */
export const checks = {
  source: {
    standard: annexBb,
    commonPractice: 'common practice, no source',
    assumption: 'an assumption of this project',
  },
  emptyProject: {
    message: ({ name }: { name: string }) => `No fence is drawn on ${name} yet.`,
    remedy: 'Draw the first fence line, or import lines from a GeoJSON file.',
  },
  coordinatesOutOfRange: {
    message: (
      { thing, point, lon, lat }: { thing: ThingRef; point: number | null; lon: string; lat: string },
      f: Figures,
    ) =>
      `${f.headed(thing)}: ${point === null ? 'its place' : `point ${point}`} is at longitude ${lon}, latitude ${lat}, which is no place on earth. It is left out of all figures.`,
    remedy: ({ thing }: One, f: Figures) =>
      `Move that point, or delete ${f.thing(thing)} and draw the ${f.kind(thing.kind)} again.`,
  },
  lineWithoutLength: {
    message: ({ thing }: One, f: Figures) => `${f.headed(thing)} has no length: all its points lie together.`,
    remedy: 'Move one of its ends, or delete it.',
    fix: 'Delete the line',
  },
  duplicateVertices: {
    message: ({ thing }: One, f: Figures) => `${f.headed(thing)} has two corners on top of each other.`,
    remedy: 'Take one of them out.',
    fix: 'Take out doubled corners',
  },
  selfCrossingLine: {
    message: ({ thing, more }: { thing: ThingRef; more: number }, f: Figures) =>
      `${f.headed(thing)} crosses itself${more > 0 ? `, and in ${more} more ${f.plural(more, { one: 'place', other: 'places' })}` : ''}; the wires are not joined there.`,
    remedy: 'Move a corner so that it does not, or join it there.',
    fix: 'Join the line to itself',
  },
  linesCrossUnjoined: {
    message: ({ thing, other }: Two, f: Figures) =>
      `${f.headed(thing)} crosses ${f.thing(other)} without being joined to it.`,
    remedy: 'Join them here if the wires are joined; otherwise end one of the two short of the other.',
    fix: 'Join the lines here',
  },
  linesOverlap: {
    message: ({ thing, other, lengthM }: Two & { lengthM: number }, f: Figures) =>
      `${f.headed(thing)} and ${f.thing(other)} lie on top of each other for ${f.length(lengthM)}; that fence is counted twice.`,
    remedy: 'Delete one of the two, or shorten it to where they part.',
  },
  endNearlyTouches: {
    message: ({ thing, other, gapM }: Two & { gapM: number }, f: Figures) =>
      `${f.headed(thing)} ends ${f.length(gapM)} short of ${f.thing(other)} and is not joined to it.`,
    remedy: 'Join it if the wires are joined; otherwise draw the gap wider.',
    fix: 'Move the end onto the line',
  },
  unknownFenceType: {
    missing: ({ thing }: One, f: Figures) =>
      `${f.headed(thing)} has a fence type that is not in this property; its wires are counted as one live wire.`,
    missingRemedy: 'Select a fence type for it.',
    noLiveWire: ({ thing, type }: { thing: ThingRef; type: string }, f: Figures) =>
      `${f.headed(thing)} is live, and its fence type "${type}" has no live wire.`,
    noLiveWireRemedy: 'Select a type with live wires, or make the line not live.',
  },
  plainWiresNotEntered: {
    message: (values: PlainWires & { type: string }, f: Figures) =>
      `${capital(plainWires(values, f))}: fence type "${values.type}". Enter the plain wires, or the order is short of them.`,
    remedy: 'With them the order counts what strains and holds them too. If it has none, enter 0 with the fence type.',
    fix: ({ plainWires }: { plainWires: number }, f: Figures) =>
      `Enter ${plainWires} plain ${f.plural(plainWires, { one: 'wire', other: 'wires' })}`,
    /** The same beside the field. */
    hint: (values: PlainWires, f: Figures) =>
      `${capital(plainWires(values, f))}. Enter the plain wires, or the order is short of them; if it has none, enter 0.`,
  },
  gatewayTooWide: {
    noOpening: ({ thing, line }: { thing: ThingRef; line: ThingRef }, f: Figures) =>
      `${f.headed(thing)} makes no opening: its width or its place along ${f.thing(line)} is not a usable figure, or it lies beyond the line's end.`,
    message: (
      { thing, line, widthM, lineM }: { thing: ThingRef; line: ThingRef; widthM: number; lineM: number },
      f: Figures,
    ) => `${f.headed(thing)} is ${f.length(widthM)} wide, and ${f.thing(line)} only ${f.length(lineM)} long.`,
    remedy: 'Make the gateway narrower, the line longer, or move the gateway to another line.',
  },
  gatewayOffLine: {
    noLine: ({ thing }: One, f: Figures) => `${f.headed(thing)} stands on a fence line that is not there.`,
    noLineRemedy: 'Delete it and place it again on the right line.',
    noLineFix: 'Delete the gateway',
    message: ({ thing, line, pastM }: { thing: ThingRef; line: ThingRef; pastM: number }, f: Figures) =>
      `${f.headed(thing)} reaches ${f.length(pastM)} past the end of ${f.thing(line)}.`,
    remedy: 'Move it along the line, or make it narrower.',
    fix: 'Move it onto the line',
  },
  gatewaysOverlap: {
    message: ({ thing, other, overlapM }: Two & { overlapM: number }, f: Figures) =>
      `${f.headed(thing)} and ${f.thing(other)} overlap by ${f.length(overlapM)}.`,
    remedy: 'Move one of them along the line, or make one narrower.',
  },
  touchInOpening: {
    message: ({ thing, gateway }: { thing: ThingRef | null; gateway: ThingRef }, f: Figures) =>
      `${thing ? f.headed(thing) : 'Something'} touches the fence inside the opening of ${f.thing(gateway)}, where no wire runs; it is joined to nothing there.`,
    remedy: 'Move the gateway to one side, or end the line at one of its posts.',
  },
  crossingLoose: {
    doubled: ({ name }: { name: string }) => `Gateway ${name} has two crossings.`,
    doubledRemedy: 'Delete the one that is not there in the ground.',
    noGateway: 'A crossing belongs to a gateway that is not there.',
    noGatewayRemedy: 'Delete it.',
    fix: 'Delete this crossing',
  },
  missingCrossing: {
    message: ({ thing }: One, f: Figures) => `${f.headed(thing)} has no crossing, so what lies beyond it is cut off.`,
    remedy: 'Add a crossing under it (or over it), or join the wires another way.',
    fix: 'Add a crossing',
  },
  switchDangling: {
    switchNowhere: ({ thing }: One, f: Figures) =>
      `${f.headed(thing)} stands on something that is not there, or beyond the end of its line.`,
    switchNowhereRemedy: 'Move it to a place on the fence.',
    switchOnDeadLine: ({ thing }: One, f: Figures) => `${f.headed(thing)} stands on a fence line that is not live.`,
    switchOnDeadLineRemedy: 'Make the line live, or move the switch.',
    switchInOpening: ({ thing }: One, f: Figures) =>
      `${f.headed(thing)} stands in the opening of a gateway, where no wire runs.`,
    switchInOpeningRemedy: 'Move it to one of the posts.',
    fix: 'Delete the switch',
  },
  switchUseless: {
    bypassed: ({ thing }: One, f: Figures) =>
      `${f.headed(thing)} does nothing when it is switched off: the wires on its two sides are joined around it.`,
    bypassedRemedy: 'Move it a little away from where the lines join.',
    doubled: ({ thing, other }: { thing: ThingRef; other: ThingRef | null }, f: Figures) =>
      `${f.headed(thing)} and ${other ? f.thing(other) : 'another switch'} stand at the same place, one behind the other.`,
    doubledRemedy: 'Delete one of them.',
  },
  noEnergiser: {
    message: 'There is live fence, and no energiser to feed it.',
    remedy: 'Place the energiser and draw its lead-out to the fence.',
  },
  energiserTouchesNothing: {
    message: ({ thing }: One, f: Figures) => `${f.headed(thing)} feeds no fence.`,
    remedy: 'Draw its lead-out to a live fence line.',
  },
  leadOutLoose: {
    noEnergiser: ({ thing }: One, f: Figures) => `${f.headed(thing)} belongs to an energiser that is not there.`,
    noEnergiserRemedy: 'Delete it, and draw it again from the energiser.',
    endsNowhere: ({ thing }: One, f: Figures) => `${f.headed(thing)} ends at no live fence line.`,
    endsNowhereRemedy: 'Move its end onto a live fence line.',
    startsElsewhere: ({ thing, awayM }: { thing: ThingRef; awayM: number }, f: Figures) =>
      `${f.headed(thing)} begins ${f.length(awayM)} away from its energiser; it is taken as connected.`,
    startsElsewhereRemedy: 'Move its first point to the energiser, so that the cable comes out at its real length.',
  },
  deadPart: {
    openSwitch: (values: Dead & { switches: readonly string[] }, f: Figures) =>
      `${isDead(values, f)}: ${f.list(values.switches, most)} ${f.plural(values.switches.length, { one: 'is', other: 'are' })} normally off.`,
    openSwitchRemedy: 'If it should be live, let it stand on.',
    gap: (values: Dead & { other: ThingRef | null; gapM: number }, f: Figures) =>
      `${isDead(values, f)}: it comes within ${f.length(values.gapM)} of ${values.other ? f.thing(values.other) : 'another line'} without touching.`,
    gapRemedy: 'Join the two.',
    crossesUnjoined: (values: Dead & { other: ThingRef | null }, f: Figures) =>
      `${isDead(values, f)}: it crosses ${values.other ? f.thing(values.other) : 'another line'} without being joined.`,
    crossesUnjoinedRemedy: 'Join them where they cross.',
    notJoined: (values: Dead, f: Figures) => `${isDead(values, f)}: it is joined to nothing that is fed.`,
    notJoinedRemedy: 'Draw it on to a line that is fed.',
  },
  sectionOverLimit: {
    message: ({ letter, lines, length, gateways }: OverLimit, f: Figures) => {
      const faults = [
        length
          ? `is ${f.length(length.isM)} long, ${f.length(length.overByM)} over the limit of ${f.length(length.limitM)}`
          : '',
        gateways ? `has ${gateways.count} gateways, over the limit of ${gateways.limit}` : '',
      ];
      return `Section ${letter} (${f.list(lines, most)}) ${faults.filter((fault) => fault !== '').join(' and ')}.`;
    },
    remedy: 'Add cut-out switches, or use the switches that the plan suggests.',
  },
  runTooLong: {
    message: ({ line, lengthM, limitM }: { line: ThingRef; lengthM: number; limitM: number }, f: Figures) =>
      `A run of ${f.length(lengthM)} on ${f.thing(line)} is longer than a section may be (${f.length(limitM)}), and nothing on it could hold a switch.`,
    remedy: 'Mark a strainer on it, add a switch place along it, or raise the limit.',
  },
  bendTooTight: {
    message: ({ gateway, radiusM, leastM }: { gateway: ThingRef; radiusM: number; leastM: number }, f: Figures) =>
      `The crossing of ${f.thing(gateway)} bends at a radius of ${f.length(radiusM)}, tighter than its pipe allows (${f.length(leastM)}).`,
    remedy: ({ bowM }: { bowM: number }, f: Figures) =>
      `Make the curve smaller than ${f.length(bowM)}, or enter the least bend radius of the pipe in hand.`,
  },
  trenchNearTrench: {
    message: (
      { one, other, gapM, leastM }: { one: ThingRef; other: ThingRef; gapM: number | null; leastM: number },
      f: Figures,
    ) =>
      `The trenches under ${f.thing(one)} and ${f.thing(other)} ${gapM === null ? 'cross' : `come within ${f.length(gapM)} of`} each other; ${f.length(leastM)} ${assumedLeast}.`,
    remedy: 'Let one of them curve the other way, or make the curve smaller.',
  },
  trenchNearService: {
    message: (
      { gateway, service, gapM, leastM }: AtGateway & WithService & { gapM: number | null; leastM: number },
      f: Figures,
    ) =>
      `The trench under ${f.thing(gateway)} ${gapM === null ? 'crosses' : `comes within ${f.length(gapM)} of`} ${theService(service)}; ${f.length(leastM)} ${assumedLeast}: check local rules.`,
    remedy: ({ cable }: { cable: boolean }) =>
      `Have the service located before digging, and ask its owner how far a trench must keep from it; let the trench curve the other way, move the gateway, or dig there by hand.${cable ? ' Never lay the live cable in one conduit with it.' : ''}`,
  },
  twoEnergisers: {
    parted: ({ names }: { names: readonly string[] }, f: Figures) =>
      `Only switches that are off keep ${f.list(names, most)} from feeding the same fence: one switched on would put two energisers on it.`,
    message: ({ names }: { names: readonly string[] }, f: Figures) =>
      `${f.list(names, most)} feed the same fence. One fence is never fed by two energisers.`,
    remedy: ({ gapM }: { gapM: number }, f: Figures) =>
      `Take one of them away, or part the fences by a gap of at least ${f.length(gapM)} that nothing live bridges.`,
  },
  fencesTooNear: {
    message: ({ thing, other, gapM, leastM }: Two & { gapM: number; leastM: number }, f: Figures) =>
      `${f.headed(thing)} and ${f.thing(other)} are on different energisers and come within ${f.length(gapM)} of each other; ${f.length(leastM)} is the least.`,
    remedy: 'Move one of them, or close the gap with non-conductive material or an isolated metal barrier.',
  },
  earthElectrodeDistance: {
    notDrawn: ({ thing }: One, f: Figures) =>
      `Where the earth stakes of ${f.thing(thing)} are is not drawn, so their distance from other earthing systems is not known.`,
    notDrawnRemedy: 'Draw the earth field of this energiser.',
    noElectrodes: ({ thing, leastM }: { thing: ThingRef; leastM: number }, f: Figures) =>
      `Whether the earth stakes of ${f.thing(thing)} stand ${f.length(leastM)} from every other earthing system is not known: none is drawn.`,
    noElectrodesRemedy: 'Mark the earth electrodes of the mains and the telephone as services.',
    near: ({ thing, service, awayM, leastM }: One & WithService & { awayM: number; leastM: number }, f: Figures) =>
      `The earth stakes of ${f.thing(thing)} are ${f.length(awayM)} from ${theService(service)}; ${f.length(leastM)} is the least.`,
    nearRemedy: 'Move the earth stakes away from it.',
    maybeNear: (
      { thing, service, awayM, rowM, leastM }: One & WithService & { awayM: number; rowM: number; leastM: number },
      f: Figures,
    ) =>
      `The middle of the earth stakes of ${f.thing(thing)} is ${f.length(awayM)} from ${theService(service)}, but the row is ${f.length(rowM)} long and may reach nearer than ${f.length(leastM)}.`,
    maybeNearRemedy: 'Measure from the nearest stake, and move the row if need be.',
  },
  barbedWire: {
    message: ({ type, lines }: { type: string; lines: readonly string[] }, f: Figures) =>
      `"${type}" has barbed wire, and ${f.list(lines, most)} of this type ${f.plural(lines.length, { one: 'is', other: 'are' })} live. Barbed or razor wire is never electrified.`,
    remedy:
      'Keep every live wire on offsets at least 150 mm from the plane of the barbed wire and earth the barbed wire at regular intervals; or select a type without it, or make the line not live.',
  },
  powerLineVoltage: {
    message: ({ service, thing }: WithService & One, f: Figures) =>
      `${capital(theService(service))} passes over or near live wires (${f.thing(thing)}), and its voltage is not entered; the clearance it asks for is not known.`,
    remedy: ({ clearM }: { clearM: number }, f: Figures) =>
      `Enter its voltage. Until then keep ${f.length(clearM)} clear and ask its operator.`,
  },
  powerLineAngle: {
    message: ({ thing, service, angleDeg }: One & WithService & { angleDeg: number }, f: Figures) =>
      `${f.headed(thing)} crosses beneath ${theService(service)} at ${f.number(angleDeg, 0)}°. It should cross as nearly at right angles as possible.`,
    remedy: 'Turn the fence square to the line where they cross, or keep it from crossing at all.',
  },
  powerLineHeights: {
    message: (
      { thing, service, lengthM, zoneM, mostM, clearanceM }: One & WithService & PowerLineFigures,
      f: Figures,
    ) =>
      `${f.headed(thing)} runs for ${f.length(lengthM)} under or within ${f.length(zoneM)} of ${theService(service)}. There its wires may stand at most ${f.length(mostM)} above ground and must keep ${f.length(clearanceM)} clear of the conductors; neither height is known.`,
    remedy:
      'Have the height of the conductors measured by a licensed person, never with a pole or tape held up; note both heights with the line.',
  },
  overheadCrossing: {
    low: (
      { gateway, heightM, vehicles, leastM }: AtGateway & { heightM: number; vehicles: boolean; leastM: number },
      f: Figures,
    ) =>
      `The overhead wire at ${f.thing(gateway)} hangs ${f.length(heightM)} above ground; ${vehicles ? 'vehicles pass' : 'people and stock pass'} below, and ${f.length(leastM)} ${assumedLeast}: check local rules.`,
    lowRemedy: 'Raise it, or bury the crossing. What passes below and the local rules may ask for more.',
    nearPowerLine: (
      {
        gateway,
        service,
        awayM,
        zoneM,
        mostM,
      }: AtGateway & WithService & { awayM: number; zoneM: number; mostM: number },
      f: Figures,
    ) =>
      `The overhead wire at ${f.thing(gateway)} is ${f.length(awayM)} from ${theService(service)}, inside the ${f.length(zoneM)} where leads may stand at most ${f.length(mostM)} above ground.`,
    nearPowerLineRemedy: 'Bury this crossing, or move the gateway away from the power line.',
  },
  warningSigns: {
    message: (
      {
        thing,
        service,
        lengthM,
        signs,
        everyM,
      }: One & WithService & { lengthM: number; signs: number; everyM: number },
      f: Figures,
    ) =>
      `${f.headed(thing)} is live for ${f.length(lengthM)} along ${theService(service)}, which the public uses. It needs warning signs at frequent intervals: ${f.number(signs)} at one every ${f.length(everyM)} (the interval is an assumption). Whether they are up is not known.`,
    remedy: ({ signs }: { signs: number }, f: Figures) =>
      `Put up ${f.number(signs)} signs of at least 100 x 200 mm, yellow, lettered on both sides, and note it with the line.`,
  },
  publicUse: {
    message: ({ service, thing }: WithService & One, f: Figures) =>
      `${capital(theService(service))} meets or runs along live fence (${f.thing(thing)}); whether the public uses it is not known, and so not whether warning signs are needed.`,
    remedy: 'Enter whether it is public or private.',
  },
  publicWayCrossesFence: {
    message: ({ service, line }: WithService & { line: ThingRef }, f: Figures) =>
      `${capital(theService(service))}, which the public uses, crosses ${f.thing(line)} where there is no gateway. A public way through a live fence has a non-electrified gate or a stile, with warning signs on the wires beside it.`,
    remedy: 'Place a gateway there, or note the stile with the line, and put up the signs.',
  },
  earthAcrossGateway: {
    earthWire: (values: NoEarth & { type: string }, f: Figures) =>
      `${noEarth(values, f)}, and its fence type "${values.type}" has an earth-return wire that is cut at this gateway.`,
    poorSoil: (values: NoEarth & { soilOhmM: number }, f: Figures) =>
      `${noEarth(values, f)}, and soil of ${f.number(values.soilOhmM)} ohm m conducts poorly.`,
    remedy: ({ overhead }: { overhead: boolean }) => `${carryEarth(overhead)}.`,
    notKnown: (values: NoEarth, f: Figures) =>
      `${noEarth(values, f)}. Whether it is needed depends on the posts, which are not recorded.`,
    notKnownRemedy: ({ overhead }: { overhead: boolean }) => {
      const carry = carryEarth(overhead);
      return `With timber or plastic posts, or dry, sandy or stony ground: ${carry.charAt(0).toLowerCase()}${carry.slice(1)}, and enter it.`;
    },
  },
  switchWrongSide: {
    message: ({ thing }: One, f: Figures) =>
      `${f.headed(thing)} stands on the far side of its crossing: the buried cable stays live when it is switched off.`,
    remedy: 'Move it to the supply side of the gateway.',
    fix: 'Move it to the supply side',
  },
  buildingWire: {
    message: ({ thing }: One, f: Figures) =>
      `${thing.kind === 'gateway' ? `The live cable at ${f.thing(thing)}` : `The cable of ${f.thing(thing)}`} is entered as building wire, whose insulation is not made for the voltage of a fence.`,
    plannedRemedy: 'Select fence lead-out cable rated 10 kV or more.',
    builtRemedy:
      'If it lies there, take it for a fault to come: keep people and stock off, and replace it with fence lead-out cable rated 10 kV or more. If the entry is wrong, select the cable that lies there.',
    fix: 'Plan fence lead-out cable, steel core 2.5 mm',
    source: `${annexBb}: insulated high-voltage cable; 10 kV: common practice, no source`,
  },
  cableInTrench: {
    same: (values: { gateway: ThingRef; text: string }, f: Figures) =>
      `${recordedIn(values, f)}: in one conduit with the live cable, which is forbidden for mains, communication and data cables.`,
    sameRemedy:
      'Energiser off, and ask the owner of that cable before you touch it. Give the live cable a conduit of its own.',
    own: (values: { gateway: ThingRef; text: string }, f: Figures) =>
      `${recordedIn(values, f)}, in a conduit of its own.`,
    ownRemedy: oneTrench,
    notSaid: (values: { gateway: ThingRef; text: string; cables: readonly string[] }, f: Figures) =>
      `${recordedIn(values, f)} (${f.list(values.cables, most)}). Whether it has a conduit of its own is not said; one conduit with the live cable is forbidden.`,
    notSaidRemedy: `In one conduit: take one of the two out. ${oneTrench} Then write in the record "in its own conduit".`,
    drawn: (
      { service, thing, sharedM, withinM }: WithService & One & { sharedM: number; withinM: number },
      f: Figures,
    ) =>
      `${capital(theService(service))} is drawn along the trench ${trenchOf(thing, f)}, for ${f.length(sharedM)} within ${f.length(withinM)} of it. One conduit with the live cable is forbidden.`,
    drawnRemedy: `Lay the live cable elsewhere, or at least in a conduit of its own. ${oneTrench}`,
    source: `${annexBb}; what may share a trench: local rules`,
  },
  trenchDepth: {
    measured: (
      {
        gateway,
        depthM,
        alongM,
        vehicles,
        leastM,
      }: AtGateway & { depthM: number; alongM: number; vehicles: boolean; leastM: number },
      f: Figures,
    ) =>
      `The pipe under ${f.thing(gateway)} was measured ${f.length(depthM)} deep, to its top, ${f.length(alongM)} along the trench; ${whoPasses(vehicles)}, and a trench of ${f.length(leastM)} is the least.`,
    measuredRemedy: 'Dig it deeper or protect it from above, and keep heavy wheels off until then.',
    planned: (values: AtGateway & { depthM: number; vehicles: boolean; leastM: number }, f: Figures) =>
      `The trench under ${f.thing(values.gateway)} is planned ${f.length(values.depthM)} deep; ${whoPasses(values.vehicles)}, and ${f.length(values.leastM)} is the least.`,
    plannedRemedy: 'Plan it deeper.',
    wasPlanned: (values: AtGateway & { depthM: number; vehicles: boolean; leastM: number }, f: Figures) =>
      `The trench under ${f.thing(values.gateway)} was planned ${f.length(values.depthM)} deep and not measured; ${whoPasses(values.vehicles)}, and ${f.length(values.leastM)} is the least.`,
    wasPlannedRemedy:
      'Measure it. If it is so shallow, dig it deeper or protect it from above, and keep heavy wheels off until then.',
    fix: ({ depthM }: { depthM: number }, f: Figures) => `Plan it ${f.length(depthM)} deep`,
  },
  risersSealed: {
    open: ({ gateway }: AtGateway, f: Figures) =>
      `The risers at ${f.thing(gateway)} are not sealed: water and ants get into the pipe.`,
    openRemedy: 'Turn their ends downwards, plug them with sealant, and note it.',
    notNoted: ({ gateway }: AtGateway, f: Figures) =>
      `Whether the risers at ${f.thing(gateway)} are sealed is not noted.`,
    notNotedRemedy: 'Look, and enter yes or no with the crossing.',
  },
  recordedElsewhere: {
    message: ({ gateway, apartM }: AtGateway & { apartM: number }, f: Figures) =>
      `The crossing under ${f.thing(gateway)} lies where the gate's posts stood when it was dug; they are drawn up to ${f.length(apartM)} from there now.`,
    remedy:
      'Find goes by where it was dug. If another is to be dug, remove this one and answer that it stays in the ground.',
  },
  tiePostMoved: {
    message: ({ post, labels, points, apartM }: MovedPost, f: Figures) =>
      `${capital(f.say(post))} is drawn ${f.length(apartM)} from where it stood when ${f.list(labels.map(f.say), most)} ${f.plural(points, { one: 'was', other: 'were' })} taped from it.`,
    remedy: 'The tapes count from where it stood. If the drawing is wrong, move it back.',
    point: ({ label }: { label: Phrase }, f: Figures) => `the ${f.say(label)}`,
  },
  recordWithoutCrossing: {
    message: ({ points, post }: { points: number; post: string | null }, f: Figures) => {
      const what =
        points === 0
          ? 'The record'
          : f.plural(points, { one: 'A measured point', other: `${f.number(points)} measured points` });
      const from = post === null ? '' : `, taped from ${post || 'a post'},`;
      return `${what} of a buried crossing that is drawn no longer${from} ${points > 1 ? 'are' : 'is'} still in this file.`;
    },
    remedy: 'The cable may still be in the ground: the dig check warns of it where its tapes allow it.',
  },
};

type PowerLineFigures = {
  readonly lengthM: number;
  readonly zoneM: number;
  readonly mostM: number;
  readonly clearanceM: number;
};

type OverLimit = {
  readonly letter: string;
  readonly lines: readonly string[];
  readonly length: { readonly isM: number; readonly overByM: number; readonly limitM: number } | null;
  readonly gateways: { readonly count: number; readonly limit: number } | null;
};

type MovedPost = {
  readonly post: Phrase;
  readonly labels: readonly Phrase[];
  readonly points: number;
  readonly apartM: number;
};

/** What a fence type's name says of its wires, and what is entered. */
type PlainWires = {
  /** So many wires in all, or so many plain ones. */
  readonly named: { readonly wires: number } | { readonly plain: number };
  readonly live: number;
  readonly earth: number;
  readonly barbed: number;
};

function plainWires({ named, live, earth, barbed }: PlainWires, f: Figures): string {
  const said = 'wires' in named ? `${named.wires} wires` : `${named.plain} plain`;
  const kinds = [
    live > 0 ? `${live} live` : '',
    earth > 0 ? `${earth} earth` : '',
    barbed > 0 ? `${barbed} barbed` : '',
  ].filter((words) => words !== '');
  return `its name says ${said}, it has ${kinds.length > 0 ? f.list(kinds) : 'none'}`;
}
