/** What the terminal says where the app, or a command of it, is started. */
export const start = {
  /** Of the app's window, before its page has one of its own. */
  title: 'Undergate',
  noDesktop: {
    noScreen: 'No desktop window (there is no screen): the app is served to a browser on this machine instead.',
    noRuntime:
      "No desktop window (Electron's runtime is not here and can't be fetched): the app is served to a browser on this machine instead.",
    notStarting:
      "No desktop window (Electron's runtime does not start here): the app is served to a browser on this machine instead.",
  },
  fetching: "Fetching Electron's runtime, once (about 120 MB) ...",
  inBrowser: ({ address }: { address: string }) => `Undergate is open in a browser, at ${address}`,
  at: ({ address }: { address: string }) => `Undergate is at ${address}`,
  openAddress:
    'Open that address in a browser on this machine within two minutes; it lets in once. Ctrl+C ends Undergate.',
  /** `npm run pack`. */
  pack: {
    usage: ({ parts }: { parts: string }) =>
      `Usage: npm run pack -- FILE.undergate OUT.pdf [--parts ${parts}] [--paper A4|A3] [--scale 5000] [--by TEXT] [--for TEXT] [--date 2031-05-02]`,
    nameBoth: 'Name the project file, then the PDF.',
    made: ({ path, kb }: { path: string; kb: number }) => `${path}: ${kb} KB`,
    noPart: {
      message: ({ part }: { part: string }) => `A pack has no part "${part}".`,
      remedy: ({ parts }: { parts: readonly string[] }) => `Its parts are ${parts.join(', ')}.`,
    },
    noFolder: ({ path }: { path: string }) => `There is no folder ${path}.`,
    otherPlace: 'Select another place for the PDF.',
    noPaper: {
      message: ({ given }: { given: string }) => `"${given}" is no paper for the maps.`,
      remedy: 'Select A4 or A3.',
    },
    noScale: {
      message: ({ given }: { given: string }) => `"${given}" is no scale.`,
      remedy: 'Write 5000 for 1:5000.',
    },
    noDate: {
      message: ({ given }: { given: string }) => `"${given}" is no date.`,
      remedy: 'Write it as 2031-05-02.',
    },
  },
};
