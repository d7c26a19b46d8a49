/** What a note of a trench says about cables that a fence's cable may not share a conduit with. */
export interface NamedCables {
  /** The words that name them, as they were written: "mains", "phone". */
  readonly words: readonly string[];
  /** How they lie, where the note says so; else it has to be asked. */
  readonly conduit: 'same' | 'own' | 'notSaid';
}

/**
 * Mains, communication and data cables by what people call them. English only; a word too many asks a needless
 * question, a word too few is a danger, so whatever may mean one of them is in the list.
 */
const cableWords: readonly RegExp[] = [
  // Mains water and gas come in pipes.
  /\bmains?[\s-]*(?:power|electric\w*|supply|voltage|cables?|leads?|wires?|feed)\b/,
  /(?<!\b(?:water|gas|rising|sewer|sewage|drain|irrigation)[\s-]*)\bmains\b(?![\s-]*(?:water|gas|pressure|drain\w*|sewer\w*|sewage))/,
  /(?<!\bfence[\s-]*)\bpower(?:[\s-]*lines?|cables?|leads?)?\b(?![\s-]*(?:fence|fencing|fencer))/,
  /\belectric(?:al|als|s|ity)?\b(?![\s-]*(?:fenc\w+|netting|energi[sz]ers?))/,
  /\b(?:110|115|120|127|208|220|230|240|277|347|380|400|415|440|480|600|690)[\s-]*(?:v|volts?|vac|v\s*a\.?c\.?)\b/,
  /\b(?:3[.,]3|6[.,]6|11|22|33|66|110|132)[\s-]*kv\b/,
  /\b(?:low[\s-]*voltage|lv|ac[\s-]*(?:power|supply|cables?))\b/,
  /\b(?:single|one|two|three|[123])[\s-]*phase\b/,
  /\b(?:swa|armou?red|twin[\s-]*(?:and|&|\+)[\s-]*earth|t\s*&\s*e|tps|nyy|extension[\s-]*(?:leads?|cords?|cables?))\b/,
  /\b(?:pumps?|lights?|lighting|sheds?|house|dairy|building|supply|submain|sub-main)[\s-]*(?:cables?|leads?|wires?|wiring|flex|circuit)\b/,
  /(?<!\b(?:on|with|by|in|from)[\s-]*(?:(?:my|his|her|our|the|a)[\s-]*)?)\b(?:tele)?phones?\b(?![\s-]*(?:photos?|pictures?))/,
  /\b(?:telecom\w*|tel\.?[\s-]*(?:cables?|lines?|wires?)|land[\s-]*lines?|comms?|communications?|intercoms?)\b/,
  /\b(?:data|ethernet|network|internet|broadband|lan|adsl|vdsl|dsl|cat[\s-]*[5678][ae]?|utp|coax\w*|antenna[\s-]*cables?|aerial[\s-]*cables?|tv[\s-]*cables?)\b/,
  /\b(?:fibre|fiber)s?\b(?![\s-]*(?:glass|cement|board|mat|reinforced))/,
  /\b(?:optic(?:al)?[\s-]*(?:cables?|lines?)|fttp|ftth)\b/,
  /\b(?:cctv|cameras?[\s-]*cables?|alarms?[\s-]*(?:cables?|wires?)|sensors?[\s-]*(?:cables?|wires?)|(?:signal|control|bell|solenoid|irrigation)[\s-]*(?:cables?|wires?|wiring))\b/,
];

const anyCable = new RegExp(cableWords.map(({ source }) => `(?:${source})`).join('|'), 'g');

const hollow = String.raw`(?:conduit|pipe|duct|sleeve)s?\b`;
const sameConduit = new RegExp(
  String.raw`\b(?:same|shared|sharing(?:\s+(?:a|one|the))?)\s+(?:\w+\s+)?${hollow}|\bin\s+one\s+${hollow}\s+with\b`,
);
const notTheSame =
  /\b(?:not|never)\s+(?:laid\s+)?(?:(?:in|through|inside)\s+)?(?:(?:the|a)\s+)?(?:same|one|shared|sharing)\b/g;
