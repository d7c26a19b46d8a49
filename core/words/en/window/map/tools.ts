import { formatRound } from '../../../numbers/write.ts';
import type { Figures, Phrase } from '../../../types.ts';
import { drawn } from '../../kinds/drawn.ts';

type Named = { readonly name: string };
type OfService = { readonly what: keyof typeof called };

const called = drawn.service.what.choices;

/** The tools of the map: names, what they are for, what the next click does. */
export const tools = {
  names: {
    choose: 'Select',
    fence: 'Fence',
    gateway: 'Gateway',
    source: 'Energiser',
    post: 'Post',
    switch: 'Switch',
    place: 'Place',
    digPoint: 'Hole',
    digLine: 'Trench',
    digArea: 'Area',
  },
  purposes: {
    choose: 'Click a thing to select it; drag its handles to change it.',
    fence: 'Draw a fence line, click by click.',
    gateway: 'Place a gateway on a fence line.',
    source: 'Place the energiser, then lead out to the fence.',
    post: 'Mark a strainer or another post that does not move.',
    switch: 'Place a cut-out switch on a fence line.',
    place: 'Mark where the plan may set a switch along a fence.',
    digPoint: 'Mark where a hole will be dug.',
    digLine: 'Draw where a trench will be dug.',
    digArea: 'Draw the outline of what will be dug or ploughed.',
  },
  /** In the list of keys, where not every workspace has the tool. */
  onlyIn: ({ tool, workspaces }: { tool: string; workspaces: readonly string[] }, f: Figures) =>
    `${tool}, in ${f.list(workspaces)}`,
  /** Of several tools that draw point by point. */
  nextPoint: 'Click the next point, or type its length and bearing. Esc gives up.',
  nextOrEnd: 'Click the next point. Enter or a double click ends it; Backspace takes a point back.',
  typed: {
    firstPoint: 'Set the first point on the map; then lengths and bearings can be typed.',
    bearingToo: 'Type a bearing too, or point the way.',
    length: 'Type a length.',
  },
  dig: {
    areaTooFew: 'An area needs three corners or more.',
    trenchTooFew: 'A trench needs two points or more.',
    hole: 'Click where you will dig.',
    trenchBegins: 'Click where the trench begins.',
    firstCorner: 'Click the first corner of the area.',
  },
  fence: {
    tooFew: 'A fence line needs at least two points.',
    noType: 'There is no fence type yet. Make one in the inspector first.',
    draw: ({ name }: Named) => `Draw fence ${name}`,
    begins: 'Click where the fence begins.',
    nextOrEnd: 'Click the next point. Enter or a double click ends the line; Backspace takes a point back.',
  },
  gateway: {
    noLine: 'Point at a fence line; a gateway stands in one.',
    place: ({ name }: Named) => `Place gateway ${name}`,
    click: ({ widthM }: { widthM: number }, f: Figures) =>
      `Click to place a gateway ${f.tape(widthM)} wide. Type another width.`,
    point: 'Point at a fence line where the gateway shall be.',
    tooWide: ({ mostM }: { mostM: number }, f: Figures) => `A gateway is at most ${formatRound(mostM, f.units)} wide.`,
    tag: ({ widthM, spot }: { widthM: number; spot: Phrase | null }, f: Figures) =>
      spot === null ? f.tape(widthM) : `${f.tape(widthM)}, ${f.say(spot)}`,
  },
  place: {
    click: 'Click to let the plan set a switch here.',
    point: 'Point at a live fence, where a switch could stand.',
    noLine: 'Point at a live fence line: elsewhere there is nothing to cut off.',
    add: ({ name }: Named) => `Add a place for a switch on ${name}`,
    couldGo: ({ spot }: { spot: Phrase }, f: Figures) => `a switch could go here, ${f.say(spot)}`,
  },
  post: {
    click: 'Click where the post stands. On a fence it marks a strainer.',
    there: ({ spot }: { spot: Phrase }, f: Figures) => `There is ${f.say(spot)} already.`,
    mark: ({ name }: Named) => `Mark post ${name}`,
  },
  service: {
    tooFew: ({ what, least }: OfService & { least: number }, f: Figures) =>
      `${called[what]}: it needs at least ${f.number(least)} points.`,
    draw: ({ name }: Named) => `Draw ${name}`,
    stands: ({ what }: OfService) => `${called[what]}: click where it stands.`,
    begins: ({ what }: OfService) => `${called[what]}: click where it begins.`,
    alongEdge: 'Click along its edge. Enter or a double click closes it; Backspace takes a point back.',
    markPurpose: 'Mark where it stands.',
    drawPurpose: 'Draw it, click by click.',
  },
  source: {
    place: ({ name }: Named) => `Place energiser ${name}`,
    noLine: 'Lead out to the fence: click on a live fence line.',
    draw: ({ name }: Named) => `Draw lead-out ${name}`,
    click: 'Click where the energiser stands.',
    leadOut: 'Lead out: click on the fence to end there, or beside it for a bend. Esc leaves it without.',
  },
  switch: {
    click: 'Click to place a cut-out switch here.',
    point: 'Point at a live fence, best at a gate post.',
    noLine: 'Point at a fence line; a switch stands in one.',
    place: ({ name }: Named) => `Place switch ${name}`,
  },
};
