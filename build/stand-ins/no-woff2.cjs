// Stands in for the Brotli decoder when the tool is bundled: our typeface is TrueType, and the decoder's dictionary would be half
// of what a tape has to load.
module.exports = () => {
  throw new Error('WOFF2 fonts are not read by this bundle');
};
