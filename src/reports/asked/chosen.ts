/** What else a choice is called; common practice, no source. */
const CALLED: Readonly<Record<string, readonly string[]>> = {
  yards: ['yard', 'yd', 'yds', 'y'],
  metres: ['metre', 'meters', 'meter', 'm'],
  letter: ['us letter', 'us-letter'],
  imperial: ['us', 'english'],
};

/** The choice that a word stands for, in any letter case; undefined for another word. */
export function chosen<Choice extends string>(choices: readonly Choice[], word: string): Choice | undefined {
  const typed = word.trim().toLowerCase();
  return (
    choices.find((choice) => choice.toLowerCase() === typed) ??
    choices.find((choice) => CALLED[choice]?.includes(typed) === true)
  );
}
