import * as z from 'zod';
import { plainWords } from '../words/figures.ts';

/** A path in the machine's file system, as a window may send it. */
export const path = z
  .string()
  .min(1)
  .max(4096)
  .refine((text) => !text.includes('\0'), { error: () => plainWords().host.calls.message.zeroInPath });
