import type { ProblemCode } from '../../core/api/result.ts';
import type { Message } from '../../core/words/message.ts';

/**
 * What is wrong with a tile file, in no language yet: the process that reads it starts often, and has no texts to say it
 * with.
 */
export class TileProblem extends Error {
  readonly told: { readonly code: ProblemCode; readonly message: Message; readonly remedy: Message };

  constructor(code: ProblemCode, message: Message, remedy: Message) {
    super(message.code);
    this.name = 'TileProblem';
    this.told = { code, message, remedy };
  }
}
