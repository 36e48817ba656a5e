// Stands in for tiny-inflate where there is Node: fontkit unpacks its tables of every script when it is loaded, and zlib needs a
// small part of the time.
const { inflateRawSync } = require('node:zlib');

module.exports = (from, to) => {
  to.set(inflateRawSync(from));
  return to;
};
