import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Live fence without a source: nothing can be said about what is fed. */
export const noEnergiser: Check = ({ project }) => {
  const live = [...project.fenceLine.values()].find((line) => line.live);
  if (!live || project.energiser.size > 0) return [];
  return [
    finding('noEnergiser', 'warning', ['property'], {
      message: message('checks.noEnergiser.message'),
      remedy: message('checks.noEnergiser.remedy'),
      at: live.path[0] ?? null,
    }),
  ];
};
