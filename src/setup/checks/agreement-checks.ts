import type { Arrow, TotalDifference } from '../../arrow/arrow.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { INCH } from '../../quantities/exact.ts';
import { type DisplayUnit, fromSi } from '../../quantities/format.ts';
import { assembleArrow } from '../assemble/assemble-arrow.ts';
import { powerStrokeOf } from '../assemble/assemble-launch.ts';
import type { KeyPath } from '../key-path.ts';
import { withUnit } from '../schema/refusal.ts';
import type { SetupFile } from '../schema/schema.ts';
import type { Fault } from './fault.ts';
import { pinFaults } from './pin-checks.ts';
import { scaleDirectionFaults } from './scale-checks.ts';

/** Glue, paint and a wrap that nobody listed make less than this share of an arrow; common practice, no source. */
const MASS_SHARE = 0.2;
/** Further than this from where the parts put it, a balance point was measured from the other end or on another arrow. */
const BALANCE_OFF = 1.5 * INCH;
const LENGTH_OFF = INCH;
/** A pin hits only beyond the start of free flight; this much beyond it is enough for the line of sight to be one, m. */
const BEYOND_START = 0.1;

/**
 * What the measured totals, the parts and the ranges of a file that can be read must agree on.
 *
 * @param arrowVaried the arrow was changed from outside the file: then its totals are those of the arrow before the change
 */
export function agreementFaults(setup: SetupFile, arrowVaried: boolean): readonly Fault[] {
  const arrow = arrowOrNothing(setup);
  if (arrow === undefined) return [];
  return [
    ...(arrowVaried ? [] : arrow.differences.flatMap(differenceFaults)),
    ...beyondTheEnd(setup, arrow),
    ...rangeFaults(setup, arrow),
    ...scaleDirectionFaults(setup),
    ...pinFaults(setup),
  ];
}

/** Nothing when its parts contradict each other in a way that the arrow's own rules refuse. */
function arrowOrNothing({ arrow }: SetupFile): Arrow | undefined {
  try {
    return assembleArrow(arrow);
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

function differenceFaults({ what, measured, fromParts }: TotalDifference): readonly Fault[] {
  const off = Math.abs(measured - fromParts);
  const [unit, digits, tolerated, allowed] = (
    {
      mass: ['gr', 0, MASS_SHARE * fromParts, 'a mass within 20 % of what the parts add up to'],
      balance: ['in', 1, BALANCE_OFF, 'a balance point within 1.5 in of where the parts put it'],
      length: ['in', 2, LENGTH_OFF, 'a length within 1 in of the shaft with its nock'],
      diameter: ['in', 3, Number.POSITIVE_INFINITY, ''],
    } as const
  )[what];
  if (off <= tolerated) return [];
  const inUnit = (value: number) => withUnit(Number(fromSi(value, unit).toFixed(digits)), unit);
  return [
    {
      path: ['arrow', what],
      at: 'value',
      reason: `${inUnit(measured)} was measured, but the parts make it ${inUnit(fromParts)}`,
      allowed,
      write:
        what === 'mass'
          ? 'Weigh the arrow again, or correct the part that is wrong'
          : 'Measure again, or correct the part that is wrong',
    },
  ];
}

function beyondTheEnd({ arrow: { parts } }: SetupFile, { length, parts: built }: Arrow): readonly Fault[] {
  if (length === null || built === null) return [];
  const end = length + built.point.length;
  const shown = withUnit(Number(fromSi(end, 'in').toFixed(1)), 'in');
  return (parts?.others ?? []).flatMap(({ from_nock: place }, i): readonly Fault[] =>
    place <= end
      ? []
      : [
          {
            path: ['arrow', 'parts', 'others', i, 'from_nock'],
            at: 'value',
            reason: 'the arrow ends before that place',
            allowed: `a place on the arrow, whose length is ${shown} with its point`,
            write: 'Measure it from the groove of the nock',
          },
        ],
  );
}

/** Ranges within the bow: the arrow is not in free flight there. */
function rangeFaults(setup: SetupFile, { flying }: Arrow): readonly Fault[] {
  const least = powerStrokeOf(setup.bow) + flying.balance + BEYOND_START;
  const ranges: readonly (readonly [KeyPath, number | undefined])[] = [
    [['sight', 'zero_range'], setup.sight.zero_range],
    ...shotRanges([], setup),
    ...(setup.days ?? []).flatMap((day, i) => shotRanges(['days', i], day)),
  ];
  return ranges.flatMap(([path, range]): readonly Fault[] =>
    range === undefined || range >= least
      ? []
      : [
          {
            path,
            at: 'value',
            reason: 'the arrow is still on the string at that range',
            allowed: `at least, with this draw length and balance point, ${leastIn(least, 'yd')} (${leastIn(least, 'm')})`,
            write: `Write "${leastIn(least, 'yd')}" or a longer range`,
          },
        ],
  );
}

const shotRanges = (
  path: KeyPath,
  { marks = [], drops = [] }: Pick<SetupFile, 'marks' | 'drops'>,
): readonly (readonly [KeyPath, number])[] => [
  ...marks.map(({ range }, i) => [[...path, 'marks', i, 'range'], range] as const),
  ...drops.flatMap(({ range, aimed_with: aimed }, i) => [
    [[...path, 'drops', i, 'aimed_with'], aimed] as const,
    [[...path, 'drops', i, 'range'], range] as const,
  ]),
];

/** Rounded up, so that what the message says is enough is enough. */
const leastIn = (range: number, unit: DisplayUnit): string =>
  withUnit(Math.ceil(10 * fromSi(range, unit)) / 10, unit);
