import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { finding, headed } from '../support/make.ts';

/** A line or a lead-out that touches inside a gateway's opening, where there is no wire to join. */
export const touchInOpening: Check = ({ project, survey }) =>
  survey.network.problems.flatMap(({ code, thingIds, at }) => {
    if (code !== 'touchInOpening') return [];
    const [gatewayId, otherId] = thingIds;
    const gateway = project.gateway.get(gatewayId!);
    const other = project.fenceLine.get(otherId!) ?? project.leadOut.get(otherId!) ?? project.energiser.get(otherId!);
    if (!gateway) return [];
    const what = other ? headed(other) : 'Something';
    return finding('touchInOpening', 'error', thingIds, {
      message: `${what} touches the fence inside the opening of ${called(gateway)}, where no wire runs; it is joined to nothing there.`,
      remedy: 'Move the gateway to one side, or end the line at one of its posts.',
      at,
    });
  });
