/**
 * JSON has no bytes: over the loopback host a `Uint8Array` travels as `{ [bytesKey]: base64 }`. No message of the
 * contract has a field of that name.
 */
export const bytesKey = '$bytes';

/**
 * The page is opened at `#${ticketKey}=...`: what follows # is never sent to a server nor named to another page. The ticket
 * lets in once, within two minutes.
 */
export const ticketKey = 'ticket';

/** Where the page exchanges its ticket, or a token from before it was loaded anew, for the token of all other calls. */
export const enterPath = '/api/enter';

/** Where a page that was not let in asks for a new address, which the host writes in its own terminal. */
export const newAddressPath = '/api/new-address';

/** Request header by which a window says which one it is. */
export const windowHeader = 'x-undergate-window';

/** Name of the IPC channel on which a desktop window makes a call. */
export function channelOf(half: 'project' | 'desktop', call: string): string {
  return `undergate:${half}/${call}`;
}

/** Name of the IPC channel on which a desktop window hears events. */
export const eventChannel = 'undergate:event';
