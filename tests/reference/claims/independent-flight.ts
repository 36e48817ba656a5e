import { differences } from '../../golden/independent-flight/differences.ts';
import type { Case, Claim } from '../claim.ts';

const cases = (allowed: number, tolerance?: number): readonly Case[] =>
  differences(tolerance).map(({ name, place }) => ({ name, error: place, allowed }));

const source =
  'an independent solver: SciPy 1.10.1, equations written again (tests/golden/independent-flight)';
const notCovered = 'whether the model is right: both solve the same one; steep arcs beyond 12 degrees';

export const claims: readonly Claim[] = [
  {
    kind: 'program',
    claim:
      'The everyday flight solves its equations: 43 to 107 m/s, slopes of -40 to 40 degrees, wind from all sides',
    source,
    unit: 'm',
    // Solved finely; both keep 1e-12 a step over some hundred steps.
    cases: cases(1e-8, 1e-12),
    notCovered,
  },
  {
    kind: 'program',
    claim: 'The same fifty flights as flown every day',
    source,
    unit: 'm',
    // A tenth of what a tape can show at any range.
    cases: cases(1e-6),
    notCovered,
  },
];
