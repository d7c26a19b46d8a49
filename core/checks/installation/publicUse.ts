import { refTo, refToService } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';
import { stretchesWithin } from '../support/zones.ts';

const alongM = 15;

/** A road or path beside live fence of which nobody has said whether the public uses it. */
export const publicUse: Check = ({ services, wires }) =>
  services.flatMap(({ service, xy }) => {
    if ((service.what !== 'road' && service.what !== 'path') || service.open !== null) return [];
    const near = wires.nearPath(xy, alongM).find((wire) => stretchesWithin(wire.path, xy, alongM).length > 0);
    if (!near) return [];
    return finding('publicUse', 'notKnown', [service.id], {
      message: message('checks.publicUse.message', { service: refToService(service), thing: refTo(near.thing) }),
      remedy: message('checks.publicUse.remedy'),
      source: standard,
      at: service.path[0] ?? null,
    });
  });
