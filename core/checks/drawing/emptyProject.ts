import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Nothing is drawn yet. */
export const emptyProject: Check = ({ project, property }) =>
  project.fenceLine.size > 0
    ? []
    : [
        finding('emptyProject', 'hint', ['property'], {
          message: message('checks.emptyProject.message', { name: property.name }),
          remedy: message('checks.emptyProject.remedy'),
        }),
      ];
