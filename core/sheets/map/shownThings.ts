import type { PaperPoint } from '../../drawing/displayList.ts';
import type { MapWindow } from '../../drawing/mapWindow.ts';
import { leftInGround } from '../../locate/inGround/leftInGround.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import type { Project } from '../../model/project.ts';
import type { Crossing, EarthField, Energiser, Gateway, LeadOut, LonLat, Post, Service } from '../../model/things.ts';
import type { GatewayShape, LineShape } from '../../shapes/types.ts';
import type { Section, Survey, SwitchRow } from '../../survey/types.ts';
import { fenceStretches } from './fenceStretches.ts';
import { lyingAt } from './openingLayer.ts';

/** What one map sheet shows: its legend explains these and no others. */
export interface ShownThings {
  readonly lines: readonly LineShape[];
  readonly sections: readonly Section[];
  readonly gateways: readonly Gateway[];
  readonly crossings: readonly Crossing[];
  readonly switches: readonly SwitchRow[];
  readonly energisers: readonly Energiser[];
  readonly earthFields: readonly EarthField[];
  readonly leadOuts: readonly LeadOut[];
  readonly posts: readonly Post[];
  readonly services: readonly Service[];
  readonly inGround: readonly InGround[];
}

export function shownThings(project: Project, survey: Survey, window: MapWindow): ShownThings {
  const shows = ({ at }: { readonly at: LonLat }) => window.shows(window.placeToPaper(at));
  const showsSome = (paper: readonly PaperPoint[]) =>
    paper.some((point) => window.shows(point)) || window.clipPaper(paper).length > 0;
  const reaches = ({ path }: { readonly path: readonly LonLat[] }) => showsSome(path.map(window.placeToPaper));
  const showsOpening = ({ centre }: GatewayShape) => window.shows(window.toPaper(centre));
  const stretches = fenceStretches(survey).filter(({ path }) => window.clip(path).length > 0);
  const sections = new Set(stretches.flatMap(({ section }) => section ?? []));
  const crossings = [...survey.gateways].flatMap(([id, shape]) => {
    const figures = survey.crossings.get(id);
    if (!figures) return [];
    const dug = lyingAt(project, survey, figures)?.shape ?? shape;
    return showsOpening(shape) || showsOpening(dug) ? [figures.crossing] : [];
  });
  return {
    lines: [...new Set(stretches.map(({ shape }) => shape))],
    sections: [...sections].sort((a, b) => a.index - b.index),
    gateways: [...survey.gateways.values()].filter(showsOpening).map(({ gateway }) => gateway),
    crossings,
    switches: survey.switches.filter(({ xy }) => window.shows(window.toPaper(xy))),
    energisers: [...project.energiser.values()].filter(shows),
    earthFields: [...project.earthField.values()].filter(shows),
    leadOuts: [...project.leadOut.values()].filter(reaches),
    posts: [...project.post.values()].filter(shows),
    services: [...project.service.values()].filter(reaches),
    inGround: leftInGround(project, survey).flatMap(({ thing, ways }) =>
      thing.fate !== 'takenOut' && ways.some((way) => showsSome(way.map(window.toPaper))) ? [thing] : [],
    ),
  };
}
