import { allCrossings } from '../../core/locate/allCrossings.ts';
import { leftInGround } from '../../core/locate/inGround/leftInGround.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import type { LonLat, Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/survey/survey.ts';

/** Figures by the name of what they are of. */
type Figures = Readonly<Record<string, unknown>>;

/** What a property comes to, whatever shape its bodies have: how much there is of what, lengths, areas, sections, places. */
export function propertyDigest(things: readonly Thing[]): Readonly<Record<string, Figures>> {
  const project = projectOf(things);
  const survey = surveyOf(project);
  const { plane } = survey;
  const lying = allCrossings(project, survey);
  const gatewayName = (id: string) => project.gateway.get(id)?.name ?? id;
  return {
    counts: Object.fromEntries(Object.entries(project).map(([kind, table]) => [kind, (table as Project['post']).size])),
    linesM: byName(project.fenceLine.values(), ({ id }) => survey.lines.get(id)?.lengthM ?? null),
    gateways: byName(project.gateway.values(), ({ id }) => {
      const shape = survey.gateways.get(id);
      return shape ? place(plane.toLonLat(shape.centre)) : null;
    }),
    paddocksHa: Object.fromEntries(survey.paddocks.map(({ name, areaM2 }) => [name, areaM2 / 10_000])),
    sections: Object.fromEntries(
      survey.sections.map(({ letter, lengthM, gatewayIds, switchIds, fed }) => [
        letter,
        { lengthM, fed, gateways: gatewayIds.map(gatewayName).sort(), switches: switchIds.length },
      ]),
    ),
    crossings: Object.fromEntries(
      [...survey.crossings.values()].map(({ crossing, trenchM, pipeM, liveCableM }) => [
        gatewayName(crossing.gatewayId),
        { trenchM, pipeM, liveCableM },
      ]),
    ),
    measuredPoints: Object.fromEntries(
      [...lying.values()].flatMap(({ points }) =>
        points.map(({ point, places }) => [point.id, places.map(({ xy }) => place(plane.toLonLat(xy)))]),
      ),
    ),
    leftInGround: Object.fromEntries(
      leftInGround(project, survey).map(({ thing, path }) => [
        thing.name,
        { fate: thing.fate, from: path[0] ? place(plane.toLonLat(path[0])) : null },
      ]),
    ),
    handovers: Object.fromEntries([...project.handover.values()].map((each) => [each.number, inside(each.things)])),
    keptPlans: Object.fromEntries([...project.keptPlan.values()].map((each) => [each.name, inside(each.things)])),
  };
}

function byName<T extends { readonly name: string }>(things: Iterable<T>, figure: (thing: T) => unknown): Figures {
  return Object.fromEntries([...things].map((thing) => [thing.name, figure(thing)]));
}

/** A kept drawing: its things and its lengths. */
function inside(things: readonly Thing[]): unknown {
  const project = projectOf(things);
  const lengthsM = project.property.size > 0 ? [...surveyOf(project).lines.values()].map(({ lengthM }) => lengthM) : [];
  return { things: things.map(({ id }) => id).sort(), lengthsM };
}

/** Millimetres. */
function place([lon, lat]: LonLat): readonly number[] {
  return [Math.round(lon * 1e8) / 1e8, Math.round(lat * 1e8) / 1e8];
}
