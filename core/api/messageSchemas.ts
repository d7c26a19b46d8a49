import * as z from 'zod';
import type { Change } from '../model/difference.ts';
import { kinds } from '../model/project.ts';
import { plainWords } from '../words/figures.ts';
import { editLimits } from './editLimits.ts';
import { packParts } from './packOptions.ts';
import { path } from './pathSchema.ts';
import type { NewPhotoBytes } from './photoApi.ts';
import { newPhotoBytes, wantedPhotos } from './photoSchemas.ts';
import type { PictureTile, TileFileFacts } from './pictureApi.ts';
import {
  imageId,
  newPicture,
  pictureTiles,
  tileBytes,
  tileFileFacts,
  tileOfPicture,
  tileOfTileFile,
} from './pictureSchemas.ts';
import type { PrintJob } from './printJob.ts';
import type { Edit } from './projectApi.ts';
import { thingSchema } from './thingSchemas.ts';
import { whyNotUnknown } from './unknownFields.ts';
import type { WindowSettings } from './windowSettings.ts';

/** What a window may send with each call; the host looks at nothing that has not passed here. */

const change = z
  .strictObject({
    kind: z.enum(kinds),
    id: z.string().min(1).max(200),
    before: thingSchema.nullable(),
    after: thingSchema.nullable(),
  })
  .refine(
    ({ kind, id, before, after }) =>
      [before, after].every((thing) => thing === null || (thing.kind === kind && thing.id === id)),
    { error: () => plainWords().host.calls.message.oneThing },
  )
  .check(({ value: { before, after }, issues }) => {
    const why = after && whyNotUnknown(after, before);
    if (!why) return;
    const message = plainWords().host.unknown.tooMuch({ kind: after.kind, id: after.id, why });
    issues.push({ code: 'custom', message, input: after, path: ['after'] });
  });

export const changesSchema = z
  .array(change)
  .max(editLimits.changes)
  .refine((changes) => new Set(changes.map(({ kind, id }) => `${kind} ${id}`)).size === changes.length, {
    error: () => plainWords().host.calls.message.twoChanges,
  }) satisfies z.ZodType<Change[]>;

const edit = z.strictObject({
  baseRevision: z.int().min(0),
  label: z.string().min(1).max(300),
  changes: changesSchema,
  mergeKey: z.string().min(1).max(300).exactOptional(),
}) satisfies z.ZodType<Edit>;

const locale = z
  .string()
  .max(50)
  .refine((tag) => isLocale(tag), { error: () => plainWords().host.calls.message.noLocale });

const sheetOptions = z.strictObject({
  paper: z.enum(['A4', 'A3']),
  orientation: z.enum(['portrait', 'landscape']),
  scaleDenominator: z.number().positive().max(1e8),
  centre: z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]).nullable(),
  gridM: z.number().positive().max(1e6).nullable(),
  withSwitchRegister: z.boolean(),
  withCrossingSchedule: z.boolean(),
  withTestSheets: z.boolean(),
  locale: locale.optional(),
  date: z.iso.date(),
});

const orderOptions = z.strictObject({
  locale: locale.optional(),
  withCutLists: z.boolean(),
  withQuantities: z.boolean(),
  date: z.iso.date(),
});

function isLocale(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}

const packOptions = z.strictObject({
  parts: z.array(z.enum(packParts)).max(packParts.length),
  paper: z.enum(['A4', 'A3']),
  orientation: z.enum(['portrait', 'landscape']),
  scaleDenominator: z.number().positive().max(1e8).nullable(),
  handoverNumber: z.int().min(1).nullable(),
  preparedBy: z.string().max(200),
  preparedFor: z.string().max(200),
  note: z.string().max(20_000),
  locale: locale.optional(),
  date: z.iso.date(),
});

export const windowSettings = z.strictObject({
  theme: z.enum(['light', 'dark']).nullable(),
  bookWidthPx: z.number().min(100).max(10_000).nullable(),
  // Settings kept before these came have none.
  locale: locale.nullable().default(null),
  language: locale.nullable().default(null),
}) satisfies z.ZodType<WindowSettings>;

const place = z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]);
const findOptions = z.discriminatedUnion('sheet', [
  z.strictObject({
    sheet: z.literal('crossing'),
    gatewayId: z.string().min(1).max(200),
    locale: locale.optional(),
    date: z.iso.date(),
  }),
  z.strictObject({
    sheet: z.literal('dig'),
    dig: z.strictObject({
      shape: z.enum(['point', 'line', 'area']),
      path: z.array(place).min(1).max(1000),
      errorM: z.number().min(0).max(10_000),
      withinM: z.number().min(0).max(10_000),
    }),
    locale: locale.optional(),
    date: z.iso.date(),
  }),
]);

const printJob = z.discriminatedUnion('what', [
  z.strictObject({ what: z.literal('sheets'), options: sheetOptions }),
  z.strictObject({ what: z.literal('order'), options: orderOptions }),
  z.strictObject({ what: z.literal('find'), options: findOptions }),
  z.strictObject({ what: z.literal('pack'), options: packOptions }),
]) satisfies z.ZodType<PrintJob>;

/** What the calls' messages must pass, by what they are: `calls.ts` says which call takes which. */
export const messageSchemas = {
  nothing: z.undefined(),
  file: z.strictObject({ path }),
  newFile: z.strictObject({ path, name: z.string().trim().min(1).max(200) }),
  copy: z.strictObject({ path, replace: z.boolean() }),
  folder: z.strictObject({ path: path.nullable() }),
  suggestedName: z.strictObject({ suggestedName: z.string().max(200) }),
  windowSettings,
  edit: edit as z.ZodType<Edit>,
  printJob: printJob as z.ZodType<PrintJob>,
  newPhotos: z.strictObject({ photos: newPhotoBytes, edit }) as z.ZodType<{
    readonly photos: readonly NewPhotoBytes[];
    readonly edit: Edit;
  }>,
  wantedPhotos: wantedPhotos as z.ZodType<{ readonly blobIds: readonly string[] }>,
  newPicture,
  pictureTiles: pictureTiles as z.ZodType<{ readonly imageId: string; readonly tiles: readonly PictureTile[] }>,
  finishedPicture: z.strictObject({ imageId, edit }) as z.ZodType<{ readonly imageId: string; readonly edit: Edit }>,
  picture: z.strictObject({ imageId }),
  tileOfPicture,
  tileFile: z.strictObject({ path, chosen: z.boolean() }),
  tileOfTileFile,
};

/** What answers must pass that are read from files of other programs. */
export const answerSchemas = {
  tileFileFacts: tileFileFacts satisfies z.ZodType<TileFileFacts>,
  tile: tileBytes.nullable(),
};
