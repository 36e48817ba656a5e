import { powerStroke } from '../../bow/power-stroke.ts';
import { defaultOf } from '../assemble/defaults.ts';
import { airFaults } from './air-checks.ts';
import { arrowFaults } from './arrow-checks.ts';
import { buildFaults } from './build-checks.ts';
import { dayFaults } from './day-checks.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';
import { listLengthFaults } from './list-lengths.ts';
import { markFaults, scaleFaults } from './mark-checks.ts';
import { measurementCountFaults } from './measurement-count.ts';
import { unknownSpeedFaults } from './unknown-speed-checks.ts';

/** What values of the file must agree on for the mathematics to be possible. */
export const crossFaults = (draft: Draft): readonly Fault[] => [
  ...bowFaults(draft),
  ...launchFaults(draft),
  ...unknownSpeedFaults(draft),
  ...arrowFaults(draft),
  ...airFaults(draft),
  ...measurementCountFaults(draft),
  ...listLengthFaults(draft),
  ...markFaults(draft),
  ...scaleFaults(draft),
  ...dayFaults(draft),
  ...buildFaults(draft),
];

function bowFaults(draft: Draft): readonly Fault[] {
  const draw = draft.quantity('bow.draw_length');
  const brace = draft.quantity('bow.brace_height');
  if (draw === undefined && brace === undefined) return [];
  const stroke = powerStroke(draw ?? defaultOf('bow.draw_length'), brace ?? defaultOf('bow.brace_height'));
  if (stroke > 0) return [];
  return [
    {
      path: ['bow', brace === undefined ? 'draw_length' : 'brace_height'],
      at: 'value',
      reason: 'there is no power stroke left: draw length less 1.75 in is not more than the brace height',
      allowed: 'a brace height more than 1.75 in below the draw length',
      write: 'Measure both again, and correct the one that is wrong',
    },
  ];
}

function launchFaults({ text, has }: Draft): readonly Fault[] {
  if (text(['launch', 'speed'])?.trim().toLowerCase() !== 'rated' || has(['bow', 'rating'])) return [];
  return [
    {
      path: ['bow', 'rating'],
      at: 'missing',
      reason: 'is missing: "speed: rated" takes the speed from it',
      allowed:
        'rating: { speed }, and draw_weight, draw_length, arrow_mass where they differ from 70 lbf, 30 in, 350 gr',
      write: 'Add "rating: { speed: 335 fps }" under "bow:", or chronograph the arrow',
    },
  ];
}
