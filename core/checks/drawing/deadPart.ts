import { called } from '../../model/edits/support/find.ts';
import type { DeadPart } from '../../network/types.ts';
import type { Finding } from '../finding.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { finding, listed } from '../support/make.ts';

/** Live fence that no energiser reaches, and why. Parts cut off at a gateway are told by `missingCrossing`. */
export const deadPart: Check = (context) => context.survey.reach.deadParts.flatMap((part) => said(context, part));

function said({ project, say }: CheckContext, { lineIds, lengthM, why, at }: DeadPart): Finding[] {
  const lines = lineIds.map((id) => project.fenceLine.get(id)).filter((line) => line !== undefined);
  const what = `${say(lengthM)} of live fence (${listed(lines.map(({ name }) => name))})`;
  const make = (severity: Finding['severity'], reason: string, remedy: string) => [
    finding('deadPart', severity, lineIds, { message: `${what} is dead: ${reason}.`, remedy, at }),
  ];
  switch (why.code) {
    // Each has a finding of its own.
    case 'noEnergiser':
    case 'energiserTouchesNothing':
    case 'noCrossing':
      return [];
    case 'openSwitch': {
      const names = why.switchIds.map((id) => project.switch.get(id)?.name ?? id);
      const verb = names.length > 1 ? 'stand' : 'stands';
      return make('hint', `${listed(names)} normally ${verb} open`, 'If it should be live, let it stand closed.');
    }
    case 'gap': {
      const other = project.fenceLine.get(why.lineId);
      const name = other ? called(other) : 'another line';
      return make('warning', `it comes within ${say(why.gapM)} of ${name} without touching`, 'Join the two.');
    }
    case 'crossesUnjoined': {
      const other = project.fenceLine.get(why.lineId);
      const name = other ? called(other) : 'another line';
      return make('warning', `it crosses ${name} without being joined`, 'Join them where they cross.');
    }
    case 'notJoined':
      return make('warning', 'it is joined to nothing that is fed', 'Draw it on to a line that is fed.');
  }
}
