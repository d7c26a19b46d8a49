import { protocol } from 'electron';
import { plainWords } from '../../core/words/figures.ts';
import { pageHeaders } from '../host/contentPolicy.ts';
import { pageFile } from '../host/pageFiles.ts';

const scheme = 'undergate';
const host = 'app';

/** The address of the page in a desktop window. */
export const pageAddress = `${scheme}://${host}/`;

/** Whether an address is of the app's own page. It is taken apart, never compared as text. */
export function isPageAddress(address: string): boolean {
  const url = URL.parse(address);
  return url !== null && url.protocol === `${scheme}:` && url.hostname === host && url.port === '';
}

/** Must run before the app is ready. */
export function registerPageScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Serves the built page's files, and nothing else, under the scheme. */
export function servePage(pageFolder: string): void {
  protocol.handle(scheme, async ({ url }) => {
    const file = isPageAddress(url) ? await pageFile(pageFolder, new URL(url).pathname) : null;
    if (!file) return new Response(plainWords().host.calls.nothingHere, { status: 404, headers: pageHeaders });
    return new Response(file.bytes, { headers: { ...pageHeaders, 'Content-Type': file.mediaType } });
  });
}
