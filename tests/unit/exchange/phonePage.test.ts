import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { phonePage } from '../../../core/exchange/phone/phonePage.ts';
import { phoneScript, phoneScriptHash } from '../../../core/exchange/phone/phoneScript.ts';
import { surveyOf } from '../../../core/registers/survey.ts';
import { typefaces } from '../../../electron/print/typefaces.ts';
import { bridgedGateway, drawing, energiser, gateSwitch, line, lineSwitch, property } from '../../support/drawings.ts';

const hostile = '<img src=x onerror=alert(1)>"\'&</script><script>alert(2)</script>';

const project = drawing(
  property({ name: hostile }),
  line(
    'F1',
    [
      [0, 0],
      [200, 0],
    ],
    { name: hostile },
  ),
  bridgedGateway('G1', 'F1', 50, { note: hostile }),
  bridgedGateway('G2', 'F1', 150),
  gateSwitch('S1', 'G1', 'start', { note: hostile }),
);

const page = phonePage({
  project,
  survey: surveyOf(project),
  date: '2026-05-01',
  measure: typefaces().measure,
  photos: [{ crossingId: 'X-G2', caption: hostile, base64: 'AAAA' }],
});

describe('phonePage', () => {
  it('lets its own script run and no other', () => {
    const hash = `sha256-${createHash('sha256').update(phoneScript).digest('base64')}`;
    expect(phoneScriptHash).toBe(hash);
    expect(page).toContain(`script-src '${hash}'`);
    expect(page).toContain("default-src 'none'");
    expect(page.match(/<script/g)).toHaveLength(1);
  });

  it('shows what comes from the project as text', () => {
    expect(page).not.toContain('<img src=x');
    expect(page).not.toContain('onerror=alert(1)>"');
    expect(page).toContain('&lt;img src=x onerror=alert(1)&gt;&quot;&#39;&amp;&lt;/script&gt;');
  });

  it('asks nothing of any network', () => {
    expect(page).not.toMatch(/https?:/);
    const sources = [...page.matchAll(/\b(?:src|href|action|data)="([^"]*)"/g)].map(([, value]) => value!);
    expect(sources.length).toBeGreaterThan(3);
    for (const source of sources) expect(source).toMatch(/^(#|data:image\/jpeg;base64,)/);
  });

  it('says what the fence should read, and what that rests on', () => {
    const fed = drawing(
      energiser('E', [0, 0]),
      line('lane', [
        [0, 0],
        [900, 0],
      ]),
      lineSwitch('S', 'lane', 300),
    );
    const text = phonePage({
      project: fed,
      survey: surveyOf(fed),
      date: '2026-05-01',
      measure: typefaces().measure,
      photos: [],
    });
    expect(text).toMatch(/Usual at E: \d\.\d kV, estimated with the switches as they normally stand; under/);
    expect(text).toMatch(/Usual on the energiser’s side: \d\.\d kV, estimated with S off; under/);
    expect(text).toContain('an estimate may be off');
    expect(page).not.toContain('What the fence should read');
  });

  it('has a card for each buried crossing and each switch', () => {
    expect(page).toContain('Buried crossings (2)');
    expect(page).toContain('Cut-out switches (1)');
    expect(page.match(/class="card"/g)).toHaveLength(3);
    expect(page).toContain('data:image/jpeg;base64,AAAA');
  });
});
