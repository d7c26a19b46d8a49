import type { Finding } from '../../core/checks/finding.ts';
import type { Xy } from '../../core/geometry/types.ts';
import type { Project } from '../../core/model/project.ts';
import { serviceFacts } from '../../core/model/serviceKinds.ts';
import type { Kind, LonLat, ServiceKind } from '../../core/model/things.ts';
import type { DividePlan, Paddock, Survey, SwitchCandidate } from '../../core/survey/types.ts';
import { plainWords } from '../../core/words/figures.ts';
import { formatRound, type Units } from '../../core/words/numbers/write.ts';
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
/** Paddocks without a name all have the same words for one, so a point inside tells them apart. */
export const paddockMapId = ({ named, inside: [x, y] }: Pick<Paddock, 'named' | 'inside'>): MapId =>
  named?.id ?? `paddock:${x.toFixed(1)},${y.toFixed(1)}`;

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
  /** What it snaps to, in words: "post P4", "end of F2". */
  readonly snappedTo: string | null;
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

export interface ToolSpec {
  readonly name: ToolName;
  readonly label: string;
  /** Pressed while the map has the keyboard. */
  readonly key: string;
  /** One sentence: what it is for. */
  readonly purpose: string;
}

const choose: ToolSpec = {
  name: 'choose',
  label: 'Choose',
  key: 'C',
  purpose: 'Click a thing to choose it; drag its handles to change it.',
};

/** The tools of each workspace, in the order of the column. */
export const toolsOf: Readonly<Record<Workspace, readonly ToolSpec[]>> = {
  draw: [
    choose,
    { name: 'fence', label: 'Fence', key: 'F', purpose: 'Draw a fence line, click by click.' },
    { name: 'gateway', label: 'Gateway', key: 'G', purpose: 'Place a gateway on a fence line.' },
    { name: 'source', label: 'Energiser', key: 'E', purpose: 'Place the energiser, then lead out to the fence.' },
    { name: 'post', label: 'Post', key: 'P', purpose: 'Mark a strainer or another post that does not move.' },
  ],
  divide: [
    choose,
    { name: 'switch', label: 'Switch', key: 'S', purpose: 'Place a cut-out switch on a fence line.' },
    { name: 'place', label: 'Place', key: 'P', purpose: 'Mark where the plan may set a switch along a fence.' },
  ],
  power: [choose],
  order: [choose],
  record: [choose],
  find: [
    choose,
    { name: 'digPoint', label: 'Hole', key: 'H', purpose: 'Mark where a hole will be dug.' },
    { name: 'digLine', label: 'Trench', key: 'T', purpose: 'Draw where a trench will be dug.' },
    { name: 'digArea', label: 'Area', key: 'A', purpose: 'Draw the outline of what will be dug or ploughed.' },
  ],
};

/** The tools with a key of their own, each once, for the list of keys, with the workspaces that have it. */
export function toolKeys(): readonly { readonly key: string; readonly does: string }[] {
  const of = Map.groupBy(
    (Object.keys(toolsOf) as Workspace[]).flatMap((workspace) =>
      toolsOf[workspace].map((spec) => ({ workspace, spec })),
    ),
    ({ spec }) => spec.name,
  );
  return [...of.values()].map((all) => {
    const { key, label } = all[0]!.spec;
    const where =
      all.length === Object.keys(toolsOf).length
        ? ''
        : `, in ${all.map(({ workspace }) => titled(workspace)).join(', ')}`;
    return { key, does: `${label}${where}` };
  });
}

function titled(workspace: Workspace): string {
  return `${workspace[0]!.toUpperCase()}${workspace.slice(1)}`;
}

/** The tools at hand. While services are drawn, the column holds theirs; a picture is placed with its own. */
export function toolsFor({ workspace, service }: Pick<MapInput, 'workspace' | 'service'>): readonly ToolSpec[] {
  if (workspace !== 'draw' || !service) return toolsOf[workspace];
  const { shape } = serviceFacts[service.what];
  const name = plainWords().kinds.service.what.choices[service.what];
  const purpose = shape === 'point' ? 'Mark where it stands.' : 'Draw it, click by click.';
  return [choose, { name: 'service', label: name, key: 'S', purpose }];
}

/** Keys of the map that are no tool's, for the list of keys. They count while the map has the keyboard. */
export const mapKeys = (units: Units): readonly { readonly keys: string; readonly does: string }[] => [
  { keys: 'Arrow keys', does: `Move the cross, or what is chosen by ${formatRound(0.1, units)}. With Shift further.` },
  { keys: 'Enter', does: 'Click where the cross is; end the line where it already stands.' },
  { keys: 'Digits', does: 'Type a length, then Tab and a bearing; or "125 @ 92.5" at once.' },
  { keys: 'Backspace', does: 'Take back the last point of the line being drawn.' },
  { keys: 'Tab', does: 'Step through the corners of the chosen fence.' },
  { keys: 'Insert, Delete', does: 'Add a corner, or take the chosen corner out.' },
  { keys: 'Shift', does: 'Hold a segment to steps of 15 degrees; choose more than one thing.' },
  { keys: 'Alt', does: 'No snapping while it is held.' },
  { keys: 'Ctrl', does: 'While a corner is dragged: part it from what is joined there.' },
  { keys: 'Esc', does: 'Give up what is begun; back to Choose; choose nothing.' },
  { keys: '+, -', does: 'Zoom in, zoom out.' },
  { keys: 'Home', does: 'See the whole property.' },
];
