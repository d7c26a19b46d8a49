import { leftInGround } from '../../locate/inGround/leftInGround.ts';
import type { InGround } from '../../model/inGroundThings.ts';
import type { Project } from '../../model/project.ts';
import type { Crossing, EarthField, Energiser, Gateway, LeadOut, LonLat, Post, Service } from '../../model/things.ts';
import type { LineShape, Section, Survey, SwitchRow } from '../../registers/types.ts';
import { fenceStretches } from './fenceStretches.ts';
import type { MapWindow } from './mapWindow.ts';

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
  const reaches = ({ path }: { readonly path: readonly LonLat[] }) => {
    const paper = path.map(window.placeToPaper);
    return paper.some((point) => window.shows(point)) || window.clipPaper(paper).length > 0;
  };
  const stretches = fenceStretches(survey).filter(({ path }) => window.clip(path).length > 0);
  const sections = new Set(stretches.flatMap(({ section }) => section ?? []));
  const gateways = [...survey.gateways].filter(([, { centre }]) => window.shows(window.toPaper(centre)));
  return {
    lines: [...new Set(stretches.map(({ shape }) => shape))],
    sections: [...sections].sort((a, b) => a.index - b.index),
    gateways: gateways.map(([, { gateway }]) => gateway),
    crossings: gateways.flatMap(([id]) => survey.crossings.get(id)?.crossing ?? []),
    switches: survey.switches.filter(({ xy }) => window.shows(window.toPaper(xy))),
    energisers: [...project.energiser.values()].filter(shows),
    earthFields: [...project.earthField.values()].filter(shows),
    leadOuts: [...project.leadOut.values()].filter(reaches),
    posts: [...project.post.values()].filter(shows),
    services: [...project.service.values()].filter(reaches),
    inGround: leftInGround(project, survey).flatMap(({ thing, ways }) =>
      thing.fate !== 'takenOut' && ways.flat().some((xy) => window.shows(window.toPaper(xy))) ? [thing] : [],
    ),
  };
}
