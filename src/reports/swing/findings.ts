import { arrowEnds } from '../../advice/launch/arrow-ends.ts';
import { type StartEffect, type SwingAdvice, swingAdvice } from '../../advice/launch/swing.ts';
import type { Launch } from '../../flight/launch.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../../quantities/quantity.ts';
import type { OpenSetup } from '../../setup/open.ts';

export interface SwingAsked {
  readonly launch: Launch;
  /** By which the tail stands off in a bad start. */
  readonly angle: Radians;
  /** Of the nock, across, in a bad start. */
  readonly nockSpeed: MetresPerSecond;
  /** Of the misses, rising, beyond the launch. */
  readonly ranges: readonly Metres[];
  /** Where paper is hung, rising; sheets that the point reaches on the string are left out. */
  readonly papers: readonly Metres[];
}

/** How the arrow recovers from bad starts. */
export interface SwingFindings extends SwingAsked {
  readonly advice: SwingAdvice;
  /** All but the clean start, which the others are measured from. */
  readonly disturbed: readonly StartEffect[];
}

/** @throws DomainError when the arrow's parts are not known or it does not right itself */
export function swingFindings({ assembly, calibration }: OpenSetup, asked: SwingAsked): SwingFindings {
  const { launch, angle, nockSpeed, ranges } = asked;
  const { arrow } = assembly;
  const tip = launch.position[0] + arrowEnds(arrow).ahead;
  const papers = asked.papers.filter((range) => range > tip);
  const advice = swingAdvice({
    arrow,
    conditions: calibration.rig.conditions,
    launch,
    angle,
    rate: si(nockSpeed / arrow.flying.balance),
    ranges,
    papers,
  });
  return { ...asked, papers, advice, disturbed: advice.starts.filter(({ name }) => name !== 'clean') };
}
