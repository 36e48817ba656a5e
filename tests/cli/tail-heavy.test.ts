import { expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

/** A light point and much weight behind. */
const tailHeavy = (point: number, fromNock: number): string => `
title: Tail heavy
launch: { speed: 280 fps }
bow: { peep_height: 4.5 in }
sight: { zero: 20 yd, peep_to_pin: 33 in }
arrow:
  diameter: 0.246 in
  parts:
    shaft: { length: 28 in, inner_diameter: 0.15 in, mass_per_length: 5 gr/in }
    insert: { mass: 5 gr, length: 1 in }
    point: { mass: ${point} gr, length: 0.8 in }
    nock: { mass: 40 gr, length: 0.5 in }
    vanes: { count: 3, root_chord: 1 in, tip_chord: 0.5 in, height: 0.25 in, mass: 20 gr, from_nock: ${fromNock} in,
             turn: right, angle: 2 deg }
`;

it.each([
  [60, 1, ['broadhead'], /^broadhead: with such blades in front the arrow would not fly point first/],
  [
    60,
    1,
    ['scatter', '--broadhead'],
    /^scatter: with such blades in front the arrow would not fly point first/,
  ],
  [20, 9, ['broadhead'], /^broadhead: with these parts the arrow would not fly point first/],
  [20, 9, ['scatter'], /^scatter: with these parts the arrow would not fly point first/],
  [20, 9, ['swing'], /^swing: with these parts the arrow would not fly point first/],
] as const)(
  'an arrow of %i gr in front and vanes %i in from the nock that the air turns round: %j says so and what to change',
  async (point, fromNock, [name, ...more], message) => {
    const { code, out, err } = await atTerminal([name, 'heavy.yaml', ...more], {
      'heavy.yaml': tailHeavy(point, fromNock),
    });
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(
      /do not shoot it\. Use (smaller blades, )?larger vanes, or more weight up front\.\n$/,
    );
  },
);
