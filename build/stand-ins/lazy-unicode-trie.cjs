// Stands in for unicode-trie's entry: fontkit makes a table of every script when it is loaded, and each is unpacked at once. Our texts
// ask one or two of them, so each is unpacked when it is first asked.
const UnicodeTrie = require('../../node_modules/unicode-trie/index.js');

module.exports = class {
  constructor(data) {
    this.data = data;
  }

  get(codePoint) {
    this.table ??= new UnicodeTrie(this.data);
    return this.table.get(codePoint);
  }
};
