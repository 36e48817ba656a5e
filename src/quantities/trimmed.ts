/** A number to six digits, without zeros at the end: as a person types it. */
export const trimmed = (value: number): string => String(Number(value.toPrecision(6)));
