#!/usr/bin/env node
// What `droplight` starts: words that a Node of any age can read, so that an old one can be told so.
// The build puts the two numbers in, from `engines` in package.json.
var needed = NEEDED_NODE;
var found = process.versions.node.split('.').map(Number);
if (found[0] < needed[0] || (found[0] === needed[0] && found[1] < needed[1])) {
  process.stderr.write(
    'droplight: Node ' +
      process.versions.node +
      ' is too old. Install Node ' +
      needed.join('.') +
      ' or newer.\n',
  );
  process.exitCode = 3;
} else {
  import('./droplight.js').catch(function (error) {
    process.stderr.write('droplight: the program does not load. ' + String(error) + '\n');
    process.exitCode = 3;
  });
}
