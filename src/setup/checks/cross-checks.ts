import { powerStroke } from '../../bow/power-stroke.ts';
import { defaultOf } from '../assemble/defaults.ts';
import { airFaults } from './air-checks.ts';
import { arrowFaults } from './arrow-checks.ts';
import { buildFaults } from './build-checks.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** What values of the file must agree on for the mathematics to be possible. */
export const crossFaults = (draft: Draft): readonly Fault[] => [
  ...bowFaults(draft),
  ...launchFaults(draft),
  ...arrowFaults(draft),
  ...airFaults(draft),
  ...markFaults(draft),
  ...scaleFaults(draft),
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
  if (text(['launch', 'speed'])?.trim() !== 'rated' || has(['bow', 'rating'])) return [];
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

function markFaults({ has, isSection, count, quantity }: Draft): readonly Fault[] {
  const marks = Array.from({ length: count(['marks']) }, (_, entry) => ['marks', entry] as const);
  return marks.filter(isSection).flatMap((mark): readonly Fault[] => {
    const holds = (key: string) => has([...mark, key]);
    if (holds('group') && quantity('marks.arrows', [...mark, 'arrows']) === 1)
      return [
        {
          path: [...mark, 'group'],
          at: 'value',
          reason: 'one arrow does not make a group',
          allowed: 'a group of at least two arrows',
          write: 'Remove "group", or write how many arrows were shot',
        },
      ];
    if (holds('reading') || holds('pin')) return [];
    if (holds('vertical'))
      return [
        {
          path: [...mark, 'vertical'],
          at: 'key',
          reason: 'vertical cannot be used without the reading that was set',
          allowed: 'vertical together with reading',
          write: 'Add "reading: 31.9" to that entry, or remove vertical',
        },
      ];
    if (holds('lateral')) return [];
    return [
      {
        path: [...mark, 'reading'],
        at: 'missing',
        reason: 'is missing, and so is lateral, so nothing can be learned from this mark',
        allowed: 'what the scale read, how far left or right the group was, or both',
        write: 'Add "reading: 31.9" to that entry',
      },
    ];
  });
}

function scaleFaults({ has, count }: Draft): readonly Fault[] {
  const read = Array.from({ length: count(['marks']) }, (_, entry) => ['marks', entry] as const).filter(
    (mark) => has([...mark, 'reading']),
  );
  if (read.length > 0 && !has(['sight', 'scale']))
    return [
      {
        path: ['sight', 'scale'],
        at: 'missing',
        reason: 'is missing, but the marks have readings of a scale',
        allowed: 'scale: { travel_per_unit, increases, at_zero }',
        write: 'Add "scale: { travel_per_unit: unknown, increases: down }" under "sight:"',
      },
    ];
  return [];
}
