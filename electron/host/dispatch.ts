import type * as z from 'zod';
import type { DesktopApi } from '../../core/api/desktopApi.ts';
import { desktopMessages, projectMessages } from '../../core/api/messageSchemas.ts';
import type { ProjectApi } from '../../core/api/projectApi.ts';
import { fail, type Result } from '../../core/api/result.ts';

/** The two halves of what a window may ask for. */
export interface HostApi {
  readonly project: ProjectApi;
  readonly desktop: DesktopApi;
}

/** All calls by half and name, with the schema that a call's message must pass. */
export const messages: {
  readonly [Half in keyof HostApi]: Readonly<Record<string, z.ZodType>>;
} = { project: projectMessages, desktop: desktopMessages };

/**
 * Answers one call that came in from a window: looks the call up, checks its message, calls. `half`, `call` and
 * `message` are whatever was sent.
 */
export async function dispatch(host: HostApi, half: string, call: string, message: unknown): Promise<Result<unknown>> {
  const schema = schemaOf(half, call);
  if (!schema) return fail('not-valid', `There is no call ${half}/${call}.`, 'Use the calls of the contract.');
  const checked = schema.safeParse(message);
  if (!checked.success) return fail('not-valid', wordsFor(checked.error), 'Fix what it names and try again.');
  const api = host[half as keyof HostApi] as unknown as Readonly<
    Record<string, (message: unknown) => Promise<Result<unknown>>>
  >;
  return api[call]!(checked.data);
}

function schemaOf(half: string, call: string): z.ZodType | undefined {
  if (!Object.hasOwn(messages, half)) return undefined;
  const calls = messages[half as keyof HostApi];
  return Object.hasOwn(calls, call) ? calls[call] : undefined;
}

/** Where the message is wrong and how: "changes.0.after.widthM: Too small: expected number to be >=0". */
function wordsFor(error: z.ZodError): string {
  const [first] = error.issues;
  if (!first) return 'The message is not valid.';
  const place = first.path.join('.');
  return place === '' ? first.message : `${place}: ${first.message}`;
}
