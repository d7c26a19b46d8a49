import type { Message } from '../words/message.ts';

/** A fault of a file, in words for the user. Its own message is for logs. */
export class FileFault extends Error {
  readonly said: Message;

  constructor(said: Message) {
    super(said.code);
    this.said = said;
  }
}
