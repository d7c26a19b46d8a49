import { called } from '../../model/edits/support/find.ts';
import { capital } from '../../model/text.ts';
import type { Check } from '../support/context.ts';
import { finding, standard, theService } from '../support/make.ts';
import { stretchesWithin } from '../support/zones.ts';

const alongM = 15;

/** A road or path beside live fence of which nobody has said whether the public uses it. */
export const publicUse: Check = ({ services, wires }) =>
  services.flatMap(({ service, xy }) => {
    if ((service.what !== 'road' && service.what !== 'path') || service.open !== null) return [];
    const near = wires.nearPath(xy, alongM).find((wire) => stretchesWithin(wire.path, xy, alongM).length > 0);
    if (!near) return [];
    return finding('publicUse', 'notKnown', [service.id], {
      message: `${capital(theService(service))} meets or runs along live fence (${called(near.thing)}); whether the public uses it is not known, and so not whether warning signs are needed.`,
      remedy: 'Enter whether it is public or private.',
      source: standard,
      at: service.path[0] ?? null,
    });
  });
