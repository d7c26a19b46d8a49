import { create } from 'zustand';
import type { NextService } from '../../map/mapTypes.ts';

/** Which service is drawn next, and whether the tools for services are out. */
export const useNextService = create<{ readonly next: NextService; readonly drawing: boolean }>(() => ({
  next: { what: 'powerLine', voltageV: null },
  drawing: false,
}));
