/** What the host says of calls that reach it, and of windows that ask to be let in. */
export const calls = {
  noCall: {
    message: ({ call }: { call: string }) => `There is no call ${call}.`,
    remedy: 'Use the calls of the contract.',
  },
  notValid: 'The message is not valid.',
  fix: 'Fix what it names and try again.',
  notFromApp: { message: 'This call did not come from the app.', remedy: 'Restart Undergate.' },
  noDialogs: {
    message: 'Only a desktop window has the dialogs of the system.',
    remedy: 'Select the file in the list of folders.',
  },
  csvInstead: 'Export the registers as CSV instead.',
  nothingHere: 'There is nothing here.',
  onlyOwnPage: 'This host answers only its own page.',
  notOpenedByUs: 'This window was not opened by Undergate.',
  onlyGet: 'Only GET here.',
  onlyPost: 'Only POST here.',
  onlyJson: 'Only JSON here.',
  notJson: 'The message is not JSON.',
  tooLarge: ({ mostMb }: { mostMb: number }) => `A message may hold ${mostMb} MB at most.`,
  addressJustWritten: 'A new address was written a moment ago.',
  otherAccount: 'Undergate was started by another account of this machine.',
  notLetIn: {
    used: 'This address was used already: it lets in once.',
    expired: 'This address has run out: it lets in within two minutes.',
    unknown: 'This is not an address that Undergate gave out.',
    'too-many': 'There were too many wrong addresses. Wait a minute.',
    noAddress: 'This page was opened without the address that lets in.',
  },
  startAgain: 'Close the window and start Undergate again.',
  silent: {
    message: 'Undergate itself does not answer any more.',
    remedy: 'Start it again.',
    saved: 'Start it again; everything up to the last saved change is in the file.',
    savedButLast:
      'Start it again; everything up to the last saved change is in the file. Look whether this last one is.',
  },
  /** What a message may hold. */
  message: {
    oneThing: 'A change speaks of one thing only.',
    twoChanges: 'Two changes to the same thing in one edit.',
    noLocale: 'Not the tag of a language or place.',
    zeroInPath: 'A path has no zero character.',
    photoId: 'A photo goes by the SHA-256 of its bytes.',
    photoBytes: 'A photo is no JPEG, or too large.',
    tileBytes: 'A tile is empty or too large.',
    noKind: 'Neither a thing of a kind that is known nor one of a newer kind.',
    lattice: 'A lattice has a place for each of its points.',
  },
};
