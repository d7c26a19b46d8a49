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
import { type Project, propertyOf } from '../../model/project.ts';
import type { Kind, ThingOf } from '../../model/things.ts';
import type { Section, Survey, SwitchFeed } from '../../survey/types.ts';
import { figures } from '../../words/figures.ts';
import type { Figures } from '../../words/types.ts';
import { type AnyFeature, depthMeaning, featuresOf } from '../outgoing/featuresOf.ts';
import { columnsOf, type NameOf } from './plainColumns.ts';
import { type ColumnOf, rounded, type Table, tableOf, yesNo } from './table.ts';

/** Every register of a property, with the place of each row. Lengths are metres, whatever the screen shows. */
export function allTables(project: Project, survey: Survey): Table[] {
  const source: Source = {
    f: figures(propertyOf(project).units),
    project,
    survey,
    geometries: geometriesOf(project, survey),
  };
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
  readonly f: Figures;
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
  return kindTable(source, 'fenceLine', 'fence_lines', source.f.words.exchange.tables.titles.fenceLines, {
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
  return kindTable(source, 'gateway', 'gateways', source.f.words.exchange.tables.titles.gateways);
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
    return source.f.words.locate.basis[crossing.inGround ? crossing.certainty.basis : 'planned'];
  };
  return kindTable(source, 'crossing', 'crossings', source.f.words.exchange.tables.titles.crossings, {
    method: [
      ['in_the_ground', 'text', ({ id }) => yesNo(lying.get(id)?.inGround ?? null)],
      ['depth_least_m', 'number', ({ id }) => rounded(depths.get(id)?.leastM ?? null)],
      ['depth_most_m', 'number', ({ id }) => rounded(depths.get(id)?.mostM ?? null)],
      ['depth_is', 'text', ({ id }) => depthWords(source, depths.get(id))],
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
  return tableOf(
    'no_longer_drawn',
    source.f.words.exchange.tables.titles.left,
    project.inGround.values(),
    placeOf(source, 'inGround'),
    [
      ['name', 'text', ({ name }) => name],
      ['what', 'text', ({ was }) => was.what],
      ['state', 'text', (thing) => source.f.say(fateInShort(thing))],
      ['drawn_until', 'text', ({ since }) => since],
      ['depth_least_m', 'number', ({ id }) => rounded(depth(id)?.leastM ?? null)],
      ['depth_most_m', 'number', ({ id }) => rounded(depth(id)?.mostM ?? null)],
      ['depth_is', 'text', ({ id }) => depthWords(source, depth(id))],
      ['place_known_by', 'text', ({ id }) => source.f.words.locate.basis[things.get(id)?.basis ?? 'drawn']],
      ['place_within_m', 'number', ({ id }) => rounded(withinM.get(id) ?? null)],
      ['possible_courses', 'whole', ({ id }) => crossings.get(id)?.courses.length ?? null],
      ['note', 'text', ({ note }) => note],
    ],
  );
}

function depthWords({ f }: Source, depth: CrossingDepth | undefined): string | null {
  return depth ? depthMeaning(depth, f) : null;
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
    if (to === 'conductor') return conductorName(source, id);
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

function conductorName({ f, project }: Source, id: string): string {
  const conductor = conductorById(id, [...project.conductor.values()]);
  return conductor ? f.say(conductor.name) : id;
}

function switches(source: Source): Table {
  const { f, survey } = source;
  const rows = new Map(survey.switches.map((row) => [row.switch.id, row]));
  return kindTable(source, 'switch', 'switches', source.f.words.exchange.tables.titles.switches, {
    place: [['place', 'text', ({ id }) => (rows.has(id) ? f.say(rows.get(id)!.where) : null)]],
    normally: [
      ['between_sections', 'text', ({ id }) => betweenSections(source, rows.get(id)?.feed)],
      ['fed', 'text', ({ id }) => source.f.words.exchange.tables.fed[rows.get(id)?.feed.from ?? 'notInFence']],
      ['cuts_off_m', 'number', ({ id }) => rounded(rows.get(id)?.cutsOff.lengthM ?? null)],
      ['cuts_off_sections', 'text', ({ id }) => rows.get(id)?.cutsOff.sections.join(', ') ?? null],
    ],
  });
}

function betweenSections({ f }: Source, feed: SwitchFeed | undefined): string | null {
  if (!feed) return null;
  const sides =
    feed.from === 'notInFence' ? [null, null] : feed.from === 'oneSide' ? [feed.supply, feed.far] : feed.sides;
  return f.list(sides.map((letter) => letter ?? '-'));
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
  return tableOf('sections', source.f.words.exchange.tables.titles.sections, items, runs, [
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
  return tableOf(
    'paddocks',
    source.f.words.exchange.tables.titles.paddocks,
    items,
    ({ key }) => geometries.get(key) ?? null,
    [
      ['name', 'text', ({ name }) => name],
      ['area_ha', 'number', ({ areaM2 }) => rounded(areaM2 / 10_000)],
      ['note', 'text', ({ named }) => named?.note ?? null],
    ],
  );
}

function posts(source: Source): Table {
  return kindTable(source, 'post', 'posts', source.f.words.exchange.tables.titles.posts);
}

function energisers(source: Source): Table {
  return kindTable(source, 'energiser', 'energisers', source.f.words.exchange.tables.titles.energisers);
}

function leadOuts(source: Source): Table {
  const inTheGround = (leadOut: ThingOf<'leadOut'>) => (leadOut.buried ? isInTheGround(source.project, leadOut) : null);
  return kindTable(source, 'leadOut', 'lead_outs', source.f.words.exchange.tables.titles.leadOuts, {
    buried: [['in_the_ground', 'text', (leadOut) => yesNo(inTheGround(leadOut))]],
  });
}

function earthFields(source: Source): Table {
  return kindTable(source, 'earthField', 'earth_fields', source.f.words.exchange.tables.titles.earthFields);
}

function services(source: Source): Table {
  return kindTable(source, 'service', 'services', source.f.words.exchange.tables.titles.services);
}

function readings(source: Source): Table {
  const { project } = source;
  return kindTable(source, 'reading', 'readings', source.f.words.exchange.tables.titles.readings, {
    currentA: [
      ['usual_v', 'number', ({ yardstick }) => yardstick?.usualV ?? null],
      ['usual_by', 'text', ({ yardstick }) => yardstick?.by ?? null],
      ['open_switches', 'text', ({ openSwitchIds }) => names(project, 'switch', openSwitchIds)],
    ],
  });
}
