import type { TotalDifference } from '../../arrow/arrow.ts';
import { GRAIN, INCH } from '../../quantities/exact.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Session } from '../session.ts';

/**
 * Beyond these a list of parts is not the arrow that was weighed: front of centre, stability and every build rest on the list.
 *
 * @source common practice, no source: glue and paint come to a few grains, and a balance point is found to a tenth of an inch
 */
const MASS_OFF = 10 * GRAIN;
const MASS_SHARE = 0.03;
const BALANCE_OFF = 0.3 * INCH;
/** How near the mass of the other vanes must come to what the list has too much, for it to be the likely cause. */
const SAME = 3 * GRAIN;

/** Whether a list of parts misses the arrow by more than glue and paint. */
export const isBeyondGlue = ({ what, measured, fromParts }: TotalDifference): boolean => {
  const off = Math.abs(measured - fromParts);
  if (what === 'mass') return off > MASS_OFF || off > MASS_SHARE * measured;
  return what === 'balance' && off > BALANCE_OFF;
};

/** A warning for each total that the list of parts misses, with its likely cause; none for most arrows. */
export const partWarnings = (session: Session): readonly string[] =>
  session.assembly.arrow.differences
    .filter(isBeyondGlue)
    .map((difference) => (difference.what === 'mass' ? massWords : balanceWords)(session, difference));

function massWords({ setup, units }: Session, { measured, fromParts }: TotalDifference): string {
  const off = formatQuantity(Math.abs(measured - fromParts), units.mass, 0);
  const totals = `(${formatQuantity(measured, units.mass, 0)} weighed, ${formatQuantity(fromParts, units.mass, 0)} listed)`;
  const vanes = setup.arrow.parts?.vanes;
  if (measured > fromParts)
    return (
      `${off} of this arrow are not in its parts ${totals}. A wrap, glue, a bushing or a collar that is not listed, ` +
      'or the wrong mass per length of the shaft?'
    );
  const others = vanes?.count === undefined ? undefined : (vanes.count - 1) * vanes.mass;
  const cause =
    others !== undefined && Math.abs(fromParts - measured - others) < SAME
      ? 'The mass of the vanes is that of one vane: was it the whole set?'
      : 'The shaft as it was before the cut, the wrong mass per length, or a heavier point than the one that was weighed?';
  return `the parts weigh ${off} more than this arrow ${totals}. ${cause}`;
}

function balanceWords({ assembly, units }: Session, { measured, fromParts }: TotalDifference): string {
  const { length } = assembly.arrow;
  const inches = (value: number) => formatQuantity(value, units.bowLength, 1);
  const otherEnd = length !== null && Math.abs(length - measured - fromParts) < BALANCE_OFF;
  const side = measured > fromParts ? 'forward of' : 'behind';
  const cause = otherEnd
    ? 'Measured from the point? It counts from the groove of the nock.'
    : `Weight ${measured > fromParts ? 'at the front' : 'at the rear'} that is not listed, or measured on another arrow?`;
  return (
    `the arrow balances ${inches(Math.abs(measured - fromParts))} ${side} where its parts put it ` +
    `(${inches(measured)} measured, ${inches(fromParts)} from the parts). ${cause}`
  );
}
