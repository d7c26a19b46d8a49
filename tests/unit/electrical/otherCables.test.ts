import { describe, expect, it } from 'vitest';
import { cablesNamed } from '../../../core/electrical/conductors/otherCables.ts';

describe('what a note of a trench says of other cables', () => {
  it.each([
    'mains cable to the pump',
    'Mains',
    'power to the shed',
    'Power line',
    'electricity',
    '230 V to the shed',
    '400V',
    '240-volt supply',
    '11 kV',
    '3-phase',
    'armoured cable',
    'twin & earth',
    'pump cable',
    'low voltage irrigation wires',
    'phone',
    'Telephone line',
    'telecoms duct',
    'comms',
    'communication cable',
    'data',
    'Cat 6 to the house',
    'ethernet',
    'fibre optic',
    'fiber',
    'CCTV',
    'No. 2 power cable',
    'not known whether mains lies there',
    'no joints in the mains cable',
    'mains not live',
    'old mains, dead',
    'nothing but mains',
    'no water pipe, mains cable to the pump',
    'no mains; phone beside it',
    'no power. Data cable.',
    'no water pipe or drain, power cable beside',
    'no pipe\nphone',
  ])('"%s" names one', (note) => {
    expect(cablesNamed(note)).not.toBeNull();
  });

  it.each([
    '',
    'nothing',
    'warning tape and sand',
    '25 mm water pipe',
    'mains water pipe',
    'water mains',
    'gas main',
    'earth cable only',
    'second live cable, rated 10 kV',
    'electric fence earth',
    'fibreglass marker post',
    'photo on my phone',
    'no mains',
    'No mains cable',
    'no mains, phone or data cables',
    'no mains / phone / data',
    'water pipe, no mains',
    'without any power cable',
    'no sign of mains',
    'no other mains or phone lines',
    'mains: none',
    'power: no',
    'mains - none',
    'no water pipe and no mains',
    'no water, gas or mains',
    'neither mains nor phone',
  ])('"%s" names none', (note) => {
    expect(cablesNamed(note)).toBeNull();
  });

  it.each([
    ['mains in the same pipe', 'same'],
    ['phone cable in one conduit with it', 'same'],
    ['mains sharing the poly pipe', 'same'],
    ['mains in its own conduit', 'own'],
    ['data in a separate orange duct', 'own'],
    ['mains, not in the same pipe', 'own'],
    ['mains in a conduit of its own', 'own'],
    ['mains beside it', 'notSaid'],
    ['mains under this pipe', 'notSaid'],
    ['second pipe: water; mains beside it', 'notSaid'],
    ['mains in one pipe, the fence in the other', 'notSaid'],
    ['mains in the same conduit, water in its own pipe', 'same'],
    ['water in a separate pipe; phone in the same duct', 'same'],
    ['mains, not known whether in the same pipe', 'same'],
    ['mains, in its own conduit? not seen', 'notSaid'],
    ['mains, not sure if it has its own pipe', 'notSaid'],
  ])('"%s": %s conduit', (note, conduit) => {
    expect(cablesNamed(note)!.conduit).toBe(conduit);
  });

  it('is quick with the longest note', () => {
    const long = `${' - '.repeat(6000)}mains${' '.repeat(2000)}`;
    expect(cablesNamed(long)!.words).toEqual(['mains']);
    expect(cablesNamed('no '.repeat(6000))).toBeNull();
    expect(cablesNamed('no sign of '.repeat(1500).slice(0, 15_000))).toBeNull();
  });

  it('gives the words, each once', () => {
    expect(cablesNamed('Mains and phone, mains on top')!.words).toEqual(['mains', 'phone']);
  });
});
