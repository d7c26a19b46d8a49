import { refTo } from '../../model/refTo.ts';
import type { DeadPart } from '../../network/types.ts';
import { type Message, message } from '../../words/message.ts';
import type { Found } from '../finding.ts';
import type { Check, CheckContext } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Live fence that no energiser reaches, and why. Parts cut off at a gateway are told by `missingCrossing`. */
export const deadPart: Check = (context) => context.survey.reach.deadParts.flatMap((part) => said(context, part));

function said({ project }: CheckContext, { lineIds, lengthM, why, at }: DeadPart): Found[] {
  const lines = lineIds.map((id) => project.fenceLine.get(id)?.name).filter((name) => name !== undefined);
  const dead = { lengthM, lines };
  const make = (severity: Found['severity'], what: Message, remedy: Message) => [
    finding('deadPart', severity, lineIds, { message: what, remedy, at }),
  ];
  const otherLine = (id: string) => {
    const line = project.fenceLine.get(id);
    return line ? refTo(line) : null;
  };
  switch (why.code) {
    // Each has a finding of its own.
    case 'noEnergiser':
    case 'energiserTouchesNothing':
    case 'noCrossing':
      return [];
    case 'openSwitch': {
      const switches = why.switchIds.map((id) => project.switch.get(id)?.name ?? id);
      return make(
        'hint',
        message('checks.deadPart.openSwitch', { ...dead, switches }),
        message('checks.deadPart.openSwitchRemedy'),
      );
    }
    case 'gap': {
      const values = { ...dead, other: otherLine(why.lineId), gapM: why.gapM };
      return make('warning', message('checks.deadPart.gap', values), message('checks.deadPart.gapRemedy'));
    }
    case 'crossesUnjoined': {
      const values = { ...dead, other: otherLine(why.lineId) };
      return make(
        'warning',
        message('checks.deadPart.crossesUnjoined', values),
        message('checks.deadPart.crossesUnjoinedRemedy'),
      );
    }
    case 'notJoined':
      return make('warning', message('checks.deadPart.notJoined', dead), message('checks.deadPart.notJoinedRemedy'));
  }
}
