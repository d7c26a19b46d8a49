import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { phonePage } from '../../../core/exchange/phone/phonePage.ts';
import { phoneScript, phoneScriptHash } from '../../../core/exchange/phone/phoneScript.ts';
import { type Project, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { typefaces } from '../../../electron/print/typefaces.ts';
import {
  at,
  bridgedGateway,
  drawing,
  energiser,
  gateSwitch,
  line,
  lineSwitch,
  property,
} from '../../support/drawings.ts';

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
  bridgedGateway('G1', 'F1', 50, { note: hostile, status: 'built' }),
  bridgedGateway('G2', 'F1', 150, { status: 'built' }),
  gateSwitch('S1', 'G1', 'start', { note: hostile }),
);

const pageOf = (of: Project) =>
  phonePage({
    project: of,
    survey: surveyOf(of),
    date: '2026-05-01',
    measure: typefaces().measure,
    photos: [{ crossingId: 'X-G2', caption: hostile, base64: 'AAAA' }],
  });
const page = pageOf(project);

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

  it('does not give the distance of wires from power lines for that of people and machines', () => {
    expect(page).toContain('fence wires and leads keep 3 m off up to 1 kV');
    expect(page).toContain('For people and machines ask the line’s owner.');
    expect(page).not.toMatch(/keep clear by 3 m/i);
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

  it('has a card for each crossing and each switch', () => {
    expect(page).toContain('Crossings in the ground (2)');
    expect(page).not.toContain('Planned crossings');
    expect(page).toContain('Cut-out switches (1)');
    expect(page.match(/class="card"/g)).toHaveLength(3);
    expect(page).toContain('data:image/jpeg;base64,AAAA');
  });

  it('keeps what is only planned under a heading of its own', () => {
    const planned = pageOf(put(project, { ...project.crossing.get('X-G2')!, status: 'planned' }));
    expect(planned).toContain('Crossings in the ground (1)');
    expect(planned).toContain('Planned crossings, not in the ground (1)');
    expect(planned.indexOf('<h3>G2 ')).toBeGreaterThan(planned.indexOf('id="planned"'));
    expect(planned).toContain('Planned, not in the ground as far as this file knows.');
  });

  it('shows both places of a point whose side nobody said, and measured depths', () => {
    const { startPost, endPost } = surveyOf(project).gateways.get('G2')!;
    const ties = (['start', 'end'] as const).map((post) => ({
      from: { on: 'gatePost', gatewayId: 'G2', post } as const,
      postName: '',
      postAt: at(post === 'start' ? startPost : endPost),
      distanceM: 2.5,
      seM: 0.02,
    }));
    const record = { ...newCrossingRecord('X-G2'), depths: [{ alongM: 1, depthM: 0.12 }] };
    const open = pageOf(put(project, { ...newBuriedPoint('b', 'X-G2', 'bend'), ties }, record));
    expect(open).toContain('<span class="tag warns">side not said</span>');
    expect(open).toContain('on the north side or on the south side: nobody said which.');
    expect(open).toContain('north side: ');
    expect(open).toContain('0.12 m deep to the top of the pipe, measured');
    expect(page).toContain('Trench 0.30 m deep as planned, not measured');
    const shared = { ...record, alsoInTrench: 'mains cable to the pump' };
    expect(pageOf(put(project, shared))).toContain('Also in the trench: mains cable to the pump.');
    expect(page).not.toContain('Also in the trench');
  });
});
