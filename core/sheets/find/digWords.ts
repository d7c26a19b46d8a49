import { compassWord } from '../../locate/compass.ts';
import { depthInWords } from '../../locate/depthWords.ts';
import type { Dig, DigAnswer, DigFinding } from '../../locate/digCheck.ts';
import type { Figures } from '../../words/types.ts';

/** "2.10 m north-east" */
export function awayInWords({ distanceM, bearingDeg, thing }: DigFinding, f: Figures): string {
  const { dig } = f.words.sheets;
  if (bearingDeg === null) return thing.inGround ? dig.inTheDig : dig.drawnAcross;
  return dig.away({ distanceM, towards: compassWord(bearingDeg) });
}

export function verdictInWords({ overlap, thing }: DigFinding, f: Figures): string {
  const { planned, mayLie, near } = f.words.sheets.dig;
  if (!thing.inGround) return planned;
  return overlap ? mayLie : near;
}

/** How far off the distance may be, and what the place of the thing rests on. */
export function errorInWords({ thing, errorM }: DigFinding, f: Figures): string {
  if (!thing.inGround) return f.words.sheets.dig.asDrawn;
  const assumed = thing.basis === 'drawn' || thing.basis === 'contradictory';
  const basis = f.words.locate.basis[thing.basis];
  return f.words.sheets.dig.error({ errorM, basis, assumed, ways: thing.ways.length });
}

/** How deep a thing lies, shallowest first; "depth not known" where nothing tells. */
export function depthOfThing({ thing: { depth } }: DigFinding, f: Figures): string {
  return depth ? f.say(depthInWords(depth)) : f.words.sheets.dig.depthNotKnown;
}

/** The answer in one sentence, and a second one for what is only planned. */
export function digSentence({ findings, planned }: DigAnswer, { withinM }: Dig, f: Figures): string {
  const { dig } = f.words.sheets;
  const hit = findings.filter(({ overlap }) => overlap);
  const answer =
    findings.length === 0
      ? dig.nothing({ withinM })
      : hit.length === 0
        ? dig.nearby({ count: findings.length, withinM })
        : dig.doNotDig({ names: namesOf(hit, f) });
  const also = planned.length === 0 ? [] : [dig.alsoPlanned({ names: namesOf(planned, f) })];
  return f.words.things.sentences({ all: [answer, ...also] });
}

function namesOf(findings: readonly DigFinding[], f: Figures): string[] {
  return findings.map(({ thing }) => f.say(thing.name));
}
