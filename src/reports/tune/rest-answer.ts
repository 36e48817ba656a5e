import {
  type Expected,
  nextMove,
  type RestNull,
  type RestOutcome,
  type RestReading,
  restNull,
} from '../../advice/tuning/rest-null.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { moveOfRest, ofRest } from './lengths.ts';

/** What is read across one direction, at every place of the rest. */
export interface Direction {
  readonly readings: readonly RestReading[];
  /** What all of them share. */
  readonly shared: number;
  readonly expected: Expected;
  /** Faults below this are small. */
  readonly small: number;
  /** Within this of clean it is clean. */
  readonly clean: number;
}

interface DirectionAnswer {
  readonly outcome: RestOutcome;
  readonly clean: boolean;
  /** Right or up positive; 0 when clean, null when it went the wrong way. */
  readonly move: Metres | null;
}

/** What the readings of one direction say of the rest, which stands where the last one was read. */
function directionAnswer({ readings, shared, expected, small, clean }: Direction): DirectionAnswer {
  const last = at(readings, readings.length - 1);
  const outcome = restNull(readings, shared, expected);
  const here = readings.filter(({ position }) => position === last.position);
  const fault = here.reduce((sum, { reading }) => sum + reading, 0) / here.length;
  if (Math.abs(fault) <= clean) return { outcome, clean: true, move: si(0) };
  if (outcome.kind === 'wrong way') return { outcome, clean: false, move: null };
  return { outcome, clean: false, move: nextMove(outcome, last.position, fault, small, expected) };
}

export interface RestAnswer {
  readonly sideways: DirectionAnswer;
  readonly upright: DirectionAnswer;
  readonly done: boolean;
}

export const restAnswer = (sideways: Direction, upright: Direction): RestAnswer => {
  const [across, up] = [directionAnswer(sideways), directionAnswer(upright)];
  return { sideways: across, upright: up, done: across.clean && up.clean };
};

export const restVerdict = ({ sideways, upright, done }: RestAnswer): string => {
  if (done) return 'clean';
  return sideways.move === null || upright.move === null ? 'wrong way' : 'move';
};

const nullOf = ({ outcome }: DirectionAnswer): RestNull | null =>
  outcome.kind === 'null' ? outcome.null : null;

/** Under the keys of the contract. */
export function restData({ sideways, upright }: RestAnswer): object {
  const [across, up] = [nullOf(sideways), nullOf(upright)];
  return {
    move: { rest_right_m: sideways.move, rest_up_m: upright.move },
    null:
      across === null && up === null
        ? null
        : {
            rest_right_m: across === null ? null : across.position,
            rest_right_sd_m: across === null ? null : across.sd,
            interval_m: across === null ? null : across.interval,
            rest_up_m: up === null ? null : up.position,
            rest_up_sd_m: up === null ? null : up.sd,
            interval_up_m: up === null ? null : up.interval,
          },
  };
}

const WRONG_WAY =
  'It moved the wrong way: look for contact, a leaning cam or the bow hand. No size of move follows from that.';

/** What to do with the rest, in words; empty when nothing is to be done. */
export function moveWords({ sideways, upright }: RestAnswer): string {
  if (sideways.move === null || upright.move === null) return WRONG_WAY;
  const towards = (move: number, [back, ahead]: readonly [string, string]): string =>
    move < 0 ? back : ahead;
  const parts = [
    wordsOf(sideways, (move) => towards(move, ['left', 'right']), 'right'),
    wordsOf(upright, (move) => towards(move, ['down', 'up']), 'up'),
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `${parts.join(' ')} If it grows, go back.`;
}

function wordsOf(answer: DirectionAnswer, side: (move: number) => string, positive: 'right' | 'up'): string {
  const { move } = answer;
  const found = nullOf(answer);
  if (move === null || move === 0) return '';
  if (found === null) {
    const nock = positive === 'up' ? ' (or the nocking point the other way)' : '';
    return `Move the rest ${moveOfRest(move)} ${side(move)}${nock}.`;
  }
  return (
    `Rest to ${ofRest(Math.abs(found.position))} ${side(found.position)} of where you began (± ${ofRest(found.sd)}): ` +
    `${moveOfRest(move)} ${side(move)} now.`
  );
}
