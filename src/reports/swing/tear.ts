import { endsOfTear } from '../../advice/tuning/launch-from-paper.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../../quantities/quantity.ts';
import { optionQuantity, positiveQuantity } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import type { Session } from '../session.ts';
import { flightsOf } from '../tune/flown-starts.ts';

const SIDES = ['left', 'right', 'high', 'low'] as const;
type Side = (typeof SIDES)[number];

/** A tear as an archer says it, and the two ends of what it may mean. */
export interface SaidTear {
  readonly size: Metres;
  readonly side: Side;
  /** Ahead of the grip's deepest point. */
  readonly paper: Metres;
  /** If all of it is the tail standing off, and if all of it is the nock travelling across; sizes, without their side. */
  readonly angle: Radians;
  readonly nockSpeed: MetresPerSecond;
}

/** No tear is longer than so much of an arrow. */
const LONGEST = '6 in';

/**
 * A tear in words, "0.75 in left": where the hole of the nock lies from that of the point.
 *
 * @throws QuestionError for a tear without a size or a side; DomainError for paper that the point is through on the string
 */
export function saidTear(session: Session, text: string, paperText: string): SaidTear {
  const word = /^(.*?)\s*(?:nock[- ])?([a-z]+)$/i.exec(text.trim());
  const side = SIDES.find((each) => each === word?.[2]?.toLowerCase());
  if (word === null || side === undefined)
    throw new QuestionError(
      `{tear}: "${text}" does not say on which side of the point's hole the nock went through`,
      'Write {tear} "0.75 in left", or right, high or low.',
    );
  const size = positiveQuantity('tear', word[1] ?? '', 'length', LONGEST);
  const paper = optionQuantity('paper', paperText, 'length');
  const upright = side === 'high' || side === 'low';
  const signed = side === 'left' || side === 'low' ? -size : size;
  const tear = {
    paper,
    nockRight: si<'m'>(signed),
    nockHigh: si<'m'>(signed),
    arrow: 'fletched',
    count: 1,
  } as const;
  const { ifAngle, ifRate } = endsOfTear(flightsOf(session), tear, upright ? 'high' : 'right');
  return {
    size,
    side,
    paper,
    angle: si(Math.abs(ifAngle)),
    nockSpeed: si(Math.abs(ifRate) * session.assembly.arrow.flying.balance),
  };
}

/** What one tear may mean, and that it cannot say which. */
export const tearWords = ({ size, side, paper, angle, nockSpeed }: SaidTear, { units }: Session): string =>
  `Nock ${side} by ${formatQuantity(size, units.smallLength, units.smallLength === 'in' ? 2 : 0)} at ` +
  `${formatQuantity(paper, units.height, 1)}: the tail stands off by ${formatQuantity(angle, 'deg', 1)}, or the nock ` +
  `travels at ` +
  `${formatQuantity(nockSpeed, units.speed, 1)}, or some of both; one tear cannot tell. Tears at 4 and at 12 ft can: see tune.`;

/** Under the keys of the contract. */
export const tearData = ({ size, side, paper, angle, nockSpeed }: SaidTear): object => ({
  size_m: size,
  side,
  paper_m: paper,
  if_angle_rad: angle,
  if_nock_travel_mps: nockSpeed,
});
