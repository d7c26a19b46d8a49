import { changeThing } from '../../model/edits/changeThing.ts';
import type { Project } from '../../model/project.ts';
import type { FenceType } from '../../model/things.ts';
import { capital } from '../../words/text.ts';
import type { Finding } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { finding, listed } from '../support/make.ts';

/** Fence types in use whose name says more wires than are entered. */
export const plainWiresNotEntered: Check = ({ project }) => {
  const used = new Set([...project.fenceLine.values()].map(({ typeId }) => typeId));
  return plainWireFindings(project, used);
};

/** The same, of these fence types. */
export function plainWireFindings(project: Project, typeIds: ReadonlySet<string>): Finding[] {
  return [...typeIds].flatMap((typeId) => {
    const type = project.fenceType.get(typeId);
    const missing = type && missingPlainWires(type);
    if (!missing) return [];
    const { plainWires, text } = missing;
    return finding('plainWiresNotEntered', 'warning', [typeId], {
      message: `${capital(text)}: fence type "${type.name}". Enter the plain wires, or the order is short of them.`,
      remedy:
        'With them the order counts what strains and holds them too. If it has none, enter 0 with the fence type.',
      fixes: [
        {
          label: `Enter ${plainWires} plain ${plainWires === 1 ? 'wire' : 'wires'}`,
          edit: changeThing({ kind: 'fenceType', id: typeId, to: { plainWires } }),
        },
      ],
    });
  });
}

/**
 * The plain wires that a fence type's name speaks of, where nobody has said how many it has (types of older files had
 * no such field); null where the name says no more than is entered.
 */
export function missingPlainWires(type: FenceType): { readonly plainWires: number; readonly text: string } | null {
  if (type.plainWires !== undefined) return null;
  const { liveWires, earthWires, barbedWires } = type;
  const named = wiresNamed(type.name);
  const entered = liveWires + earthWires + barbedWires;
  const plainWires = named.plain ?? (named.wires === undefined ? 0 : named.wires - entered);
  if (plainWires <= 0 || plainWires > mostWires) return null;
  const said = named.plain === undefined ? `${named.wires} wires` : `${plainWires} plain`;
  const kinds = Object.entries({ live: liveWires, earth: earthWires, barbed: barbedWires })
    .filter(([, count]) => count > 0)
    .map(([kind, count]) => `${count} ${kind}`);
  return { plainWires, text: `its name says ${said}, it has ${kinds.length > 0 ? listed(kinds) : 'none'}` };
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
