import type { Page } from '@playwright/test';

/** One picture: its name, and how to get there from the example property, freshly opened at Draw. */
export interface Scene {
  readonly name: string;
  /** Taken before any property is open. */
  readonly beforeOpening?: boolean;
  readonly reach: (page: Page) => Promise<void>;
}

export const scenes: readonly Scene[] = [
  { name: 'welcome', beforeOpening: true, reach: async () => {} },
  {
    name: 'open-dialog',
    beforeOpening: true,
    reach: async (page) => {
      await page.keyboard.press('Control+o');
      await page.getByRole('dialog').waitFor();
    },
  },
  {
    name: 'new-dialog',
    beforeOpening: true,
    reach: async (page) => {
      await page.keyboard.press('Control+Alt+n');
      await page.getByRole('dialog').waitFor();
    },
  },
  { name: 'cover', reach: (page) => page.keyboard.press('Alt+0') },
  { name: 'draw', reach: (page) => register(page, 'Alt+1', 'Gateways') },
  {
    name: 'draw-gateway',
    reach: async (page) => {
      await register(page, 'Alt+1', 'Gateways');
      await page.locator('.register tbody tr').nth(5).focus();
      await page.keyboard.press('Enter');
    },
  },
  { name: 'draw-paddocks', reach: (page) => register(page, 'Alt+1', 'Paddocks') },
  { name: 'draw-services', reach: (page) => register(page, 'Alt+1', 'Services') },
  { name: 'draw-maps', reach: (page) => register(page, 'Alt+1', 'Background maps') },
  { name: 'divide', reach: (page) => register(page, 'Alt+2', 'Sections') },
  { name: 'divide-switches', reach: (page) => register(page, 'Alt+2', 'Switches') },
  { name: 'divide-places', reach: (page) => register(page, 'Alt+2', 'Places for a switch') },
  { name: 'divide-tests', reach: (page) => register(page, 'Alt+2', 'Test sheets') },
  { name: 'divide-limits', reach: (page) => register(page, 'Alt+2', 'Limits') },
  { name: 'power', reach: (page) => register(page, 'Alt+3', 'Profile') },
  { name: 'power-improvements', reach: (page) => register(page, 'Alt+3', 'What would raise the voltage') },
  { name: 'power-switches', reach: (page) => register(page, 'Alt+3', 'Switches') },
  { name: 'power-earth', reach: (page) => register(page, 'Alt+3', 'Earth') },
  { name: 'power-readings', reach: (page) => register(page, 'Alt+3', 'Readings') },
  { name: 'order', reach: (page) => register(page, 'Alt+4', 'Quantities') },
  { name: 'order-goods', reach: (page) => register(page, 'Alt+4', 'Goods and work') },
  { name: 'order-cuts', reach: (page) => register(page, 'Alt+4', 'Rolls and cuts') },
  { name: 'order-prices', reach: (page) => register(page, 'Alt+4', 'Prices') },
  { name: 'order-stages', reach: (page) => register(page, 'Alt+4', 'Stages') },
  { name: 'order-plans', reach: (page) => register(page, 'Alt+4', 'Plans') },
  { name: 'order-terms', reach: (page) => register(page, 'Alt+4', 'Counting rules') },
  { name: 'record', reach: (page) => register(page, 'Alt+5', 'Crossings') },
  {
    name: 'record-crossing',
    reach: async (page) => {
      await register(page, 'Alt+5', 'Crossings');
      await page.locator('.register tbody tr').nth(4).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('combobox', { name: 'Point', exact: true }).selectOption('bend');
    },
  },
  { name: 'record-built', reach: (page) => register(page, 'Alt+5', 'Planned and built') },
  { name: 'record-tests', reach: (page) => register(page, 'Alt+5', 'Test run') },
  { name: 'record-readings', reach: (page) => register(page, 'Alt+5', 'Readings') },
  { name: 'record-handover', reach: (page) => register(page, 'Alt+5', 'Hand over') },
  {
    name: 'find',
    reach: async (page) => {
      await register(page, 'Alt+6', 'Crossings');
      await page.locator('.register tbody tr').nth(4).focus();
      await page.keyboard.press('Enter');
    },
  },
  { name: 'find-dig', reach: (page) => register(page, 'Alt+6', 'Check a dig') },
  { name: 'find-fault', reach: (page) => register(page, 'Alt+6', 'Find a fault') },
  { name: 'find-along', reach: (page) => register(page, 'Alt+6', 'Take along') },
  { name: 'pack-dialog', reach: (page) => dialog(page, 'Control+Shift+P') },
  { name: 'print-dialog', reach: (page) => dialog(page, 'Control+p') },
  { name: 'keys-dialog', reach: (page) => dialog(page, 'F1') },
];

async function register(page: Page, workspaceKey: string, name: string): Promise<void> {
  await page.keyboard.press(workspaceKey);
  await page.getByRole('button', { name, exact: true }).click();
}

async function dialog(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key);
  await page.getByRole('dialog').waitFor();
}
