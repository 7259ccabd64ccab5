// node .scripts/drive.mjs [TREE | VEHICLE | FILE.json ...]: drives vehicles of tests/vehicles and prints each path.
import { fitTree } from '../src/core/tree/fit.ts';
import { drive } from '../tests/helpers/drive/drive.ts';
import { readVehicle, readVehicles } from '../tests/helpers/drive/script.ts';
import {
  countedSteps,
  endWords,
  faultsOf,
  slipsOf,
  wrongRepairs,
} from '../tests/helpers/drive/verdict.ts';
import { shippedShop, shippedTree, shippedTrees } from '../tests/helpers/library.ts';

const wanted = process.argv.slice(2);
const shop = shippedShop();
const library = shippedTrees();
const leads = { tree: "the tree's own way", quicker: 'the advice' };
let failed = 0;

const files = wanted.filter((word) => word.endsWith('.json')).map(readVehicle);
const listed = readVehicles().filter(
  ({ name, script }) =>
    wanted.length === 0 || wanted.includes(name) || wanted.includes(script.tree),
);

for (const vehicle of [...listed, ...files]) {
  const { name, script } = vehicle;
  console.log(`\n== ${name}: ${script.vehicle} [${script.causes.join(', ')}]`);
  const tree = shippedTree(script.tree);
  const walked = [tree, ...script.onto.map(shippedTree)].map((one) => fitTree(one, script.facts));
  for (const slip of slipsOf(script, ...walked)) fail(slip);
  for (const lead of Object.keys(leads)) {
    console.log(`-- by ${leads[lead]}`);
    show(script, drive(vehicle, { tree, shop, library }, lead), lead);
  }
}
if (listed.length + files.length === 0) console.log('There is no such vehicle.');
process.exit(failed > 0 || listed.length + files.length === 0 ? 1 : 0);

function show(script, done, lead) {
  const wrong = wrongRepairs(script, done);
  let leg = 0;
  for (const step of done.steps) {
    if (step.leg !== leg) console.log(`        led on to ${done.trees[step.leg].id}`);
    leg = step.leg;
    const by = step.advised ? '*' : ' ';
    const sound = step.do === 'repair' && wrong.includes(step.id) ? 'WRONG, it is sound ' : '';
    const minutes = String(Math.round(step.minutes)).padStart(4);
    console.log(
      `${minutes} ${by} ${step.do.padEnd(6)} ${step.id.padEnd(18)} ${sound}${step.shown}`,
    );
  }
  const minutes = Math.round(done.steps.reduce((sum, step) => sum + step.minutes, 0));
  const advised = done.steps.filter((step) => step.advised).length;
  console.log(`   ended ${endWords(done.end)}`);
  console.log(
    `   ${countedSteps(done.steps)} steps (master ${script.master}), ${advised} advised (*), ${minutes} min, ${wrong.length} wrong`,
  );
  for (const check of done.settled) console.log(`   asked: ${check} shows worse since a repair`);
  for (const fault of faultsOf(script, done, lead)) fail(fault);
}

function fail(fault) {
  failed += 1;
  console.log(`   FAIL ${fault}`);
}
