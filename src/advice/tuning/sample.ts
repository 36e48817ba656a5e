/** Sum of the values. */
export const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** Mean of at least one value. */
export const meanOf = (values: readonly number[]): number => sumOf(values) / values.length;

/** Sum of squares about the mean. */
export function squaresAbout(values: readonly number[]): number {
  const mean = meanOf(values);
  return sumOf(values.map((value) => (value - mean) ** 2));
}

/** Standard deviation of what the values are a sample of; 0 for a single one, which shows none. */
export const sampleSd = (values: readonly number[]): number =>
  values.length < 2 ? 0 : Math.sqrt(squaresAbout(values) / (values.length - 1));
