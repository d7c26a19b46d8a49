import { formatRound } from '../../../numbers/write.ts';
import type { Figures } from '../../../types.ts';

/** Keys of the map that are no tool's, and what they do. */
export const keys = {
  names: {
    arrows: 'Arrow keys',
    enter: 'Enter',
    digits: 'Digits',
    backspace: 'Backspace',
    tab: 'Tab',
    insertDelete: 'Insert, Delete',
    shift: 'Shift',
    alt: 'Alt',
    ctrl: 'Ctrl',
    escape: 'Esc',
    plusMinus: '+, -',
    home: 'Home',
  },
  does: {
    arrows: ({ stepM }: { stepM: number }, f: Figures) =>
      `Move the cross, or what is selected by ${formatRound(stepM, f.units)}. With Shift further.`,
    enter: 'Click where the cross is; end the line where it already stands.',
    digits: 'Type a length, then Tab and a bearing; or "125 @ 92.5" at once.',
    backspace: 'Take back the last point of the line being drawn.',
    tab: 'Step through the corners of the selected fence.',
    insertDelete: 'Add a corner, or take the selected corner out.',
    shift: 'Hold a segment to steps of 15 degrees; select more than one thing.',
    alt: 'No snapping while it is held.',
    ctrl: 'While a corner is dragged: part it from what is joined there.',
    escape: 'Give up what is begun; back to Select; clear the selection.',
    plusMinus: 'Zoom in, zoom out.',
    home: 'See the whole property.',
  },
};
