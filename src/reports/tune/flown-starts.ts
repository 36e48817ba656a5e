import { bareShaft } from '../../advice/tuning/bare-shaft.ts';
import type { BareOffset, LaunchEstimate, Tear } from '../../advice/tuning/launch-from-paper.ts';
import { type StartFlights, startFlights } from '../../advice/tuning/start-flights.ts';
import { si } from '../../quantities/quantity.ts';
import { powerStrokeOf } from '../../setup/assemble/assemble-launch.ts';
import { defaultOf } from '../../setup/assemble/defaults.ts';
import type { Session } from '../session.ts';
import { type RestPlace, restMoves, restPlace } from './rest-place.ts';
import { BUT_REST, type Evening, type Logged, loggedOf, needed, sinceChange } from './step-answer.ts';

/** Where the rest stood for something that was shot. */
export interface AtRest<T> {
  readonly shot: T;
  readonly place: RestPlace;
}

/** The flights of a session's arrow, fletched and bare, from the bow of its setup. */
export function flightsOf({ setup, assembly, calibration }: Session): StartFlights {
  const { drag_coefficient: drag } = setup.arrow;
  const given =
    typeof drag === 'object' ? drag.map(({ reynolds, value }) => ({ reynolds, coefficient: value })) : drag;
  return startFlights({
    rig: calibration.rig,
    fletched: assembly.arrow,
    bare: bareShaft(assembly.arrow, given),
    gripAhead: si(powerStrokeOf(setup.bow) + (setup.bow.brace_height ?? defaultOf('bow.brace_height'))),
  });
}

const fresh = (evening: Evening, step: 'paper' | 'bare'): readonly Logged[] => {
  const logged = loggedOf(evening, step);
  const since = sinceChange(evening, logged, BUT_REST);
  return since.length === 0 ? logged : since;
};

/** The tears since something other than the rest was changed, each with where the rest stood. */
export function tearsOf(evening: Evening): readonly AtRest<Tear>[] {
  const places = restMoves(evening.record.log);
  return fresh(evening, 'paper').map(({ entry, index }) => ({
    place: restPlace(places, index),
    shot: {
      paper: needed(entry.distance, 'distance'),
      nockRight: needed(entry.nock_right, 'nock_right'),
      nockHigh: needed(entry.nock_high, 'nock_high'),
      arrow: entry.arrow ?? 'fletched',
      count: entry.count ?? ONE_SHOT,
    },
  }));
}

const ONE_SHOT = 1;

/** The offsets of bare shafts, likewise. */
export function offsetsOf(evening: Evening): readonly AtRest<BareOffset>[] {
  const places = restMoves(evening.record.log);
  return fresh(evening, 'bare').flatMap(({ entry: { range, fletched, bare }, index }) => {
    if (fletched === undefined || bare === undefined) return [];
    const at = needed(range, 'range');
    return [
      {
        place: restPlace(places, index),
        shot: {
          range: at,
          right: si<'m'>(bare.lateral - fletched.lateral),
          high: si<'m'>(bare.vertical - fletched.vertical),
          sd: si<'m'>(evening.arrowSd * at * Math.sqrt(1 / bare.arrows + 1 / fletched.arrows)),
        },
      },
    ];
  });
}

/** Those shot with the rest where it stood for another. */
export const shotAt = <T>(shots: readonly AtRest<T>[], { right, up }: RestPlace): readonly T[] =>
  shots.filter(({ place }) => place.right === right && place.up === up).map(({ shot }) => shot);

/** A start under the keys of the contract. */
export const launchData = ({ start, sd, decided }: LaunchEstimate): object => ({
  tail_left_rad: start.tailLeft,
  tail_left_sd_rad: sd.tailLeft,
  tail_high_rad: start.tailUp,
  tail_high_sd_rad: sd.tailUp,
  tail_left_rate_radps: start.tailLeftRate,
  tail_left_rate_sd_radps: sd.tailLeftRate,
  tail_high_rate_radps: start.tailRisingRate,
  tail_high_rate_sd_radps: sd.tailRisingRate,
  decided: decided.map((name) => DATA_NAMES[name]),
});

const DATA_NAMES = {
  tailLeft: 'tail_left',
  tailUp: 'tail_high',
  tailLeftRate: 'tail_left_rate',
  tailRisingRate: 'tail_high_rate',
} as const;
