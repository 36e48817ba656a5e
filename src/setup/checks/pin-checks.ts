import { fixedPins, sliderPins } from '../assemble/pins.ts';
import type { SetupFile } from '../schema/schema.ts';
import type { Fault } from './fault.ts';

/** Whether the pins make sense together, and whether marks name pins that there are. */
export function pinFaults({ sight, marks = [], days = [] }: SetupFile): readonly Fault[] {
  const { pins } = sight;
  const count = pins === undefined ? 0 : pins.length;
  return [
    ...(pins === undefined ? [] : orderFaults(pins)),
    ...[
      ...marks.map((mark, i) => ({ mark, path: ['marks', i] })),
      ...days.flatMap((day, k) =>
        (day.marks ?? []).map((mark, i) => ({ mark, path: ['days', k, 'marks', i] })),
      ),
    ].flatMap(({ mark, path }): readonly Fault[] => {
      if (mark.pin === undefined) return [];
      if (mark.pin > count)
        return [
          {
            path: [...path, 'pin'],
            at: 'value',
            reason: count === 0 ? 'the sight has no pins (sight.pins)' : `the sight has ${count} pins`,
            allowed: 'the number of a pin of sight.pins, counted from the highest',
            write: count === 0 ? 'Add "pins: [20 yd, 30 yd, 40 yd]" under "sight:"' : `Write 1 to ${count}`,
          },
        ];
      if (mark.reading === undefined && fixedPins(sight) === null && mark.pin > 1)
        return [
          {
            path: [...path, 'reading'],
            at: 'missing',
            reason: 'is missing: on a slider a pin says nothing without what the scale read',
            allowed: 'the reading that was set, and the pin that was held on the mark',
            write: 'Add "reading: 31.9" to that entry',
          },
        ];
      return [];
    }),
  ];
}

function orderFaults(pins: NonNullable<SetupFile['sight']['pins']>): readonly Fault[] {
  const slider = sliderPins({ pins }) !== null;
  const wrong = pins.findIndex((pin, i) => {
    const before = pins[i - 1];
    return before !== undefined && pin <= before;
  });
  if (wrong > 0)
    return [
      {
        path: ['sight', 'pins', wrong],
        at: 'value',
        reason: slider ? 'does not lie below the pin before it' : 'is not farther than the range before it',
        allowed: 'pins from the highest to the lowest',
        write: 'Write them in that order, each once',
      },
    ];
  const last = pins.at(-1);
  if (slider && last !== undefined && last > LOWEST)
    return [
      {
        path: ['sight', 'pins', pins.length - 1],
        at: 'value',
        reason: 'is no distance below the top pin; a list that begins with 0 has distances',
        allowed: 'distances up to 4 in, or ranges from 1 yd on',
        write: 'Write "[0 mm, 7.5 mm, 14 mm]" for a slider, or "[20 yd, 30 yd, 40 yd]" for fixed pins',
      },
    ];
  return [];
}

/** No pin stands farther below the top one, m. */
const LOWEST = 0.1016;
