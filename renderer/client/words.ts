import type { Texts } from '../../core/words/message.ts';

/** The texts, which come with the window's own code: what finds the host is there, and asks it, before them. */
export async function words(): Promise<Texts> {
  const { plainWords } = await import('../../core/words/figures.ts');
  return plainWords();
}
