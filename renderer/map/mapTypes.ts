import type { Finding } from '../../core/checks/finding.ts';
import type { Xy } from '../../core/geometry/types.ts';
import type { Project } from '../../core/model/project.ts';
import { serviceFacts } from '../../core/model/serviceKinds.ts';
import type { Kind, LonLat, ServiceKind } from '../../core/model/things.ts';
import type { DividePlan, Paddock, Survey, SwitchCandidate } from '../../core/survey/types.ts';
import { figures, plainWords } from '../../core/words/figures.ts';
import type { Message } from '../../core/words/message.ts';
import type { Units } from '../../core/words/numbers/write.ts';
import type { DrawnDig, FindOverlay } from './findTypes.ts';
import type { RecordOverlay } from './staticLayer/drawRecord.ts';
import type { Placing, PlacingStep, TileSupply } from './underlay/types.ts';

/**
 * What passes between the map and the rest of the window. The app hands `MapView` one `MapInput` whenever something
 * changed; the map answers through `MapEvents`. The map draws its own tool column, zoom buttons, the fields for typed
 * length and bearing, and the line at its status bar; the app needs to draw none of them.
 */

export type Workspace = 'draw' | 'divide' | 'power' | 'order' | 'record' | 'find';

export type ToolName =
  | 'choose'
  | 'fence'
  | 'gateway'
  | 'source'
  | 'post'
  | 'switch'
  | 'place'
  | 'service'
  | 'pin'
  | 'digPoint'
  | 'digLine'
  | 'digArea';

/**
 * The id of a thing, or of something computed that has no thing of its own: a section, a paddock without a name, a
 * place where a switch could go, a finding. Made by the functions below.
 */
export type MapId = string;

export const sectionMapId = (letter: string): MapId => `section:${letter}`;
export const candidateMapId = (candidate: Pick<SwitchCandidate, 'key'>): MapId => `candidate:${candidate.key}`;
export const findingMapId = (finding: Pick<Finding, 'id'>): MapId => `finding:${finding.id}`;
/** Paddocks without a name all have the same words for one, so the first piece of their outline tells them apart. */
export const paddockMapId = ({ named, ring }: Pick<Paddock, 'named' | 'ring'>): MapId =>
  named?.id ??
  `paddock:${[ring[0]!, ring[1]!]
    .flat()
    .map((m) => m.toFixed(1))
    .join()}`;

/** All that the map shows. A field that did not change must keep its identity: that is how the map knows. */
export interface MapInput {
  readonly project: Project;
  readonly survey: Survey;
  readonly findings: readonly Finding[];
  readonly workspace: Workspace;
  readonly chosen: readonly MapId[];
  /** What is pointed at in the inspector. */
  readonly pointed: MapId | null;
  /** The pieces that make up a figure the user points at. */
  readonly lit: readonly MapId[];
  /** Switches that the plan suggests are drawn hollow. */
  readonly plan: DividePlan | null;
  /** Shades the runs in Power. */
  readonly voltage: VoltageShading | null;
  /** What Record lays over the drawing, and Find of it; left out or null elsewhere. */
  readonly record?: RecordOverlay | null;
  readonly units: Units;
  readonly theme: 'light' | 'dark';
  /** Fence type of the next line that is drawn; left out, the first there is. */
  readonly nextFenceTypeId?: string;
  /** The service that is drawn next; null or left out: the tools are those for fences. */
  readonly service?: NextService | null;
  /** Where the tiles of maps and pictures underneath come from; left out, none are shown. */
  readonly tiles?: TileSupply;
  /** What Find lays over the map; left out or null, nothing. */
  readonly find?: FindOverlay | null;
  /** The picture that is being placed by hand. */
  readonly placing?: Placing | null;
}

export interface NextService {
  readonly what: ServiceKind;
  /** Of a power line; null: not known. */
  readonly voltageV: number | null;
}

export interface VoltageShading {
  /** Estimated peak at the two ends of a network edge, or null where nothing is known or fed. */
  readonly ofEdge: (edge: number) => readonly [fromV: number, toV: number] | null;
  /** At a place inside a run, `distanceM` from its `from` end: 0 where it is dead, null where it is not known. */
  readonly along: (edge: number, distanceM: number) => number | null;
  /** How the switches stand in what is shown. */
  readonly openSwitchIds: ReadonlySet<string>;
  readonly maxV: number;
  /** Least that holds the stock; runs below it carry a sign as well as their shade. */
  readonly minimumV: number;
}

/** One edit by hand. The app applies it to the project as it then stands and stores the difference. */
export interface MapEdit {
  /** What undo will call it: "Draw fence F12". */
  readonly label: string;
  readonly apply: (project: Project) => Project;
  /** Edits with the same key, one after another, are one step of undo. */
  readonly mergeKey?: string;
  /** To be chosen once it is done. */
  readonly choose?: readonly MapId[];
}

/** Where the pointer (or the keyboard's cross) is; sent at most once a frame. */
export interface CursorInfo {
  readonly lonLat: LonLat;
  readonly xy: Xy;
  /** Of the segment being drawn or dragged. */
  readonly lengthM: number | null;
  readonly bearingDeg: number | null;
  /** Where that is, if it snaps: at post P4, on F2. */
  readonly snappedTo: Message | null;
  /** Metres on the ground for one CSS pixel. */
  readonly metresPerPixel: number;
}

