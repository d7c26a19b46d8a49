import type { Figures, Phrase, ThingRef } from '../types.ts';

type One = { readonly thing: ThingRef };
type Two = { readonly thing: ThingRef; readonly other: ThingRef };
type OnLine = { readonly line: ThingRef };
type InGateway = { readonly gateway: ThingRef };
type Place = { readonly lon: string; readonly lat: string };
type OfKind = { readonly kind: ThingRef['kind'] };

type TooLarge = OfKind & {
  readonly field: Phrase;
  readonly value: number;
  readonly unit: string;
  readonly by: ThingRef;
  readonly byField: Phrase;
  readonly most: number;
  readonly advice: Phrase;
};

const inUnit = (value: number, unit: string, f: Figures) =>
  unit === 'm' ? f.length(value) : `${f.number(value)} ${unit}`;

const paths = { line: 'line', leadOut: 'lead-out', fenceLine: 'fence line' };

/** How the fence lines differ that were to be joined. */
const differences = { types: 'fence types', live: 'live and dead wires', states: 'states (planned and built)' };

/** Why an edit is refused: what is wrong, where, and what to do. */
export const edits = {
  /** What is given to things when they are made. */
  names: {
    fenceTypes: {
      one: 'One live wire',
      two: 'Two live wires',
      four: 'Four wires, two live, one earth',
      boundary: 'Boundary, seven wires, two live, one earth',
    },
  },
  notFound: ({ kind }: OfKind, f: Figures) =>
    `This ${f.kind(kind)} is not in the property any more. Select another, or undo what took it away.`,
  built: ({ thing }: One, f: Figures) =>
    `The ${f.thing(thing)} is built; the plan can't take it away. Pin it, or delete it yourself once it is gone.`,
  fields: {
    /** A new thing without it. */
    missing: ({ kind, field }: OfKind & { field: string }, f: Figures) => `The ${f.kind(kind)} has no "${field}".`,
    unknown: ({ kind, field }: OfKind & { field: string }, f: Figures) => `A ${f.kind(kind)} has no "${field}".`,
    notValid: (
      { kind, field, given, mustBe }: OfKind & { field: Phrase; given: string | null; mustBe: Phrase },
      f: Figures,
    ) =>
      `The ${f.say(field)} of the ${f.kind(kind)} can't be ${given === null ? 'what was given' : `"${given}"`}. It must be ${f.say(mustBe)}.`,
    /** A figure is more than the thing that it hangs on allows. */
    tooLarge: ({ kind, field, value, unit, by, byField, most, advice }: TooLarge, f: Figures) =>
      `The ${f.say(field)} of the ${f.kind(kind)} can't be ${inUnit(value, unit, f)}: ${f.thing(by)} has a ${f.say(byField)} of ${inUnit(most, unit, f)}. ${f.say(advice)}`,
    nameTaken: ({ kind, name }: OfKind & { name: string }, f: Figures) =>
      `There is a ${f.kind(kind)} called ${name} already. Names that people act on must differ: choose another.`,
    ownEdit: ({ kind, field }: OfKind & { field: Phrase }, f: Figures) =>
      `The ${f.say(field)} of a ${f.kind(kind)} is changed on the map, because other things hang on it.`,
    voltageOrder: ({ into500OhmV, openCircuitV }: { into500OhmV: number; openCircuitV: number }, f: Figures) =>
      `The output into 500 ohm (${f.number(into500OhmV)} V) can't be above the output with no load (${f.number(openCircuitV)} V). Check the label.`,
  },
  theProperty: 'The property itself cannot be deleted. Close the file instead.',
  inUse: ({ thing, user, more }: { thing: ThingRef; user: ThingRef; more: number }, f: Figures) =>
    `The ${f.thing(thing)} is in use: ${f.thing(user)}${more > 0 ? ` and ${f.number(more)} more` : ''}. Give those another ${f.kind(thing.kind)} first.`,
  corners: {
    gone: ({ thing }: One, f: Figures) => `The ${f.thing(thing)} has no such corner any more. Select it again.`,
    tooFew: ({ line, closed }: OnLine & { closed: boolean }, f: Figures) =>
      `${closed ? 'A closed line needs three corners' : 'A line needs two ends'}. Delete the ${f.thing(line)} instead.`,
    noLength: ({ line }: OnLine, f: Figures) =>
      `Without this corner the ${f.thing(line)} would run back to where it stands. Delete the corner beside it first.`,
    holdsThings: ({ line, pieceM, things }: OnLine & { pieceM: number; things: readonly ThingRef[] }, f: Figures) =>
      `The last ${f.length(pieceM)} of the ${f.thing(line)} would go, and on it ${f.plural(things.length, { one: 'stands', other: 'stand' })} ${f.list(things.map(f.thing))}. Move or delete that first.`,
    noStraight: ({ line }: OnLine, f: Figures) =>
      `The ${f.thing(line)} has no such straight any more. Select the place again.`,
    doubledHere: ({ line }: OnLine, f: Figures) =>
      `The ${f.thing(line)} already has a corner here. Move that one instead.`,
    doubledThere: ({ line }: OnLine, f: Figures) =>
      `The ${f.thing(line)} already has a corner there. Delete one of the two instead of laying them together.`,
  },
  leadOutTouchesNothing: 'The lead-out ends at no live fence line. End it on one.',
  hasEarthStakes: ({ thing }: One, f: Figures) => `The ${f.thing(thing)} has its earth stakes already. Change those.`,
  lines: {
    closedJoin: ({ line }: OnLine, f: Figures) => `The ${f.thing(line)} is closed and has no end to join.`,
    same: 'Select two different fence lines to join.',
    noCrossing: ({ thing, other }: Two, f: Figures) =>
      `The ${f.thing(thing)} and the ${f.thing(other)} do not cross here, or are joined already.`,
    noSelfCrossing: ({ line }: OnLine, f: Figures) =>
      `The ${f.thing(line)} does not cross itself, or is joined there already.`,
    crossInOpening: ({ gateway }: InGateway, f: Figures) =>
      `The lines cross in the opening of ${f.thing(gateway)}, where no wire runs. Move the gateway first.`,
    joined: ({ thing, other }: Two, f: Figures) =>
      `The ${f.thing(thing)} and the ${f.thing(other)} are joined here already.`,
    gapTooWide: ({ thing, other, gapM }: Two & { gapM: number }, f: Figures) =>
      `The ${f.thing(thing)} and the ${f.thing(other)} are ${f.length(gapM)} apart here. Draw the line on instead.`,
    apart: ({ thing, other }: Two, f: Figures) =>
      `The ${f.thing(thing)} and the ${f.thing(other)} do not meet end to end. Move an end of one onto an end of the other first.`,
    differ: ({ thing, other, by }: Two & { by: readonly (keyof typeof differences)[] }, f: Figures) =>
      `The ${f.thing(thing)} and the ${f.thing(other)} have different ${f.list(by.map((what) => differences[what]))}. Make them alike first, or leave them two lines.`,
    atEnd: ({ line, lengthM }: OnLine & { lengthM: number }, f: Figures) =>
      `This is an end of the ${f.thing(line)} (${f.length(lengthM)} long). Select a place between its ends.`,
  },
  openings: {
    noWidth: 'A gateway needs a width above zero and a place along its line. Enter both.',
    tooWide: ({ line, widthM, lengthM }: OnLine & { widthM: number; lengthM: number }, f: Figures) =>
      `The opening is ${f.length(widthM)} wide, and the ${f.thing(line)} only ${f.length(lengthM)} long. Select a narrower gateway or a longer line.`,
    offLine: ({ line, lengthM }: OnLine & { lengthM: number }, f: Figures) =>
      `The place is off the ${f.thing(line)}, which is ${f.length(lengthM)} long. Select a place on the line.`,
    pastEnd: ({ line, end, byM }: OnLine & { end: 'start' | 'end'; byM: number }, f: Figures) =>
      `The opening would reach past the ${end} of the ${f.thing(line)}. Move it at least ${f.length(byM)} along.`,
    overlaps: ({ other }: { other: ThingRef }, f: Figures) =>
      `The opening would overlap ${f.thing(other)}. Move it along, or make one of the two narrower.`,
    runTooShort: ({ runM, widthM }: { runM: number; widthM: number }, f: Figures) =>
      `The run of fence here is ${f.length(runM)} long between two joins; an opening of ${f.length(widthM)} does not fit into it. Select a narrower gateway or another place.`,
    lineJoinsInside: ({ line }: OnLine, f: Figures) =>
      `Another fence line joins the ${f.thing(line)} inside the opening. Move the gateway to one side of it.`,
    acrossCorner: ({ line, bendDeg }: OnLine & { bendDeg: number }, f: Figures) =>
      `The ${f.thing(line)} turns by ${f.number(bendDeg, 0)}° inside the opening; a gateway is straight. Move it to one side of the corner.`,
  },
  switches: {
    placeTaken: ({ other }: { other: ThingRef }, f: Figures) =>
      `There is ${f.thing(other)} at this place already. Use that one.`,
    notLive: ({ line }: OnLine, f: Figures) =>
      `The ${f.thing(line)} is not live, so there is nothing to cut off. Make it live first, or select another place.`,
    offLine: ({ line, lengthM }: OnLine & { lengthM: number }, f: Figures) =>
      `The place is off the ${f.thing(line)}, which is ${f.length(lengthM)} long.`,
    insideGateway: ({ gateway }: InGateway, f: Figures) =>
      `This place is in the opening of ${f.thing(gateway)}, where no wire runs. Select one of its posts.`,
  },
  places: {
    notOnEarth: ({ lon, lat }: Place) =>
      `Longitude ${lon}, latitude ${lat} is no place on earth. Longitudes run from -180 to 180, latitudes from -90 to 90.`,
    tooFar: ({ awayM }: { awayM: number }, f: Figures) =>
      `This point is ${f.length(awayM)} from the middle of the property; a property can be about ${f.length(100_000)} across. Check the coordinates, or start another property there.`,
    tooFewPoints: ({ what }: { what: keyof typeof paths }) => `A ${paths[what]} needs at least two points.`,
    noLength: ({ what, withinM }: { what: keyof typeof paths; withinM: number }, f: Figures) =>
      `This ${paths[what]} has no length: its points are within ${f.number(withinM * 1000)} mm of each other. Draw it longer.`,
    placed: 'The property has its place on earth already. Undo that first to place it anew.',
    bearing: ({ example }: { example: number }, f: Figures) =>
      `Enter a bearing in degrees clockwise from true north, such as ${f.number(example)}.`,
    samePoint: 'The two points are the same. Select two that are far apart.',
    misfit: ({ drawnM, realM }: { drawnM: number; realM: number }, f: Figures) =>
      `The two points are ${f.length(drawnM)} apart on the drawing and ${f.length(realM)} apart on the earth. Check both.`,
  },
  record: {
    hasPoint: 'This point of the crossing is recorded already. Select it, and write into that one.',
    trackNotPlaced: 'The property has no place on earth yet, so no track can be laid on it.',
    trackTooShort: 'The track has fewer than two points. Select one that was walked along the trench.',
    trackTooFar: ({ awayM, name }: { awayM: number; name: string }, f: Figures) =>
      `The track comes no nearer than ${f.length(awayM)} to ${name}. Select the one that was walked along its trench.`,
  },
  underlays: {
    notPlaced: ({ name }: { name: string }) =>
      `${name} has its place on earth, but the drawing has none yet. Give the property its place first, in the File menu.`,
    tooFar: ({ name, offM }: { name: string; offM: number }, f: Figures) =>
      `By its coordinates ${name} lies ${f.length(offM)} from this property. Check which coordinate system it was made in, and select it again with that one.`,
    gone: 'The picture is gone, or is placed already. Place the property on the earth in the File menu.',
    drawn:
      'Something is drawn or measured on the blank grid already. Place the property on the earth by two places of the drawing, in the File menu.',
  },
};
