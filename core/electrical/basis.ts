import type { Message } from '../words/message.ts';

/** Where a figure comes from. Local codes, where they differ, win. */
export interface Basis {
  readonly mark: 'standard' | 'published' | 'commonPractice' | 'assumption';
  /** The document, or the reasoning behind an assumption; `null` for common practice without any. */
  readonly source: Message | null;
  /** True where the figure was written down from memory of the source, not from a copy of it. */
  readonly fromMemory: boolean;
}

/** Common practice, no source. */
export const commonPractice: Basis = { mark: 'commonPractice', source: null, fromMemory: false };

/** Common practice, no source, with what speaks for the figure. */
export function commonly(reasoning: Message): Basis {
  return { mark: 'commonPractice', source: reasoning, fromMemory: false };
}

export function standard(source: Message, fromMemory = false): Basis {
  return { mark: 'standard', source, fromMemory };
}

export function published(source: Message, fromMemory = false): Basis {
  return { mark: 'published', source, fromMemory };
}

export function assumption(reasoning: Message): Basis {
  return { mark: 'assumption', source: reasoning, fromMemory: false };
}
