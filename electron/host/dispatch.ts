import type * as z from 'zod';
import { type Call, callNamed } from '../../core/api/calls.ts';
import { answerSchemas, messageSchemas } from '../../core/api/messageSchemas.ts';
import type { Host } from '../../core/api/projectApi.ts';
import { fail, type Result } from '../../core/api/result.ts';
import { plainWords } from '../../core/words/figures.ts';

/**
 * Answers one call that came in from a window: looks the call up, checks its message, calls, and checks what comes out of a
 * stranger's file. `half`, `name` and `message` are whatever was sent.
 */
export async function dispatch(host: Host, half: string, name: string, message: unknown): Promise<Result<unknown>> {
  const call = callNamed(half, name);
  const said = plainWords().host.calls;
  if (!call) return fail('not-valid', said.noCall.message({ call: `${half}/${name}` }), said.noCall.remedy);
  const checked = messageSchemas[call.takes].safeParse(message);
  if (!checked.success) return fail('not-valid', wordsFor(checked.error), said.fix);
  const api = host[half as keyof Host] as unknown as Readonly<
    Record<string, (message: unknown) => Promise<Result<unknown>>>
  >;
  return soundAnswer(call, await api[name]!(checked.data));
}

function soundAnswer({ answerPasses }: Call, answer: Result<unknown>): Result<unknown> {
  if (!answer.ok || answerPasses === undefined) return answer;
  const checked = answerSchemas[answerPasses].safeParse(answer.value);
  if (checked.success) return answer;
  const { message, remedy } = plainWords().host.maps.senseless;
  return fail('damaged', message({ reason: wordsFor(checked.error) }), remedy);
}

/** Where the message is wrong and how: "changes.0.after.widthM: Too small: expected number to be >=0". */
function wordsFor(error: z.ZodError): string {
  const [first] = error.issues;
  if (!first) return plainWords().host.calls.notValid;
  const place = first.path.join('.');
  return place === '' ? first.message : `${place}: ${first.message}`;
}
