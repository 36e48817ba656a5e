import { fromSi } from '../../quantities/format.ts';
import { trimmed } from '../../quantities/trimmed.ts';
import type { Section } from '../key-path.ts';
import { readQuantity } from '../schema/quantity-leaf.ts';
import { turnMeant } from '../schema/turn-words.ts';

/**
 * The share of length times height that a vane of each shape covers. Length and height are printed on the packet, the upper edge
 * is not: with a shape it is the one that gives a trapezoid the same area.
 *
 * - parabolic: the segment under an arc of a parabola, two thirds of its box (Archimedes, Quadrature of the Parabola).
 * - shield: a triangle, from the front to the highest point at the rear, where the cut is upright; common practice, no source.
 * - low: a low vane whose upper edge is half as long as the lower one; common practice, no source.
 */
const AREA_SHARE = { parabolic: 2 / 3, shield: 1 / 2, low: 3 / 4 } as const;
const VANE_SHAPES = ['shield', 'parabolic', 'low'] as const;

/** What a change of words comes to. */
export interface VaneWords {
  readonly value: Section;
  /** Each key that was worked out from another one: `tip_chord` from `shape`. */
  readonly from: readonly { readonly key: string; readonly of: string; readonly readAs: string }[];
}

/** A vane's section with its angle and turn apart, and with the upper edge that its shape stands for. */
export function withVaneWords(section: Section): VaneWords {
  const turned = withTurnApart(section);
  const shaped = withTipChord(turned.value);
  return { value: shaped.value, from: [...turned.from, ...shaped.from] };
}

/** `helical: 3 deg right`, which has come here as the angle, is an angle and a turn; `straight` is a turn alone. */
function withTurnApart(section: Section): VaneWords {
  const { angle, ...others } = section;
  if (typeof angle !== 'string' || 'turn' in section) return { value: section, from: [] };
  const words = angle.trim().split(/[\s,]+/);
  const turn = [words.at(-1), words[0]]
    .map((word) => turnMeant(word ?? ''))
    .find((each) => each !== undefined);
  const alone = turnMeant(angle);
  if (alone !== undefined)
    return {
      value: { ...others, turn: alone },
      from: [{ key: 'turn', of: 'angle', readAs: `turn: ${alone}` }],
    };
  if (turn === undefined) return { value: section, from: [] };
  const size = words.filter((word) => turnMeant(word) === undefined).join(' ');
  return {
    value: { ...others, angle: size, turn },
    from: [{ key: 'turn', of: 'angle', readAs: `angle: ${size}, turn: ${turn}` }],
  };
}

/** `shape: parabolic` with a length stands for the upper edge. */
function withTipChord(section: Section): VaneWords {
  const { shape, ...others } = section;
  const { root_chord: root } = section;
  const known = VANE_SHAPES.find((each) => typeof shape === 'string' && shape.trim().toLowerCase() === each);
  if (known === undefined || typeof root !== 'string' || 'tip_chord' in section)
    return { value: section, from: [] };
  const length = readQuantity('arrow.parts.vanes.root_chord', root);
  if (length.refusal !== undefined) return { value: others, from: [] };
  const tip = (2 * AREA_SHARE[known] - 1) * length.value;
  const text = `${trimmed(fromSi(tip, 'in'))} in`;
  return {
    value: { ...others, tip_chord: text },
    from: [{ key: 'tip_chord', of: 'shape', readAs: `tip_chord: ${text}` }],
  };
}

export const isVanes = (section: string): boolean => section === 'arrow.parts.vanes';
