import type { Geometry } from 'geojson';
import { conductorById } from '../../electrical/conductors/conductorLibrary.ts';
import { fieldsOf } from '../../kinds/allKinds.ts';
import { allCrossings } from '../../locate/allCrossings.ts';
import { leftThing } from '../../locate/buriedThings.ts';
import { openingDug } from '../../locate/crossingSource.ts';
import { type CrossingDepth, depthOf } from '../../locate/depth.ts';
import { leftInGround } from '../../locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../locate/inGround/leftWithin.ts';
import { fateInShort } from '../../locate/inGround/leftWords.ts';
import { isInTheGround } from '../../locate/inTheGround.ts';
import type { Project } from '../../model/project.ts';
import type { Kind, ThingOf } from '../../model/things.ts';
import type { Section, Survey, SwitchFeed } from '../../survey/types.ts';
import { figures, plainWords } from '../../words/figures.ts';
import { type AnyFeature, depthMeaning, featuresOf } from '../outgoing/featuresOf.ts';
import { columnsOf, type NameOf } from './plainColumns.ts';
import { type ColumnOf, rounded, type Table, tableOf, yesNo } from './table.ts';

/** Every register of a property, with the place of each row. Lengths are metres, whatever the screen shows. */
export function allTables(project: Project, survey: Survey): Table[] {
  const source: Source = { project, survey, geometries: geometriesOf(project, survey) };
  return [
    fenceLines(source),
    gateways(source),
    crossings(source),
    left(source),
    switches(source),
    sections(source),
    paddocks(source),
    posts(source),
    energisers(source),
    leadOuts(source),
    earthFields(source),
    services(source),
    readings(source),
  ];
}

interface Source {
  readonly project: Project;
  readonly survey: Survey;
  readonly geometries: ReadonlyMap<string, Geometry | null>;
}

function geometriesOf(project: Project, survey: Survey): Map<string, Geometry | null> {
  return new Map(Array.from(featuresOf(project, survey), ({ id, geometry }: AnyFeature) => [String(id), geometry]));
}

function placeOf({ geometries }: Source, kind: Kind): (item: { readonly id: string }) => Geometry | null {
  return ({ id }) => geometries.get(`${kind}:${id}`) ?? null;
}

function fenceLines(source: Source): Table {
  const { project, survey } = source;
  const letters = sectionsByLine(survey);
  const length = (id: string) => survey.lines.get(id)?.lengthM ?? null;
  const overGround = (id: string) => survey.heights.slopeLengthM(id, 0, length(id) ?? 0);
  return kindTable(source, 'fenceLine', 'fence_lines', 'Fence lines', {
    status: [
      ['length_m', 'number', ({ id }) => rounded(length(id))],
      ['length_over_ground_m', 'number', ({ id }) => rounded(overGround(id))],
      ['live_wires', 'whole', ({ typeId, live }) => (live ? (project.fenceType.get(typeId)?.liveWires ?? null) : 0)],
      ['earth_wires', 'whole', ({ typeId }) => project.fenceType.get(typeId)?.earthWires ?? null],
      ['plain_wires', 'whole', ({ typeId }) => project.fenceType.get(typeId)?.plainWires ?? null],
      ['barbed_wires', 'whole', ({ typeId }) => project.fenceType.get(typeId)?.barbedWires ?? null],
      ['sections', 'text', ({ id }) => letters.get(id)?.join(', ') ?? ''],
    ],
  });
}

function sectionsByLine({ sections }: Survey): Map<string, string[]> {
  const letters = new Map<string, string[]>();
  for (const { letter, lineIds } of sections) {
    for (const id of lineIds) letters.set(id, [...(letters.get(id) ?? []), letter]);
  }
  return letters;
}

function gateways(source: Source): Table {
  return kindTable(source, 'gateway', 'gateways', 'Gateways');
}

