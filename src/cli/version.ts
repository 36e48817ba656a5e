import packageFile from '../../package.json' with { type: 'json' };

/** The version is written in package.json and nowhere else; of that file the build puts nothing more into the program. */
export const VERSION: string = packageFile.version;

/** Whether the words after the program's name ask for the version and for nothing else. */
export const asksForVersion = ([first, ...more]: readonly string[]): boolean =>
  more.length === 0 && (first === '--version' || first === '-V');
