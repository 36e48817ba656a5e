import packageFile from '../../package.json' with { type: 'json' };

/** The version is written in package.json and nowhere else; of that file the build puts nothing more into the program. */
export const VERSION: string = packageFile.version;
