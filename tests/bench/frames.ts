import type { CDPSession, Page } from '@playwright/test';

interface TraceEvent {
  readonly name: string;
  /** Microseconds. */
  readonly ts: number;
}

/**
 * Times between frames that reached the screen while `act` ran, milliseconds, from the browser's own trace (its
 * `FrameDisplayed` events). A speck that changes with each animation frame makes sure that there is something to draw all the
 * time, so that a long time between frames is a stall and no rest.
 */
export async function frameTimes(page: Page, act: () => Promise<void>): Promise<number[]> {
  await page.evaluate(keepSomethingMoving);
  const browser = await page.context().browser()!.newBrowserCDPSession();
  const events = collectEvents(browser);
  await browser.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['disabled-by-default-display.framedisplayed'] },
  });
  await act();
  const complete = new Promise<void>((resolve) => browser.once('Tracing.tracingComplete', () => resolve()));
  await browser.send('Tracing.end');
  await complete;
  await browser.detach();
  const shownAt = events
    .filter(({ name }) => name === 'Display::FrameDisplayed')
    .map(({ ts }) => ts / 1000)
    .sort((a, b) => a - b);
  if (shownAt.length < 10) throw new Error(`Only ${shownAt.length} frames are in the browser's trace.`);
  return shownAt.slice(1).map((at, i) => at - shownAt[i]!);
}

function collectEvents(browser: CDPSession): TraceEvent[] {
  const events: TraceEvent[] = [];
  browser.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  return events;
}

/** Runs in the page. */
function keepSomethingMoving(): void {
  const known = document.querySelector('#frame-speck');
  if (known) return;
  const speck = document.body.appendChild(document.createElement('div'));
  speck.id = 'frame-speck';
  speck.style.cssText = 'position:fixed;left:0;top:0;width:1px;height:1px;z-index:9999;pointer-events:none';
  let on = false;
  const turn = () => {
    on = !on;
    speck.style.background = on ? '#000' : '#fff';
    requestAnimationFrame(turn);
  };
  turn();
}
