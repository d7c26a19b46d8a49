import { type Browser, chromium, type Page } from '@playwright/test';
import { installedChromium } from '../run/chromium.ts';

/** A Chromium that draws without a graphics card, as the e2e tests start it. */
export function startChromium(): Promise<Browser> {
  const executablePath = installedChromium();
  return chromium.launch({
    ...(executablePath ? { executablePath } : {}),
    args: ['--disable-gpu', '--disable-dev-shm-usage', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
  });
}

export const viewport = { width: 1440, height: 900 };

/** What `watchPictures` keeps in the page. */
interface Pictures {
  /** When the map's drawing was shown whole and painted, each time, by the page's clock. */
  pictureAtMs: number[];
}

/**
 * Runs in the page before its own scripts: notes when the map's static drawing is shown whole. Of its two canvases the
 * one that is drawn to the end is shown, the other hidden.
 */
export function watchPictures(): void {
  const pictures = window as unknown as Pictures;
  pictures.pictureAtMs = [];
  new MutationObserver((records) => {
    const isShown = records.some(({ target }) => {
      return (
        target instanceof HTMLCanvasElement && target.matches('.leaflet-static-pane canvas:not([style*="hidden"])')
      );
    });
    if (isShown) requestAnimationFrame(() => setTimeout(() => pictures.pictureAtMs.push(performance.now())));
  }).observe(document, { subtree: true, attributes: true, attributeFilter: ['style'] });
}

/** When the map's drawing was first shown whole since `sinceMs`, by the page's clock. */
export async function pictureAt(page: Page, sinceMs: number): Promise<number> {
  const found = await page.waitForFunction(
    (since) => {
      const { pictureAtMs } = window as unknown as Pictures;
      return pictureAtMs.find((at) => at > since) ?? null;
    },
    sinceMs,
    { polling: 10 },
  );
  return (await found.jsonValue())!;
}
