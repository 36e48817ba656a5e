import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import { choice } from './leaf.ts';
import { buildPartsSchema, partsSchema } from './parts-schema.ts';
import { meaningAt, quantityAt, uncertaintyAt } from './quantity-leaf.ts';
import { optional, required } from './section.ts';

const dragTable = z.array(
  z.strictObject({
    reynolds: quantityAt('arrow.drag_coefficient.reynolds'),
    value: quantityAt('arrow.drag_coefficient').register(KEY_MEANINGS, {
      ...meaningAt('arrow.drag_coefficient'),
      what: 'drag coefficient at that Reynolds number',
    }),
  }),
);

const dragCoefficient = z
  .union([dragTable, quantityAt('arrow.drag_coefficient')])
  .register(KEY_MEANINGS, meaningAt('arrow.drag_coefficient'));

export const arrowSchema = z
  .strictObject({
    ...required('arrow', ['diameter']),
    ...optional('arrow', ['mass', 'balance', 'length', 'side_force']),
    drag_coefficient: z.exactOptional(dragCoefficient),
    drag_coefficient_sd: z.exactOptional(uncertaintyAt('arrow.drag_coefficient')),
    boundary_layer: z.exactOptional(
      choice(['turbulent', 'laminar', 'transition'], { what: 'how the air flows along the shaft' }),
    ),
    parts: z.exactOptional(partsSchema),
  })
  .register(KEY_MEANINGS, { what: 'the arrow' });

/** A build names only what differs, down to single keys of single parts. */
export const buildArrowSchema = () =>
  z.extend(z.partial(arrowSchema), { parts: z.exactOptional(buildPartsSchema()) }).register(KEY_MEANINGS, {
    what: 'what differs in the arrow',
    keysOf: 'arrow',
    otherwise: 'the arrow above',
  });
