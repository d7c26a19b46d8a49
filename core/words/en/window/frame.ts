import { commands } from './frame/commands.ts';

/** The window around the workspaces: welcome, cover, dialogs, commands, problems, parts. */
export const frame = {
  commands,
  /** What many places say. */
  common: {
    close: 'Close',
    stop: 'Stop',
    name: 'Name',
    note: 'Note',
    set: 'Set',
    tryAgain: 'Try again',
  },
};