export interface MapEvents {
  /** The user chose these (none: cleared); `additive` adds them to what is chosen, or takes them out again. */
  readonly onChoose: (ids: readonly MapId[], additive: boolean) => void;
  readonly onPoint: (id: MapId | null) => void;
  /** Resolves once the edit is stored and the new project has been handed in (true), or was refused (false). */
  readonly onEdit: (edit: MapEdit) => Promise<boolean>;
  /** A fresh id for a new thing. */
  readonly newId: (kind: Kind) => string;
  /** The user asked for the fix of a finding by its sign on the map. */
  readonly onFinding?: (finding: Finding) => void;
  /** Why an edit by hand could not be done; the map has said it at its status bar already. */
  readonly onRefused?: (text: string) => void;
  readonly onCursor?: (cursor: CursorInfo) => void;
  readonly onToolChange?: (tool: ToolName) => void;
  /** Where somebody will dig was drawn. */
  readonly onDig?: (dig: DrawnDig) => void;
  /** What the hand did while a picture is being placed. */
  readonly onPlacing?: (step: PlacingStep) => void;
}

/** What the app may ask of the map; `MapView` hands it out through its `ref`. */
export interface MapHandle {
  /** Shows the whole property. */
  fit(): void;
  /** Moves, and zooms in where needed, so that this is well in view. */
  zoomTo(id: MapId): void;
  /** Shows a place, with the keyboard's cross on it. */
  goTo(lonLat: LonLat): void;
  /** Opens the field for coordinates at the status bar. */
  askForPlace(): void;
  /** What is in view. */
  extent(): MapExtent;
  setTool(tool: ToolName): void;
  tool(): ToolName;
  /** Gives the keyboard to the map. */
  focus(): void;
}

export interface MapExtent {
  readonly centre: LonLat;
  readonly widthM: number;
  readonly heightM: number;
}

/** A tool of the column; what it is called and what it is for say `window.map.tools.names` and `purposes`. */
export interface ToolSpec {
  readonly name: Exclude<ToolName, 'pin' | 'service'>;
  /** Pressed while the map has the keyboard. */
  readonly key: string;
}

/** A tool in words. */
export interface ShownTool {
  readonly name: ToolName;
  readonly label: string;
  readonly key: string;
  /** One sentence: what it is for. */
  readonly purpose: string;
}

const choose: ToolSpec = { name: 'choose', key: 'C' };

/** The tools of each workspace, in the order of the column. */
export const toolsOf: Readonly<Record<Workspace, readonly ToolSpec[]>> = {
  draw: [
    choose,
    { name: 'fence', key: 'F' },
    { name: 'gateway', key: 'G' },
    { name: 'source', key: 'E' },
    { name: 'post', key: 'P' },
  ],
  divide: [choose, { name: 'switch', key: 'S' }, { name: 'place', key: 'P' }],
  power: [choose],
  order: [choose],
  record: [choose],
  find: [choose, { name: 'digPoint', key: 'H' }, { name: 'digLine', key: 'T' }, { name: 'digArea', key: 'A' }],
};

/** The tools with a key of their own, each once, for the list of keys, with the workspaces that have it. */
export function toolKeys(): readonly { readonly key: string; readonly does: string }[] {
  const { frame, map } = plainWords().window;
  const of = Map.groupBy(
    (Object.keys(toolsOf) as Workspace[]).flatMap((workspace) =>
      toolsOf[workspace].map((spec) => ({ workspace, spec })),
    ),
    ({ spec }) => spec.name,
  );
  return [...of.values()].map((all) => {
    const { key, name } = all[0]!.spec;
    const tool = map.tools.names[name];
    if (all.length === Object.keys(toolsOf).length) return { key, does: tool };
    const workspaces = all.map(({ workspace }) => frame.commands.labels[workspace]);
    return { key, does: map.tools.onlyIn({ tool, workspaces }) };
  });
}

/** The tools at hand. While services are drawn, the column holds theirs; a picture is placed with its own. */
export function toolsFor({ workspace, service }: Pick<MapInput, 'workspace' | 'service'>): readonly ShownTool[] {
  if (workspace !== 'draw' || !service) return toolsOf[workspace].map(shown);
  const words = plainWords();
  const { shape } = serviceFacts[service.what];
  const label = words.kinds.service.what.choices[service.what];
  const { markPurpose, drawPurpose } = words.window.map.tools.service;
  const purpose = shape === 'point' ? markPurpose : drawPurpose;
  return [shown(choose), { name: 'service', label, key: 'S', purpose }];
}

function shown({ name, key }: ToolSpec): ShownTool {
  const { names, purposes } = plainWords().window.map.tools;
  return { name, key, label: names[name], purpose: purposes[name] };
}

/** So far the arrow keys move what is selected, metres. */
export const nudgeM = 0.1;

/** Keys of the map that are no tool's, for the list of keys. They count while the map has the keyboard. */
export function mapKeys(units: Units): readonly { readonly keys: string; readonly does: string }[] {
  const { names, does } = figures(units).words.window.map.keys;
  return (Object.keys(names) as (keyof typeof names)[]).map((key) => ({
    keys: names[key],
    does: key === 'arrows' ? does.arrows({ stepM: nudgeM }) : does[key],
  }));
}
