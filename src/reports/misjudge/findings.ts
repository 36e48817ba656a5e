import { type HitChance, hitChances, type Spread } from '../../advice/range/hit-chance.ts';
import { type GuessRoom, guessRoom } from '../../advice/range/misjudge.ts';
import { at } from '../../numerics/at.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { archerSpread } from '../../setup/assemble/archer-spread.ts';
import type { OpenSetup } from '../../setup/open.ts';

/** One range: what a guess may be off, and how many shots hit. */
export interface MisjudgeRow {
  readonly room: GuessRoom;
  readonly hit: HitChance;
}

/** How far off a guess of the range may be for a ring, and the chance of a hit. */
export interface MisjudgeFindings {
  readonly ring: Metres;
  readonly spread: Spread;
  readonly rows: readonly MisjudgeRow[];
  /** The farthest range, where a guess matters most. */
  readonly farthest: MisjudgeRow;
}

export interface MisjudgeAsked {
  /** Diameter. */
  readonly ring: Metres;
  /** Rising; at least one. */
  readonly ranges: readonly Metres[];
  /** What goes wrong besides the archer's own group, which the setup knows. */
  readonly spread: Omit<Spread, 'arrow'>;
}

export function misjudgeFindings(
  opened: OpenSetup,
  { ring, ranges, spread: others }: MisjudgeAsked,
): MisjudgeFindings {
  const { rig } = opened.calibration;
  const spread = { ...others, arrow: archerSpread(opened) };
  const chances = hitChances(rig, ring, ranges, spread);
  const rows = guessRoom(rig, ring, ranges).map((room, i) => ({ room, hit: at(chances, i) }));
  return { ring, spread, rows, farthest: at(rows, rows.length - 1) };
}
