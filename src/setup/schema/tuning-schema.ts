import * as z from 'zod/mini';
import { TUNING_CHANGES, TUNING_STEPS } from '../../bow/tuning-steps.ts';
import { once } from '../../numerics/once.ts';
import { day } from './day-leaf.ts';
import { KEY_MEANINGS } from './key-meaning.ts';
import { choice, flag, freeText, LONGEST_NOTE } from './leaf.ts';
import type { LimitKey } from './limits.ts';
import { quantityAt } from './quantity-leaf.ts';
import { quantitiesAt } from './quantity-list.ts';

const one = <K extends LimitKey>(key: K) => z.exactOptional(quantityAt(key));
const several = <K extends LimitKey>(key: K) => z.exactOptional(quantitiesAt(key));

const group = <K extends 'fletched' | 'bare'>(key: K, what: string) =>
  z.exactOptional(
    z
      .strictObject({
        arrows: quantityAt(`tuning.log.${key}.arrows`),
        lateral: quantityAt(`tuning.log.${key}.lateral`),
        vertical: quantityAt(`tuning.log.${key}.vertical`),
      })
      .register(KEY_MEANINGS, { what }),
  );

const measuredArrow = () =>
  z.strictObject({
    mass: quantityAt('tuning.log.measured.mass'),
    runout: one('tuning.log.measured.runout'),
    deflection: one('tuning.log.measured.deflection'),
  });

const step = () =>
  choice(TUNING_STEPS, { what: 'step of the evening that these shots or readings belong to' }, {}, 'steps');

/**
 * One round of one step, made when a file has any. Which keys belong to which step is checked once the entry is read
 * (tuning-checks.ts).
 */
const entry = once(() =>
  z.strictObject({
    date: day({ what: 'day of these shots or readings' }),
    step: step(),
    changed: z.exactOptional(
      z
        .array(choice(TUNING_CHANGES, { what: 'something that was altered after these shots' }))
        .register(KEY_MEANINGS, { what: 'what was altered after these shots', words: TUNING_CHANGES }),
    ),
    done: z.exactOptional(flag({ what: 'whether the step is done, whatever its numbers say' })),
    note: z.exactOptional(freeText({ what: 'a note for your own record' }, LONGEST_NOTE)),
    range: one('tuning.log.range'),
    serving: several('tuning.log.serving'),
    fits_at: one('tuning.log.fits_at'),
    held: one('tuning.log.held'),
    dropped: one('tuning.log.dropped'),
    draw_length: one('tuning.log.draw_length'),
    match: one('tuning.log.match'),
    holding_weight: one('tuning.log.holding_weight'),
    late_stop: z.exactOptional(choice(['top', 'bottom'], { what: 'the draw stop that touches last' })),
    stop_gap: one('tuning.log.stop_gap'),
    distance: one('tuning.log.distance'),
    nock_right: one('tuning.log.nock_right'),
    nock_high: one('tuning.log.nock_high'),
    arrow: z.exactOptional(
      choice(['fletched', 'bare'], { what: 'the arrow that tore the paper', otherwise: 'fletched' }),
    ),
    count: one('tuning.log.count'),
    far: one('tuning.log.far'),
    centred_at: one('tuning.log.centred_at'),
    extension: one('tuning.log.extension'),
    left: several('tuning.log.left'),
    right: several('tuning.log.right'),
    turned: one('tuning.log.turned'),
    set: one('tuning.log.set'),
    measured: z.exactOptional(
      z.array(measuredArrow()).register(KEY_MEANINGS, { what: 'the arrows, in the order of their numbers' }),
    ),
    fletched: group('fletched', 'the group of fletched arrows'),
    bare: group('bare', 'the group of bare shafts'),
    fletched_mass: one('tuning.log.fletched_mass'),
    fletched_balance: one('tuning.log.fletched_balance'),
    bare_mass: one('tuning.log.bare_mass'),
    bare_balance: one('tuning.log.bare_balance'),
    rest_right: one('tuning.log.rest_right'),
    rest_up: one('tuning.log.rest_up'),
    nock_up: one('tuning.log.nock_up'),
    line: z.exactOptional(choice(['vertical', 'horizontal'], { what: 'the line that was shot at' })),
    off_line: several('tuning.log.off_line'),
    spread: one('tuning.log.spread'),
    arrows: one('tuning.log.arrows'),
    slope: one('tuning.log.slope'),
    uphill: several('tuning.log.uphill'),
    downhill: several('tuning.log.downhill'),
    tipped: one('tuning.log.tipped'),
    cant: one('tuning.log.cant'),
    plumb_run: one('tuning.log.plumb_run'),
    plumb_aside: one('tuning.log.plumb_aside'),
  }),
);

const log = z
  .array(z.lazy(entry))
  .register(KEY_MEANINGS, { what: 'rounds of tuning, one for each bench or group of shots' });

/** The record of a tuning evening: in the setup, or alone in a file of its own. Read by `tune` alone. */
export const tuningSchema = z
  .strictObject({
    skip: z.exactOptional(
      z
        .array(choice(TUNING_STEPS, { what: 'a step to leave out' }, {}, 'steps'))
        .register(KEY_MEANINGS, { what: 'steps to leave out', words: TUNING_STEPS }),
    ),
    log: z.exactOptional(log),
  })
  .register(KEY_MEANINGS, { what: 'the record of a tuning evening' });
