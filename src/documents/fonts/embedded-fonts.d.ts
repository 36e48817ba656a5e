/** Fonts that the build puts into a script. */
declare module '*.ttf' {
  const bytes: Uint8Array;
  // biome-ignore lint/style/noDefaultExport: the bundler's loader makes one
  export default bytes;
}
