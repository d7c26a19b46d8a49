/** Where a figure comes from. Local codes, where they differ, win. */
export interface Basis {
  readonly mark: 'standard' | 'published' | 'common practice, no source' | 'assumption';
  /** The document, or the reasoning behind an assumption; `null` for common practice. */
  readonly source: string | null;
  /** True where the figure was written down from memory of the source, not from a copy of it. */
  readonly fromMemory: boolean;
}

export const commonPractice: Basis = { mark: 'common practice, no source', source: null, fromMemory: false };

export function standard(source: string, fromMemory = false): Basis {
  return { mark: 'standard', source, fromMemory };
}

export function published(source: string, fromMemory = false): Basis {
  return { mark: 'published', source, fromMemory };
}

export function assumption(reasoning: string): Basis {
  return { mark: 'assumption', source: reasoning, fromMemory: false };
}
