import { oscillation } from '../../../src/arrow/lift/swing.ts';
import type { Claim } from '../claim.ts';
import { cell, referenceTable } from '../table.ts';

const rows = referenceTable('wind-tunnel-swing', 'dtv-1.csv', [
  'restoring',
  'damping',
  'inertia',
  'axial_inertia',
  'natural',
  'damping_ratio',
  'coupled_natural',
  'coupled_damping_ratio',
]);

export const claims: readonly Claim[] = [
  {
    kind: 'law',
    claim: 'Frequency and damping of the swing of a wind-tunnel vehicle',
    source: 'Mandell, Caporaso and Bengen, 1973, chapter 2',
    unit: '%',
    cases: rows.flatMap((row) => {
      const value = (column: string) => cell(row, column).value;
      const inertia = value('inertia');
      const alone = oscillation(value('restoring'), value('damping'), inertia);
      const rolling = oscillation(value('restoring'), value('damping'), inertia + value('axial_inertia'));
      const off = (name: string, ours: number) => ({
        name,
        error: Math.abs(ours / value(name) - 1) * 100,
        allowed: 0.5,
      });
      return [
        off('natural', alone.natural),
        off('damping_ratio', alone.dampingRatio),
        off('coupled_natural', rolling.natural),
        off('coupled_damping_ratio', rolling.dampingRatio),
      ];
    }),
    notCovered: 'the moments themselves: they are inputs here',
  },
];
