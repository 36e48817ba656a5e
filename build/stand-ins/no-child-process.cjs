// Stands in for node:child_process in the command line: commander would start commands that are programs of their own, and ours are
// not.
exports.spawn = () => {
  throw new Error('no command is a program of its own');
};