function crossings(source: Source): Table {
  const { project, survey } = source;
  const figures = new Map(
    [...survey.crossings].map(([gatewayId, { crossing }]) => [
      crossing.id,
      openingDug(project, survey, gatewayId)!.figures,
    ]),
  );
  const lying = new Map([...allCrossings(project, survey).values()].map((one) => [one.figures.crossing.id, one]));
  const depths = new Map([...lying].map(([id, crossing]) => [id, depthOf(crossing)]));
  const knownBy = (id: string) => {
    const crossing = lying.get(id);
    if (!crossing) return null;
    return plainWords().locate.basis[crossing.inGround ? crossing.certainty.basis : 'planned'];
  };
  return kindTable(source, 'crossing', 'crossings', 'Under-gate crossings', {
    method: [
      ['in_the_ground', 'text', ({ id }) => yesNo(lying.get(id)?.inGround ?? null)],
      ['depth_least_m', 'number', ({ id }) => rounded(depths.get(id)?.leastM ?? null)],
      ['depth_most_m', 'number', ({ id }) => rounded(depths.get(id)?.mostM ?? null)],
      ['depth_is', 'text', ({ id }) => depthWords(depths.get(id))],
    ],
    depthM: [
      ['place_known_by', 'text', ({ id }) => knownBy(id)],
      ['place_within_m', 'number', ({ id }) => rounded(lying.get(id)?.certainty.withinM ?? null)],
      ['possible_courses', 'whole', ({ id }) => lying.get(id)?.courses.length ?? null],
      ['trench_m', 'number', ({ id }) => rounded(figures.get(id)?.trenchM ?? null)],
      ['pipe_m', 'number', ({ id }) => rounded(figures.get(id)?.pipeM ?? null)],
    ],
    pipeBoreMm: [
      ['live_cable_m', 'number', ({ id }) => rounded(figures.get(id)?.liveCableM ?? null)],
      ['earth_cable_m', 'number', ({ id }) => rounded(figures.get(id)?.earthCableM ?? null)],
    ],
  });
}

/** What is or was in the ground and is drawn no longer. */
function left(source: Source): Table {
  const { project, survey } = source;
  const all = leftInGround(project, survey);
  const things = new Map(all.map((each) => [each.thing.id, leftThing(each)]));
  const crossings = new Map(all.map(({ thing, crossing }) => [thing.id, crossing]));
  const depth = (id: string) => things.get(id)?.depth ?? undefined;
  const withinM = new Map(all.map((each) => [each.thing.id, leftWithinM(each)]));
  return tableOf('no_longer_drawn', 'No longer drawn', project.inGround.values(), placeOf(source, 'inGround'), [
    ['name', 'text', ({ name }) => name],
    ['what', 'text', ({ was }) => was.what],
    ['state', 'text', (thing) => figures('metric').say(fateInShort(thing))],
    ['drawn_until', 'text', ({ since }) => since],
    ['depth_least_m', 'number', ({ id }) => rounded(depth(id)?.leastM ?? null)],
    ['depth_most_m', 'number', ({ id }) => rounded(depth(id)?.mostM ?? null)],
    ['depth_is', 'text', ({ id }) => depthWords(depth(id))],
    ['place_known_by', 'text', ({ id }) => plainWords().locate.basis[things.get(id)?.basis ?? 'drawn']],
    ['place_within_m', 'number', ({ id }) => rounded(withinM.get(id) ?? null)],
    ['possible_courses', 'whole', ({ id }) => crossings.get(id)?.courses.length ?? null],
    ['note', 'text', ({ note }) => note],
  ]);
}

function depthWords(depth: CrossingDepth | undefined): string | null {
  return depth ? depthMeaning(depth) : null;
}

/** A table of the things of a kind: the columns that its description names, and others after them. */
function kindTable<K extends Kind>(
  source: Source,
  kind: K,
  name: string,
  title: string,
  after: { readonly [F in keyof ThingOf<K> & string]?: readonly ColumnOf<ThingOf<K>>[] } = {},
): Table {
  const { project } = source;
  const nameOf: NameOf = (to, id) => {
    if (to === 'conductor') return conductorName(project, id);
    const thing = project[to as Kind].get(id);
    return thing && 'name' in thing ? thing.name : null;
  };
  const items = project[kind].values() as Iterable<ThingOf<K>>;
  return tableOf<ThingOf<K>>(
    name,
    title,
    items,
    placeOf(source, kind),
    columnsOf<ThingOf<K>>(fieldsOf(kind), nameOf, after),
  );
}

function conductorName(project: Project, id: string): string {
  return conductorById(id, [...project.conductor.values()])?.name ?? id;
}

