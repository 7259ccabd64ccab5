#!/usr/bin/env node
// What `droplight` starts: words that a Node of any age can read, so that an old one can be told so.
// The build puts in the two numbers of `engines` and the version, from package.json.

var needed = NEEDED_NODE;
var found = process.versions.node.split('.').map(Number);
var word = process.argv[2];
if (found[0] < needed[0] || (found[0] === needed[0] && found[1] < needed[1])) {
  process.stderr.write(
    'droplight: Node ' +
      process.versions.node +
      ' is too old. Install Node ' +
      needed.join('.') +
      ' or newer.\n',
  );
  process.exitCode = 3;
} else if (word === '--version' || word === '-v') {
  process.stdout.write(VERSION + '\n');
} else {
  // Older Nodes call what keeps our locks an experiment, and say so across the screens.
  var warn = process.emitWarning;
  process.emitWarning = function (warning, kind) {
    if (kind !== 'ExperimentalWarning') warn.apply(process, arguments);
  };
  // The next start reads what this one has understood of the program. Where it cannot be kept, it is not.
  var os = require('os');
  var { cacheFolder } = require('../src/store/places.ts');
  require('module').enableCompileCache(
    cacheFolder({ env: process.env, system: os.platform(), home: os.homedir() }),
  );
  import('./droplight.js').catch(function (error) {
    process.stderr.write('droplight: the program does not load. ' + String(error) + '\n');
    process.exitCode = 3;
  });
}
