import type { Explained } from '../calibration/disagreement.ts';
import type { Measurement } from '../calibration/measurement.ts';
import type { Metres } from '../quantities/quantity.ts';
import { leftOutMarks } from './disagreement-words.ts';
import type { Session } from './session.ts';
import { toldSlip } from './unseen-words.ts';

/** The marks that a fit leaves out because they do not belong, for programs. */
export const leftOutData = (session: Session): object => ({
  marks_left_out: leftOutMarks(session).flatMap(({ mark, wouldRead, wouldReadSd, slip }) =>
    mark.kind !== 'mark'
      ? []
      : [
          {
            range_m: mark.range,
            reading: mark.reading,
            would_read: wouldRead,
            would_read_sd: wouldReadSd,
            slip: slip?.kind ?? null,
            date: mark.day,
          },
        ],
  ),
  pencil_lines_left_out: leftOutMarks(session).flatMap(({ mark, wouldRead, wouldReadSd, slip }) =>
    mark.kind !== 'pencil'
      ? []
      : [
          {
            range_m: mark.range,
            on_tape_m: mark.onTape,
            would_be_m: wouldRead,
            would_be_sd_m: wouldReadSd,
            slip: slip?.kind ?? null,
            date: mark.day,
          },
        ],
  ),
});

/** What contradicts what, for programs; null while nothing does. */
export function contradictionData({ disagreement }: Session): object | null {
  if (disagreement?.isContradiction !== true) return null;
  const { agreement, explanations, together, worst, order } = disagreement;
  return {
    kind: kindOf(explanations, together),
    chance: agreement?.chance ?? null,
    causes: explanations.map(causeData),
    together: together.map(measurementData),
    worst: worst.map(measurementData),
    order: order.map(({ near, far }) => ({
      near_range_m: near.range,
      ...(near.kind === 'mark' ? { near_reading: near.reading } : { near_on_tape_m: near.onTape }),
      far_range_m: far.range,
      ...(far.kind === 'mark' ? { far_reading: far.reading } : { far_on_tape_m: far.onTape }),
    })),
  };
}

function kindOf(explanations: readonly Explained[], together: readonly Measurement[]): string {
  const [first, second] = explanations;
  if (first === undefined) return together.length > 0 ? 'several marks' : 'unexplained';
  if (second !== undefined) return 'one of several';
  return first.explanation.kind === 'mark' ? 'one mark' : 'one number';
}

function causeData({ explanation, agreement: { chance } }: Explained): object {
  const { kind } = explanation;
  switch (kind) {
    case 'mark':
      return { kind, chance, ...measurementData(explanation.measurement) };
    case 'travel per unit':
      return { kind, chance, value_m: explanation.value, stated_m: explanation.stated };
    case 'reading at zero':
      return { kind, chance, value: explanation.value, stated: explanation.stated };
    case 'direction':
      return { kind, chance, increases: explanation.increases };
    case 'other unit':
      return { kind, chance, written: explanation.written, zero_range_too: explanation.isZeroToo };
    case 'launch speed':
      return { kind, chance, value_mps: explanation.value, stated_mps: explanation.stated };
    case 'travel ratio':
      return { kind, chance, value: explanation.value, stated: explanation.stated };
    case 'line of zero':
      return { kind, chance, farther_m: explanation.value };
    case 'strip turned':
      return { kind, chance };
  }
}

const measurementData = (measurement: Measurement): object => ({
  measured: measurement.kind,
  range_m: measurement.range,
  ...(measurement.kind === 'mark' ? { reading: measurement.reading } : {}),
  ...(measurement.kind === 'pencil' ? { on_tape_m: measurement.onTape } : {}),
  date: measurement.day,
});

/** The largest slip in one reading that would go unseen, for programs; null where it is not worth telling. */
export function unseenData(session: Session, farRange: Metres): object | null {
  const slip = toldSlip(session, farRange);
  return slip === null
    ? null
    : {
        range_m: slip.range,
        numbers: slip.mark.kind === 'mark' ? slip.numbers : null,
        on_strip_m: slip.mark.kind === 'pencil' ? slip.numbers : null,
        far_range_m: slip.farRange,
        on_target_m: slip.shift,
      };
}
