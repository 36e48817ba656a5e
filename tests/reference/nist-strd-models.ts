type Model = (b: readonly number[], x: number) => number;

const at = (b: readonly number[], i: number): number => b[i - 1] ?? Number.NaN;
/** b[from] + b[from + 1] x + b[from + 2] x^2 + ... */
const polynomial = (b: readonly number[], x: number, from: number, count: number): number =>
  Array.from({ length: count }, (_, k) => at(b, from + k) * x ** k).reduce((sum, term) => sum + term, 0);
const cycle = (b: readonly number[], cosine: number, sine: number, turns: number): number =>
  at(b, cosine) * Math.cos(2 * Math.PI * turns) + at(b, sine) * Math.sin(2 * Math.PI * turns);

const saturation: Model = (b, x) => at(b, 1) * (1 - Math.exp(-at(b, 2) * x));
const threeDecays: Model = (b, x) =>
  at(b, 1) * Math.exp(-at(b, 2) * x) +
  at(b, 3) * Math.exp(-at(b, 4) * x) +
  at(b, 5) * Math.exp(-at(b, 6) * x);
const cubicRatio: Model = (b, x) => polynomial(b, x, 1, 4) / (1 + x * polynomial(b, x, 5, 3));

/** The models of the problems, parameters b1, b2, ... as the source numbers them. */
export const nistModels: Readonly<Record<string, Model>> = {
  Misra1a: saturation,
  Misra1b: (b, x) => at(b, 1) * (1 - (1 + (at(b, 2) * x) / 2) ** -2),
  Chwirut2: (b, x) => Math.exp(-at(b, 1) * x) / (at(b, 2) + at(b, 3) * x),
  DanWood: (b, x) => at(b, 1) * x ** at(b, 2),
  Lanczos3: threeDecays,
  Gauss1: (b, x) =>
    at(b, 1) * Math.exp(-at(b, 2) * x) +
    at(b, 3) * Math.exp(-((x - at(b, 4)) ** 2) / at(b, 5) ** 2) +
    at(b, 6) * Math.exp(-((x - at(b, 7)) ** 2) / at(b, 8) ** 2),
  Kirby2: (b, x) => polynomial(b, x, 1, 3) / (1 + x * polynomial(b, x, 4, 2)),
  Hahn1: cubicRatio,
  MGH17: (b, x) => at(b, 1) + at(b, 2) * Math.exp(-x * at(b, 4)) + at(b, 3) * Math.exp(-x * at(b, 5)),
  Lanczos1: threeDecays,
  Roszman1: (b, x) => at(b, 1) - at(b, 2) * x - Math.atan(at(b, 3) / (x - at(b, 4))) / Math.PI,
  ENSO: (b, x) =>
    at(b, 1) + cycle(b, 2, 3, x / 12) + cycle(b, 5, 6, x / at(b, 4)) + cycle(b, 8, 9, x / at(b, 7)),
  MGH09: (b, x) => (at(b, 1) * (x ** 2 + x * at(b, 2))) / (x ** 2 + x * at(b, 3) + at(b, 4)),
  MGH10: (b, x) => at(b, 1) * Math.exp(at(b, 2) / (x + at(b, 3))),
  Thurber: cubicRatio,
  BoxBOD: saturation,
  Rat42: (b, x) => at(b, 1) / (1 + Math.exp(at(b, 2) - at(b, 3) * x)),
  Rat43: (b, x) => at(b, 1) / (1 + Math.exp(at(b, 2) - at(b, 3) * x)) ** (1 / at(b, 4)),
  Eckerle4: (b, x) => (at(b, 1) / at(b, 2)) * Math.exp(-0.5 * ((x - at(b, 3)) / at(b, 2)) ** 2),
  Bennett5: (b, x) => at(b, 1) * (at(b, 2) + x) ** (-1 / at(b, 3)),
};
