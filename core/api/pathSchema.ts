import * as z from 'zod';

/** A path in the machine's file system, as a window may send it. */
export const path = z
  .string()
  .min(1)
  .max(4096)
  .refine((text) => !text.includes('\0'), 'A path has no zero character.');
