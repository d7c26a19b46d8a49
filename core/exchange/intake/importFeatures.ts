import { distanceM } from '../../geometry/geodesic.ts';
import { EditRefused, type NewId, type Refusal } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf, put } from '../../model/project.ts';
import type { Status } from '../../model/things.ts';
import { middleOf } from '../preview/bounds.ts';
import type { FeatureProblem, ImportAs, Preview } from '../preview/types.ts';
import { importForeign } from './importForeign.ts';
import { importOurs } from './importOurs.ts';
import type { Intake } from './intake.ts';

/** What the user chose on looking at a preview. */
export interface ImportChoices {
  /** By a feature's key; the others become what was suggested. Has no say over things that are ours. */
  readonly as: ReadonlyMap<string, ImportAs>;
  /** Fence type of every line that becomes a fence. */
  readonly typeId: string;
  readonly status: Status;
  /** A point that becomes a gateway is moved onto the nearest fence line, if that is within this. */
  readonly gatewaySnapM: number;
  /** Width of gateways for which the file gives none, metres. */
  readonly gatewayWidthM: number;
  /** Lines lose the vertices that lie within this of what is left; 0: they keep all. */
  readonly simplifyM: number;
  /** Ends of new fences are moved onto a post or fence that is within this; 0: they stay. */
  readonly snapEndsM: number;
  /** Heights that come with lines are kept as heights of the ground. */
  readonly keepHeights: boolean;
  /** Name of the file, for what is kept of it by that name. */
  readonly fileName: string;
}

export const usualChoices: Omit<ImportChoices, 'typeId'> = {
  as: new Map(),
  status: 'built',
  gatewaySnapM: 5,
  gatewayWidthM: 4.2,
  simplifyM: 0,
  snapEndsM: 0,
  keepHeights: true,
  fileName: '',
};

export interface Imported {
  readonly project: Project;
  readonly added: number;
  readonly updated: number;
  /** Ours, and the same as before. */
  readonly unchanged: number;
  readonly problems: readonly FeatureProblem[];
  readonly notes: readonly string[];
}

/** A property can be about 100 km across. */
const furthestM = 200_000;

/**
 * Takes the features of a preview over into a project. Things that this program wrote come back as what they were,
 * under their own ids: what is there already is brought up to date, and nothing is doubled. A property without a place
 * on earth and with nothing drawn on it gets its place from the file. A feature that can't be taken over is told of;
 * the others are. Throws `EditRefused` where `whyNotImport` says no.
 */
export function importFeatures(preview: Preview, choices: ImportChoices, project: Project, newId: NewId): Imported {
  const refusal = whyNotImport(preview, project);
  if (refusal) throw new EditRefused(refusal);
  const intake: Intake = {
    project: placed(project, preview),
    added: 0,
    updated: 0,
    unchanged: 0,
    problems: [],
    notes: [],
    newId,
  };
  importOurs(intake, preview.features, !isDrawn(project));
  importForeign(intake, preview.features, choices);
  const { project: after, added, updated, unchanged, problems, notes } = intake;
  return { project: after, added, updated, unchanged, problems, notes };
}

/** `nothingUsable`, `notPlaced` (the drawing has no place on earth, so the file can't be laid onto it), `tooFar`. */
export function whyNotImport(preview: Preview, project: Project): Refusal | null {
  if (preview.features.length === 0) {
    const message = 'The file holds nothing that can be used. See what is said of each of its features.';
    return { code: 'nothingUsable', message };
  }
  const property = propertyOf(project);
  if (!preview.bounds) return null;
  if (!property.placed && isDrawn(project)) {
    const message = `${property.name} is drawn on the blank grid and has no place on earth, so the file can't be laid onto it. Put the property on the earth first, or import into a new one.`;
    return { code: 'notPlaced', message };
  }
  if (!property.placed || !isDrawn(project)) return null;
  const awayM = distanceM(property.origin, middleOf(preview.bounds));
  if (awayM <= furthestM) return null;
  const message = `The file lies ${Math.round(awayM / 1000)} km from ${property.name}. Check that it is the right file, and whether latitude and longitude are exchanged in it; or import it into a new property.`;
  return { code: 'tooFar', message };
}

/** Lines, posts or anything else with a place. */
function isDrawn(project: Project): boolean {
  const tables = [
    project.fenceLine,
    project.post,
    project.energiser,
    project.service,
    project.paddock,
    project.reading,
  ];
  return tables.some(({ size }) => size > 0);
}

function placed(project: Project, { bounds }: Preview): Project {
  if (!bounds || isDrawn(project)) return project;
  return put(project, { ...propertyOf(project), origin: middleOf(bounds), placed: true });
}
