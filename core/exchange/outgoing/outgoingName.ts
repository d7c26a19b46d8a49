import type { Project } from '../../model/project.ts';
import type { Figures } from '../../words/types.ts';
import { own } from '../preview/raw.ts';
import type { AnyFeature } from './featuresOf.ts';

/** What a feature is called on another program's map. */
export function outgoingName(project: Project, { properties, id }: AnyFeature, f: Figures): string {
  const words = f.words.exchange.outgoing;
  const text = (field: string) => {
    const value: unknown = own(properties ?? {}, field);
    return typeof value === 'string' ? value : '';
  };
  const isPlanned = own(properties ?? {}, 'inTheGround') === false;
  const [kind, ...rest] = String(id).split(':');
  switch (kind) {
    case 'crossing': {
      const gateway = project.gateway.get(text('gatewayId'))?.name ?? null;
      return isPlanned ? words.plannedCrossing({ gateway }) : words.crossing({ gateway });
    }
    case 'leadOut':
      return isPlanned ? words.plannedLeadOut({ name: text('name') }) : text('name') || rest.join(':');
    case 'inGround':
      return words.left({ name: text('name'), state: text('state') });
    case 'buriedPoint': {
      const crossing = project.crossing.get(text('crossingId'));
      const gateway = project.gateway.get(crossing?.gatewayId ?? '')?.name ?? null;
      const known = text('placeKnownBy');
      // A handheld shows the name and little else.
      const { ambiguous, contradictory } = f.words.locate.basis;
      const open = known === ambiguous || known === contradictory ? known : '';
      const point =
        text('name') || (words.points as Readonly<Record<string, string>>)[text('role')] || words.points.point;
      return words.pointOf({ point, gateway, open });
    }
    case 'earthField':
      return words.earthOf({ energiser: project.energiser.get(text('energiserId'))?.name ?? null });
    case 'reading':
      return words.reading({ date: text('date') });
    case 'run':
      return words.section({ letter: text('section') || '-' });
    case 'paddockOutline':
      return words.paddock;
    default:
      return text('name') || rest.join(':');
  }
}
