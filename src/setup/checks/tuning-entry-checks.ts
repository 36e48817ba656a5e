import type { TuningStep } from '../../bow/tuning-steps.ts';
import { fromSi } from '../../quantities/format.ts';
import type { KeyPath } from '../key-path.ts';
import type { LimitKey } from '../schema/limits.ts';
import type { Draft } from './draft.ts';
import { type Check, fault, needs, oneOf, rangeCheck, together } from './entry-check.ts';
import type { Fault } from './fault.ts';

/** What the values of one entry of the tuning log must agree on. */
export const faultsWithin = (draft: Draft, step: TuningStep, path: KeyPath): readonly Fault[] =>
  (CHECKS[step] ?? []).flatMap((check) => check(draft, path));

/**
 * A torque test nearer than this is mostly the sideways start of the arrow; bare shafts are followed no farther than
 * the other.
 */
const RANGES = { torque: { least: 10 }, bare: { most: 40 } } as const;

const values = ({ quantity, count }: Draft, path: KeyPath, key: LimitKey): readonly number[] =>
  Array.from({ length: count(path) }, (_, i) => quantity(key, [...path, i])).filter(
    (value) => value !== undefined,
  );

const offLine: Check = (draft, path) => {
  const place = [...path, 'off_line'];
  const hits = draft.count(place);
  if (draft.has(place) && draft.has([...path, 'spread']))
    return [
      fault(
        path,
        'spread',
        'off_line and spread say the same twice',
        'one of them',
        'Keep off_line, and remove spread',
      ),
    ];
  if (hits === 1)
    return [
      fault(
        path,
        'off_line',
        'holds one arrow, but one arrow has no spread',
        'two or more',
        'Write how far each of two or more arrows hit off the line',
      ),
    ];
  const found = values(draft, place, 'tuning.log.off_line');
  if (hits > 1 && found.length === hits && new Set(found).size === 1)
    return [
      fault(
        path,
        'off_line',
        'the arrows are all alike, but no spread is that exact',
        'distances to a tenth of an inch',
        'Measure to a tenth of an inch',
      ),
    ];
  return [];
};

const restOfLine: Check = ({ has, text }, path) => {
  const line = text([...path, 'line'])?.trim();
  const keys = line === 'horizontal' ? ['rest_up', 'nock_up'] : ['rest_right'];
  if (line === undefined || keys.some((key) => has([...path, key]))) return [];
  return [
    {
      path: [...path, keys[0] ?? ''],
      at: 'missing',
      reason: `is missing: a ${line} line tells where the rest is best, so it must say where the rest stood`,
      allowed: `${keys.join(' or ')} from any place that stays`,
      write: `Add "${keys[0]}: 0.8 mm" to that entry`,
    },
  ];
};

/** Arrows whose masses differ by more are not of one kind, gr. */
const MOST_MASS_RANGE = 30;

const arrowList: Check = (draft, path) => {
  const place = [...path, 'measured'];
  const arrows = draft.count(place);
  const set = draft.quantity('tuning.log.set', [...path, 'set']);
  const masses = Array.from({ length: arrows }, (_, i) =>
    draft.quantity('tuning.log.measured.mass', [...place, i, 'mass']),
  ).filter((mass) => mass !== undefined);
  const range = fromSi(Math.max(...masses) - Math.min(...masses), 'gr');
  return [
    ...(set !== undefined && arrows > 0 && set > arrows
      ? [
          fault(
            path,
            'set',
            `"${set}" is more than the ${arrows} arrows measured`,
            `2 to ${arrows}`,
            `Write "${arrows}", or measure more arrows`,
          ),
        ]
      : []),
    ...(arrows === 1
      ? [fault(path, 'measured', 'one arrow needs no sorting', 'two arrows or more', 'Measure more arrows')]
      : []),
    ...(masses.length > 1 && range > MOST_MASS_RANGE
      ? [
          fault(
            path,
            'measured',
            `the masses differ by ${range.toFixed(1)} gr: two kinds of arrow?`,
            `masses within ${MOST_MASS_RANGE} gr of one another`,
            'Sort each kind by itself',
          ),
        ]
      : []),
  ];
};

const listExample = (): string => '[1.2 in, -0.4 in]';

const CHECKS: Readonly<Partial<Record<TuningStep, readonly Check[]>>> = {
  torque: [rangeCheck(RANGES.torque, 'most of such a shift is the arrow starting to one side')],
  bare: [
    rangeCheck(RANGES.bare, 'a bare shaft is not followed farther, and should not be shot farther'),
    together(
      'fletched',
      'bare',
      'is missing: only the two groups together tell anything',
      () => '{ arrows: 3, lateral: 0 in, vertical: 0 in }',
    ),
    together('bare_mass', 'bare_balance', 'is missing: the tape follows from both', (key) =>
      key === 'bare_mass' ? '427 gr' : '18.61 in',
    ),
    needs('range', 'bare', '30 yd'),
    oneOf(
      ['bare', 'bare_mass'],
      'is missing, and so is bare_mass, so there is nothing to learn',
      'Add "fletched:" and "bare:" with their groups, or "bare_mass:" and "bare_balance:" for the tape',
    ),
  ],
  line: [
    offLine,
    restOfLine,
    needs('arrows', 'spread', '5'),
    oneOf(
      ['off_line', 'spread'],
      'is missing: how far the arrows hit off the line',
      'Add "off_line: [1.9 in, -4.0 in, -2.7 in]" to that entry, or "spread:" and "arrows:"',
    ),
  ],
  arrows: [arrowList],
  level: [
    together(
      'uphill',
      'downhill',
      'is missing: only their difference tells the level from the windage',
      listExample,
    ),
    together('tipped', 'cant', 'is missing: the error of the level follows from both', (key) =>
      key === 'cant' ? '0.4 deg' : '25 deg',
    ),
    together('plumb_run', 'plumb_aside', 'is missing: the lean of the bar follows from both', (key) =>
      key === 'plumb_run' ? '2 in' : '0.02 in',
    ),
    needs('slope', 'uphill', '30 deg'),
    needs('range', 'uphill', '40 yd'),
    oneOf(
      ['uphill', 'downhill', 'tipped', 'cant', 'plumb_run', 'plumb_aside'],
      'is missing, and so is every other way to see an axis',
      'Add "uphill:" and "downhill:" hits, or "tipped:" and "cant:", or "plumb_run:" and "plumb_aside:"',
    ),
  ],
};