function switches(source: Source): Table {
  const { survey } = source;
  const rows = new Map(survey.switches.map((row) => [row.switch.id, row]));
  return kindTable(source, 'switch', 'switches', 'Cut-out switches', {
    place: [['place', 'text', ({ id }) => rows.get(id)?.placeText ?? null]],
    normally: [
      ['between_sections', 'text', ({ id }) => betweenSections(rows.get(id)?.feed)],
      ['fed', 'text', ({ id }) => fedFrom[rows.get(id)?.feed.from ?? 'notInFence']],
      ['cuts_off_m', 'number', ({ id }) => rounded(rows.get(id)?.cutsOff.lengthM ?? null)],
      ['cuts_off_sections', 'text', ({ id }) => rows.get(id)?.cutsOff.sections.join(', ') ?? null],
    ],
  });
}

const fedFrom: Readonly<Record<SwitchFeed['from'], string>> = {
  oneSide: 'from one side',
  bothSides: 'from both sides',
  nowhere: 'not fed',
  notInFence: 'in no live fence',
};

function betweenSections(feed: SwitchFeed | undefined): string | null {
  if (!feed) return null;
  if (feed.from === 'notInFence') return '- and -';
  const sides = feed.from === 'oneSide' ? [feed.supply, feed.far] : feed.sides;
  return sides.map((letter) => letter ?? '-').join(' and ');
}

function sections(source: Source): Table {
  const { project, survey, geometries } = source;
  const runs = (section: Section): Geometry | null => {
    const lines = section.edges.flatMap((edge) => {
      const geometry = geometries.get(`run:${survey.network.edges[edge]!.key}`);
      if (geometry?.type === 'LineString') return [geometry.coordinates];
      return geometry?.type === 'MultiLineString' ? geometry.coordinates : [];
    });
    return lines.length > 0 ? { type: 'MultiLineString', coordinates: lines } : null;
  };
  const items = survey.sections.map((section) => ({ ...section, id: section.letter }));
  return tableOf('sections', 'Sections', items, runs, [
    ['fence_m', 'number', ({ lengthM }) => rounded(lengthM)],
    ['gateways', 'whole', ({ gatewayIds }) => gatewayIds.length],
    ['fence_lines', 'text', ({ lineIds }) => names(project, 'fenceLine', lineIds)],
    ['switches', 'text', ({ switchIds }) => names(project, 'switch', switchIds)],
    ['fed', 'text', ({ fed }) => yesNo(fed)],
    ['over_limit_m', 'number', ({ overByM }) => rounded(overByM)],
  ]);
}

function names(project: Project, kind: 'fenceLine' | 'switch', ids: readonly string[]): string {
  return ids.map((id) => project[kind].get(id)?.name ?? id).join(', ');
}

function paddocks(source: Source): Table {
  const { survey, geometries } = source;
  const items = survey.paddocks.map((paddock, i) => ({
    ...paddock,
    id: paddock.named?.id ?? `unnamed ${i + 1}`,
    key: paddock.named ? `paddock:${paddock.named.id}` : `paddockOutline:unnamed ${i + 1}`,
  }));
  return tableOf('paddocks', 'Paddocks', items, ({ key }) => geometries.get(key) ?? null, [
    ['name', 'text', ({ name }) => name],
    ['area_ha', 'number', ({ areaM2 }) => rounded(areaM2 / 10_000)],
    ['note', 'text', ({ named }) => named?.note ?? null],
  ]);
}

function posts(source: Source): Table {
  return kindTable(source, 'post', 'posts', 'Posts');
}

function energisers(source: Source): Table {
  return kindTable(source, 'energiser', 'energisers', 'Energisers');
}

function leadOuts(source: Source): Table {
  const inTheGround = (leadOut: ThingOf<'leadOut'>) => (leadOut.buried ? isInTheGround(source.project, leadOut) : null);
  return kindTable(source, 'leadOut', 'lead_outs', 'Lead-outs', {
    buried: [['in_the_ground', 'text', (leadOut) => yesNo(inTheGround(leadOut))]],
  });
}

function earthFields(source: Source): Table {
  return kindTable(source, 'earthField', 'earth_fields', 'Earth fields');
}

function services(source: Source): Table {
  return kindTable(source, 'service', 'services', 'Services and hazards');
}

function readings(source: Source): Table {
  const { project } = source;
  return kindTable(source, 'reading', 'readings', 'Readings', {
    currentA: [
      ['usual_v', 'number', ({ yardstick }) => yardstick?.usualV ?? null],
      ['usual_by', 'text', ({ yardstick }) => yardstick?.by ?? null],
      ['open_switches', 'text', ({ openSwitchIds }) => names(project, 'switch', openSwitchIds)],
    ],
  });
}
