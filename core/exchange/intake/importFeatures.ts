import { whyNotOneEdit } from '../../api/editLimits.ts';
import { difference } from '../../model/difference.ts';
import { EditRefused, type NewId, type Refusal } from '../../model/edits/support/edit.ts';
import { type Project, propertyOf, put } from '../../model/project.ts';
import type { Status } from '../../model/things.ts';
import { type Message, message } from '../../words/message.ts';
import type { FeatureProblem, ImportAs, Preview, PreviewFeature } from '../preview/types.ts';
import { importForeign } from './importForeign.ts';
import { importOurs } from './importOurs.ts';
import type { Intake } from './intake.ts';
import { isDrawn } from './isDrawn.ts';
import { middleOfAll, type Stray, strayProblem, whereaboutsOf } from './whereabouts.ts';

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
  /** Which of the preview's groups is the property, where `whereaboutsOf` can't tell it. */
  readonly place: number | null;
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
  place: null,
};

export interface Imported {
  readonly project: Project;
  readonly added: number;
  readonly updated: number;
  /** Ours, and the same as before. */
  readonly unchanged: number;
  readonly problems: readonly FeatureProblem[];
  readonly notes: readonly Message[];
}

/**
 * Takes the features of a preview over into a project. Things that this program wrote come back as what they were,
 * under their own ids: what is there already is brought up to date, and nothing is doubled. A property without a place
 * on earth and with nothing drawn on it gets its place from the file. A feature that can't be taken over is told of;
 * the others are; strays, which lie far from the rest, are left out unless something was chosen for them. Throws
 * `EditRefused` where `whyNotImport` says no, where it would be more than one step can change (`tooMuch`), and where
 * the fences would be a tangle that takes too long to look through (`tangled`).
 */
export function importFeatures(preview: Preview, choices: ImportChoices, project: Project, newId: NewId): Imported {
  const refusal = whyNotImport(preview, project, choices.place);
  if (refusal) throw new EditRefused(refusal);
  const whereabouts = whereaboutsOf(preview, project, choices.place);
  const strays = whereabouts?.strays ?? new Map<string, Stray>();
  const become = becomes(choices.as, strays);
  const intake: Intake = {
    project: placed(project, preview, strays, become),
    become,
    added: 0,
    updated: 0,
    unchanged: 0,
    problems: [],
    notes: [],
    standing: [],
    newId,
  };
  importOurs(intake, preview.features, !isDrawn(project));
  importForeign(intake, preview.features, choices);
  tellOfStrays(
    intake,
    [...strays.values()].filter(({ feature }) => !choices.as.has(feature.key)),
    project,
  );
  const tooMuch = whyNotOneEdit(difference(project, intake.project));
  if (tooMuch) {
    throw new EditRefused({ code: 'tooMuch', message: message('exchange.import.tooMuch', { why: tooMuch }) });
  }
  const { project: after, added, updated, unchanged, problems, notes } = intake;
  return { project: after, added, updated, unchanged, problems, notes };
}

/** More are not told of one by one. */
const mostStraysTold = 100;

function tellOfStrays(intake: Intake, strays: readonly Stray[], project: Project): void {
  for (const stray of strays.slice(0, mostStraysTold)) intake.problems.push(strayProblem(stray, project));
  const more = strays.length - mostStraysTold;
  if (more > 0) intake.notes.push(message('exchange.intake.moreStrays', { pieces: more }));
}

/**
 * `nothingUsable`, `notPlaced` (the drawing has no place on earth, so the file can't be laid onto it), `tooFar`,
 * `whichPlace` (the file holds several places, and which is the property must be said).
 */
export function whyNotImport(preview: Preview, project: Project, place: number | null = null): Refusal | null {
  if (preview.features.length === 0) {
    return { code: 'nothingUsable', message: message('exchange.import.nothingUsable') };
  }
  const property = propertyOf(project);
  if (!preview.bounds) return null;
  if (!property.placed && isDrawn(project)) {
    return { code: 'notPlaced', message: message('exchange.import.notPlaced', { name: property.name }) };
  }
  const whereabouts = whereaboutsOf(preview, project, place);
  if (whereabouts && whereabouts.places.length > 1) {
    const places = whereabouts.places.length;
    return { code: 'whichPlace', message: message('exchange.import.whichPlace', { places }) };
  }
  if (whereabouts?.tooFarM == null) return null;
  const values = { name: property.name, awayM: whereabouts.tooFarM };
  return { code: 'tooFar', message: message('exchange.import.tooFar', values) };
}

/** A property with nothing drawn goes where what is taken in lies, strays aside if there is anything else. */
function placed(
  project: Project,
  { features }: Preview,
  strays: ReadonlyMap<string, Stray>,
  become: Intake['become'],
): Project {
  if (isDrawn(project)) return project;
  const taken = features.filter(
    (feature) => feature.path.length > 0 && (feature.ours || become(feature) !== 'leaveOut'),
  );
  const together = taken.filter(({ key }) => !strays.has(key));
  const pieces = together.length > 0 ? together : taken;
  if (pieces.length === 0) return project;
  return put(project, { ...propertyOf(project), origin: middleOfAll(pieces), placed: true });
}

/** What each feature becomes: what was chosen for it, else nothing for a stray, else what the file suggests. */
export function becomes(
  as: ReadonlyMap<string, ImportAs>,
  strays: ReadonlyMap<string, Stray>,
): (feature: PreviewFeature) => ImportAs {
  return ({ key, suggestion }) => as.get(key) ?? (strays.has(key) ? 'leaveOut' : suggestion);
}
