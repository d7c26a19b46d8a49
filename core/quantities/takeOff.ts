import { orderDefaults } from '../model/orderDefaults.ts';
import type { Project } from '../model/project.ts';
import { pushAll } from '../model/pushAll.ts';
import type { OrderSettings } from '../model/things.ts';
import { countFence } from './takeOff/countFence.ts';
import { countFixedPosts } from './takeOff/countFixedPosts.ts';
import { countGateways } from './takeOff/countGateways.ts';
import { countSigns } from './takeOff/countSigns.ts';
import { countSupply, countSwitches } from './takeOff/countSupply.ts';
import { fencePosts } from './takeOff/fencePosts.ts';
import type { TakeOffInput } from './takeOff/input.ts';
import { Tally } from './takeOff/tally.ts';
import type { NotCounted, QuantityGroup, TakeOff } from './types.ts';

const groups: readonly QuantityGroup[] = [
  'wire',
  'posts',
  'fittings',
  'gateways',
  'crossings',
  'switches',
  'supply',
  'signs',
  'work',
];

/** How the order of a project is worked out. */
export function orderSettingsOf(project: Project): OrderSettings {
  return project.orderSettings.get('order') ?? orderDefaults;
}

/** Everything that the drawing asks for, counted, with the pieces that make up each figure. Lengths are metres. */
export function takeOff(input: Omit<TakeOffInput, 'settings'> & { readonly settings?: OrderSettings }): TakeOff {
  const full: TakeOffInput = { ...input, settings: input.settings ?? orderSettingsOf(input.project) };
  const tally = new Tally();
  const fence = fencePosts(full.project, full.survey, full.settings);
  const notCounted = [...countFence(full, fence, tally)];
  countFixedPosts(full, fence, tally);
  pushAll(notCounted, countGateways(full, tally));
  countSwitches(full, tally);
  countSupply(full, tally);
  countSigns(full, tally);
  const order = ({ group }: { readonly group: QuantityGroup }) => groups.indexOf(group);
  return {
    quantities: tally.quantities().sort((a, b) => order(a) - order(b)),
    notCounted: [...linesNotOnEarth(full), ...notCounted],
  };
}

function linesNotOnEarth({ project, survey }: TakeOffInput): NotCounted[] {
  return [...project.fenceLine.values()]
    .filter(({ id }) => !survey.lines.has(id))
    .map(({ id, name }) => ({
      code: 'lineNotOnEarth',
      thingId: id,
      name,
    }));
}
