import type { LateralUnknown } from '../../calibration/sideways/lateral-mark.ts';
import type { Table } from '../../documents/table/table.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { CantFindings } from './findings.ts';

interface CauseWords {
  readonly name: string;
  readonly unit: string;
  readonly of: (value: number) => number;
  readonly digits: number;
}

/** How each cause is shown. */
function causeWords({ session: { units } }: CantFindings): Readonly<Record<LateralUnknown, CauseWords>> {
  const { smallLength, range } = units;
  const inDegrees = (value: number): number => fromSi(value, 'deg');
  const perHundred = 100 / fromSi(1, range);
  return {
    windage: {
      name: 'windage (straight)',
      unit: `${symbolOf(smallLength)} at 100 ${symbolOf(range)}`,
      of: (value) => fromSi(value * perHundred, smallLength),
      digits: smallLength === 'in' ? 2 : 0,
    },
    offset: {
      name: 'offset at the bow',
      unit: symbolOf(smallLength),
      of: (value) => fromSi(value, smallLength),
      digits: smallLength === 'in' ? 2 : 1,
    },
    plumb: { name: 'lean beyond the level', unit: '°', of: inDegrees, digits: 2 },
    side_force: { name: 'side force of the spin', unit: 'of ceiling', of: (value) => value, digits: 2 },
    tail_left: { name: 'tail left at launch', unit: '°', of: inDegrees, digits: 1 },
    turning: {
      name: 'nock travel at launch',
      unit: 'rad/s',
      of: (value) => value,
      digits: 1,
    },
  };
}

/** What the groups say about each cause. */
export function causeTable(found: CantFindings): Table {
  const words = causeWords(found);
  const speed = found.session.calibration.rig.launchSpeed;
  return {
    columns: ['cause', 'unit', 'value', '±', 'before, ±', 'verdict'].map((name) => ({ name, unit: '' })),
    rows: found.causes.map(({ name, value, sd, priorSd, verdict }) => {
      const { name: shown, unit, of, digits } = words[name];
      const per = name === 'turning' ? speed : 1;
      return [
        shown,
        unit,
        of(value * per).toFixed(digits),
        of(sd * per).toFixed(digits),
        name === 'windage' ? 'unknown' : of(priorSd * per).toFixed(digits),
        verdict,
      ];
    }),
  };
}

/** What the groups can and cannot tell, in words. */
export function sidewaysWords({ fit, session, leanSpinLikeness, leanOrSpin }: CantFindings): string {
  if (fit.residuals.length === 0)
    return 'No group in the file says how far left or right it was (lateral), so an error of the level, which looks just like a drift by spin, is not ruled out.';
  const { wind } = session.calibration.rig.conditions;
  return [
    wind.across === 0 && wind.tail === 0
      ? ''
      : "The groups are taken to have been shot in the file's wind, and what it drifts is taken off them.",
    leanSpinLikeness !== null && leanOrSpin
      ? `A leaning bow and a spinning arrow look the same in these groups (correlation ${Math.abs(leanSpinLikeness).toFixed(3)}): only their sum is known, and one lean cancels both. Arrows of the other helical shot as well (turn: left or right), or the bow turned end for end (cant: 180 deg), would tell them apart.`
      : '',
    launchWords(fit),
    fit.widening > 1
      ? `The groups scatter sideways more than their sizes explain (chance ${(100 * fit.chance).toFixed(1)} %); the errors are widened ${fit.widening.toFixed(1)} times to what is seen.`
      : '',
  ]
    .filter((line) => line !== '')
    .join('\n');
}

function launchWords({ launch }: CantFindings['fit']): string {
  switch (launch.kind) {
    case 'not asked for':
      return 'Nothing asks for a bad start of the arrow: one would be straight beyond 40 yd or so, and hide in the windage.';
    case 'does not help':
      return 'A bad start of the arrow does not explain what is left over.';
    case 'seen':
      return `The groups show a bad start (chance without one ${(100 * launch.chance).toFixed(2)} %): the arrow swings in its first 20 to 40 yd. Look at nock fit, rest and paper hole before anything leans.`;
  }
}
