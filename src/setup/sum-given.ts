/** The sum of the quantities that a file gives; one that it leaves out adds nothing. */
export const sumGiven = (...quantities: readonly (number | undefined)[]): number =>
  quantities.filter((quantity) => quantity !== undefined).reduce((sum, quantity) => sum + quantity, 0);
