import { describe, expect, test } from 'vitest';
import { lintHazards } from '../../../../src/core/tree/lint/hazards.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import type { Problem } from '../../../../src/core/problem.ts';
import { smallTree } from '../../../helpers/tree.ts';

/*
 * What a mechanic might well write. Which of it can hurt is common practice, no source. Each stands
 * as the only step of a repair without cautions.
 */

function toldOf(step: string): readonly Problem[] {
  const tree = smallTree();
  const [id, cause] = Object.entries(tree.causes)[0] ?? [];
  if (id === undefined || cause === undefined) throw new Error('no cause');
  const { look } = tree.checks;
  if (look === undefined) throw new Error('no look');
  const repair = { ...cause.repair, do: [step], standing: {}, cautions: [] };
  const one: Tree = { ...tree, checks: {}, causes: { [id]: { ...cause, repair } } };
  const problems: Problem[] = [];
  lintHazards(one, (problem) => problems.push(problem));
  return problems;
}

const codesOf = (step: string): readonly string[] => [
  ...new Set(toldOf(step).map(({ code }) => code)),
];

test.each([
  'Take the petrol pipe off and let it run into a tin.',
  'Run her up to temperature.',
  'Start the car and let it warm up.',
  'Get underneath and reach up.',
  'Raise the front and put blocks under the wheels.',
  'Pull the heater hoses off; catch the water.',
  'Blow the dust out of the duct with the air line.',
  'Scrape the old lagging off the heater box.',
  'Hold the HT lead 5 mm from the block.',
  'Undo the live lead at the starter.',
  'Wash the motor in carb cleaner.',
  'Hold it on full until the wire smokes.',
  'Drive it round the block on high.',
  'Take the air-conditioning pipe off to get at the motor.',
  'Take the pipe from the condenser.',
  'Unbolt the compressor and let the gas out.',
  'Hold the throttle wide open and let it scream.',
  'Feel behind the fan belt while it turns.',
  'Undo the battery earth and tie it back.',
  'Turn it over with the plugs out.',
  'Bridge the solenoid with a screwdriver.',
  'Put it up on ramps and have a look.',
  'Wipe it down with meths.',
  'Ease the rad cap off.',
  'Knock the pads out and dust the brakes off.',
  'Rev her up and listen.',
])('asks for a caution: %s', (step) => {
  expect(codesOf(step)).toContain('hazard-without-caution');
});

describe('work that no caution makes safe', () => {
  test.each([
    'Wrap the fuse in foil.',
    'Fit a bigger fuse and see if it holds.',
    'Bridge the fuse with a piece of wire.',
    'Run the engine in the garage with the door shut.',
    'Look into the tank with a lit match.',
    'Pour a little petrol down the carb while a mate cranks.',
    'If it will not hold, fit the next size up fuse.',
    'A nail across the fuse clips will get you home.',
    'Fit a 30 amp fuse instead of the 15.',
    'Hold a lighter over the filler to see the level.',
    'Shut the garage door and let it idle for ten minutes.',
    'Solder the hole in the petrol tank.',
    'Suck the petrol through with a hose.',
    'Take the radiator cap off while it is hot.',
    'Lift the battery lead off with the engine running.',
    'Lie under the car on the jack.',
    'Put bricks under the axle.',
    'Hold the plug lead in your fingers and feel the kick.',
    'Flash a spanner across the posts to see if it is alive.',
    'Squirt ether into the intake.',
  ])('refused: %s', (step) => {
    expect(codesOf(step)).toContain('hazard-refused');
  });

  test.each([
    'Never a bigger fuse.',
    'Do not bridge the fuse.',
    'No naked flame near the tank.',
    'Never run it in the garage with the door shut.',
    'New fuse, same size.',
    'Stove and flame well away from vehicle and fuel.',
    'Never hold a plug lead in your hand.',
    'Never solder a fuel tank.',
    'Do not pour fuel into the carburetor.',
  ])('a warning against it is none: %s', (step) => {
    expect(codesOf(step)).not.toContain('hazard-refused');
  });

  test('the sentence is told once, at its place, with what it does', () => {
    expect(toldOf('Wrap the fuse in foil.')).toEqual([
      {
        code: 'hazard-refused',
        path: `causes.${Object.keys(smallTree().causes)[0]}.repair.do[0]`,
        value: 'Wrap the fuse',
        message:
          'This tells somebody to do what no caution makes safe (something else in place of a fuse). Nothing stops the current then, and the harness burns.',
        mend: 'Take it out. A warning against it may stand: begin the sentence with "Never".',
      },
    ]);
  });
});

const harmless = [
  'Key on, fan on high.',
  'Heater fan on full: feel for air at the vents.',
  'Cabin fan off, all switches off.',
  'Fan switch to low, then to high.',
  'Handbrake on.',
  'Hand brake on, out of gear.',
  'Open the bonnet and look.',
  'Lid of the fuse box off; look at each strip.',
  'Ask the owner how long it has done this.',
  'Note the mileage and the weather.',
  'Look at the back of the dash with a flashlight.',
  'Unplug the connector; look for green.',
  'Push the plug home until it clicks.',
  'Clean the earth point to bright metal.',
  'Meter on 20 volts, black to earth.',
  'Red to the terminal, black to bare metal.',
  'Turn the key to the first position.',
  'Press the horn three times.',
  'Fit a new fuse of the rating in the book.',
  'Air conditioning off, radio off.',
  'Wipe the glass and look again.',
  'Count the turns as you screw it in.',
  'Mark the two halves so that they match.',
  'The lamp goes out when the door is shut.',
  'Shut the door and wait for the lamp to go out.',
  'Tighten the screw a quarter turn.',
  'Pull the knob; it springs back.',
  'Listen for the click of the relay.',
  'Watch the needle while a mate works the switch.',
  'Measure the ohms from wire to wire.',
  'Follow the wire along the sill.',
  'Tape the bare place and clip it up.',
  'Headlights on full beam, wipers on fast.',
  'Look for smoke marks on the glass.',
  'Write the reading down.',
  'Do it twice; the second reading counts.',
  'New bulb, same watts.',
  'Seat belt clear of the wire.',
  'A thinner washer goes in first.',
  'Route the new wire clear of the exhaust.',
];

test('of forty harmless sentences two at most are taken for danger', () => {
  expect(harmless).toHaveLength(40);
  expect(harmless.filter((step) => toldOf(step).length > 0).length).toBeLessThanOrEqual(2);
});
