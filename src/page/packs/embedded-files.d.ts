/** Files that the build puts into a script. */
declare module '*.yaml' {
  const text: string;
  // biome-ignore lint/style/noDefaultExport: the bundler's loader makes one
  export default text;
}
