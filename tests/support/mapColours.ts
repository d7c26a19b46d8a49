import type { Page } from '@playwright/test';
import { expect } from './app.ts';

/** The colour of what lies under the drawing at the middle of the map; null where nothing does. */
export async function colourInMiddle(page: Page): Promise<readonly [number, number, number] | null> {
  return page.evaluate(() => {
    const stage = document.querySelector('.map-stage')!.getBoundingClientRect();
    const [x, y] = [stage.left + stage.width / 2, stage.top + stage.height / 2];
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.leaflet-underlay-pane canvas')) {
      if (canvas.style.visibility === 'hidden') continue;
      const box = canvas.getBoundingClientRect();
      const [atX, atY] = [((x - box.left) / box.width) * canvas.width, ((y - box.top) / box.height) * canvas.height];
      const [red, green, blue, alpha] = canvas
        .getContext('2d')!
        .getImageData(Math.floor(atX), Math.floor(atY), 1, 1).data;
      if (alpha === 255) return [red!, green!, blue!] as const;
    }
    return null;
  });
}

/** Waits until the middle of the map has this colour, as nearly as a JPEG keeps it. */
export async function expectColourInMiddle(page: Page, wanted: readonly number[]): Promise<void> {
  await expect
    .poll(async () => {
      const colour = await colourInMiddle(page);
      return colour === null ? null : Math.max(...colour.map((value, i) => Math.abs(value - wanted[i]!)));
    })
    .toBeLessThan(16);
}

/** Goes to coordinates by the field at the map's foot. */
export async function goTo(page: Page, coordinates: string): Promise<void> {
  await expect(page.getByRole('button', { name: 'Go to…' })).toBeVisible();
  await page.keyboard.press('Alt+g');
  await page.getByLabel('Coordinates to go to').fill(coordinates);
  await page.keyboard.press('Enter');
}
