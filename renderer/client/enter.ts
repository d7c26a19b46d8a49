import { fail, type Result } from '../../core/api/result.ts';
import { enterPath, newAddressPath, ticketKey } from '../../core/api/wire.ts';
import { words } from './words.ts';

const storageKey = 'undergate.token';

/** The page was not let in by its host; the message says why. */
export class NotLetIn extends Error {}

/**
 * The token of the host that served this page, for the ticket in the address, or kept from before the page was loaded anew. It is
 * kept for as long as the window lives and never stands in an address. Throws `NotLetIn`.
 */
export async function enter(): Promise<string> {
  const ticket = ticketIn(location.hash);
  if (ticket !== null) history.replaceState(null, '', location.pathname);
  // A new address pasted over this one changes only what follows the #, which by itself loads nothing.
  window.addEventListener('hashchange', () => {
    if (ticketIn(location.hash) !== null) location.reload();
  });
  const kept = sessionStorage.getItem(storageKey);
  if (ticket === null && kept === null) throw new NotLetIn((await words()).host.calls.notLetIn.noAddress);
  const entered = await post<{ readonly token: string }>(enterPath, ticket ?? '', ticket === null ? kept : null);
  if (!entered.ok) throw new NotLetIn(entered.problem.message);
  sessionStorage.setItem(storageKey, entered.value.token);
  return entered.value.token;
}

/** Has the host write a new address in its own terminal, where only its user can read it. */
export function askForNewAddress(): Promise<Result<null>> {
  return post<null>(newAddressPath, '', null);
}

function ticketIn(hash: string): string | null {
  return new URLSearchParams(hash.slice(1)).get(ticketKey);
}

async function post<T>(path: string, body: string, token: string | null): Promise<Result<T>> {
  try {
    const headers = token === null ? {} : { Authorization: `Bearer ${token}` };
    const response = await fetch(path, { method: 'POST', headers, body });
    return (await response.json()) as Result<T>;
  } catch {
    const { message, remedy } = (await words()).host.calls.silent;
    return fail('failed', message, remedy);
  }
}
