import { tokenKey } from '../../core/api/wire.ts';

const storageKey = 'undergate.token';

/**
 * The token that this window was opened with. It is taken out of the address at once and kept for as long as the
 * window lives, so that the page can be loaded anew.
 */
export function takeToken(): string {
  const given = new URLSearchParams(location.hash.slice(1)).get(tokenKey);
  if (given) {
    sessionStorage.setItem(storageKey, given);
    history.replaceState(null, '', location.pathname);
  }
  return sessionStorage.getItem(storageKey) ?? '';
}
