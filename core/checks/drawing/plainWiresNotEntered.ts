import { changeThing } from '../../model/edits/changeThing.ts';
import type { Project } from '../../model/project.ts';
import type { FenceType } from '../../model/things.ts';
import { message } from '../../words/message.ts';
import type { Found } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Fence types in use whose name says more wires than are entered. */
export const plainWiresNotEntered: Check = ({ project }) => {
  const used = new Set([...project.fenceLine.values()].map(({ typeId }) => typeId));
  return plainWireFindings(project, used);
};

/** The same, of these fence types. */
export function plainWireFindings(project: Project, typeIds: ReadonlySet<string>): Found[] {
  return [...typeIds].flatMap((typeId) => {
    const type = project.fenceType.get(typeId);
    const missing = type && missingPlainWires(type);
    if (!missing) return [];
    return finding('plainWiresNotEntered', 'warning', [typeId], {
      message: message('checks.plainWiresNotEntered.message', { ...missing, type: type.name }),
      remedy: message('checks.plainWiresNotEntered.remedy'),
      fixes: [
        {
          label: message('checks.plainWiresNotEntered.fix', missing),
          edit: changeThing({ kind: 'fenceType', id: typeId, to: { plainWires: missing.plainWires } }),
        },
      ],
    });
  });
}

/** Plain wires that nobody entered, and by what they are known. */
export interface MissingPlainWires {
  readonly plainWires: number;
  /** What the type's name says: so many wires in all, or so many plain ones. */
  readonly named: { readonly wires: number } | { readonly plain: number };
  readonly live: number;
  readonly earth: number;
  readonly barbed: number;
}

/**
 * The plain wires that a fence type's name speaks of, where nobody has said how many it has (types of older files had
 * no such field); null where the name says no more than is entered.
 */
export function missingPlainWires(type: FenceType): MissingPlainWires | null {
  if (type.plainWires !== undefined) return null;
  const { liveWires: live, earthWires: earth, barbedWires: barbed } = type;
  const { wires, plain } = wiresNamed(type.name);
  const plainWires = plain ?? (wires === undefined ? 0 : wires - live - earth - barbed);
  if (plainWires <= 0 || plainWires > mostWires) return null;
  return { plainWires, named: plain === undefined ? { wires: wires! } : { plain }, live, earth, barbed };
}

/** Far more than any fence has. */
const mostWires = 30;

const numberWords = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const kindWords = 'live|earth|plain|dead|barbed|barb';

/** "seven wires", "2 live", "six plain", "4-wire", "three strand barbed"; never the "2.5" of "2.5 mm wire". */
const countOfWires = new RegExp(
  String.raw`(?<![\d.,])\b(${numberWords.join('|')}|\d{1,2})\b(?![.,]\d)[\s-]*(?:(${kindWords})\b|(?:wires?|strands?)\b(?:\s+(${kindWords})\b)?)`,
  'g',
);

/** How many wires a name speaks of: in all, and of each kind. Of several numbers for one kind the last counts. */
function wiresNamed(name: string): { readonly wires?: number; readonly plain?: number } {
  const counts: { wires?: number; plain?: number } = {};
  for (const [, word, before, after] of name.toLowerCase().matchAll(countOfWires)) {
    const count = numberWords.includes(word!) ? numberWords.indexOf(word!) + 1 : Number(word);
    const kind = before ?? after;
    if (kind === undefined) counts.wires = count;
    else if (kind === 'plain' || kind === 'dead') counts.plain = count;
  }
  return counts;
}