const notKnown = /\bnot\s+(?:known|sure|clear|seen|said|checked)\b|\bun(?:known|clear|sure)\b|\?/;
const ownConduit = new RegExp(
  String.raw`\b${hollow}\s+of\s+(?:its|their)\s+own\b|\b(?:own|separate)\s+(?:\w+\s+)?${hollow}|\banother\s+(?:conduit|duct)\b`,
);

/** The cables that a note names, or null where it names none. "No mains", "mains: none" name none. */
export function cablesNamed(note: string): NamedCables | null {
  const said = plain(note);
  const words = clausesOf(said).flatMap((clause) => namedIn(clause));
  if (words.length === 0) return null;
  return { words: [...new Set(words)], conduit: conduitIn(said) };
}

/** Where a note speaks of both, "in the same conduit; water in its own pipe", the worse holds. */
function conduitIn(said: string): NamedCables['conduit'] {
  const rest = said.replaceAll(notTheSame, '');
  if (sameConduit.test(rest)) return 'same';
  const own = rest !== said || ownConduit.test(rest);
  return own && !notKnown.test(rest) ? 'own' : 'notSaid';
}

/** In small letters on one line; long runs of blanks and dashes, which would take long to search, are cut short. */
function plain(note: string): string {
  return note
    .toLowerCase()
    .replaceAll(/[\r\n]+/g, '; ')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/[\s-]{4,}/g, ' - ');
}

function clausesOf(said: string): string[] {
  return said.split(/[;!?]+|\.(?!\d)|\b(?:but|except|only|however|though|although)\b/);
}

/** The last "no" before a cable, and what stands between. */
const denied = /^.*\b(?:no|not any|without|nor|neither|never any|free of|clear of) (?<between>.*)$/;
/** Words that may stand between "no" and the cable that is not there: "no sign of any buried". */
const betweenWords = new Set(
  'other known visible buried live existing more sign signs trace of any a the cable cables line lines wire wires pipe pipes conduit conduits water gas drain drains old new or nor and here found'.split(
    ' ',
  ),
);

function namedIn(clause: string): string[] {
  const words: string[] = [];
  /** Where the last denial reaches to: "no mains, phone or data" denies all three, "no pipe, mains beside it" one. */
  let deniedTo = -1;
  const found = [...clause.matchAll(anyCable)];
  for (const [i, match] of found.entries()) {
    const [word] = match;
    if (match.index < deniedTo) continue;
    const after = clause.slice(match.index + word.length);
    if (/^ ?(?:cables?|lines?)? ?[:=-] ?(?:no|none|nil)\b/.test(after)) continue;
    const between = denied.exec(clause.slice(0, match.index))?.groups?.between;
    if (between !== undefined && onlyDescribes(between)) {
      deniedTo = listEnd(clause, match.index + word.length, found.slice(i + 1));
      continue;
    }
    words.push(word.trim());
  }
  return words;
}

/** A comma ends what is denied, unless an "or" follows it: "no water, gas or mains". */
function onlyDescribes(between: string): boolean {
  const words = between.split(/[ ,/&-]+/).filter((word) => word !== '');
  const sinceComma = between.slice(between.lastIndexOf(',') + 1);
  return words.every((word) => betweenWords.has(word)) && (!between.includes(',') || /\bn?or\b/.test(sinceComma));
}

/** How far a list of cables that begins at `from` goes on: "mains, phone or data", not "mains. Phone beside it". */
function listEnd(clause: string, from: number, next: readonly RegExpExecArray[]): number {
  let end = from;
  let sure = from;
  for (const match of next) {
    const joint = clause.slice(end, match.index);
    if (
      !/^(?:\s+(?:cables?|lines?|wires?))?\s*(?:,\s*(?:or|nor|and)?|\/|&|\bor\b|\bnor\b|\band\b)\s*(?:other\s+|any\s+)?$/.test(
        joint,
      )
    )
      break;
    end = match.index + match[0].length;
    // "No mains, phone" alone may be two statements; "or" and "nor" make it one.
    if (/\bn?or\b|\/|&/.test(joint)) sure = end;
  }
  return sure;
}
