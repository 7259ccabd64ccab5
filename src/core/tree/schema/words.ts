/**
 * What an editor shows of each key of a tree while somebody writes one: by the object that the key
 * stands in, or by the key alone where it means the same wherever it stands.
 */
export const treeWords: Readonly<Record<string, string>> = {
  'tree.$schema':
    'Where the schema lies by which this editor completes and checks: ./tree.schema.json',
  'tree.format': 'The form this tree is written in. New trees: 2.',
  'tree.id': 'The name of the file without ".json", such as horn-silent.',
  'tree.title': 'The complaint in a few words, as it stands in the list of trees.',
  'tree.complaint': 'What the owner says, and the check that makes it happen.',
  'complaint.say': 'What the owner says, in plain words.',
  'complaint.heard':
    'What else owners say for it, a few words each: who types one finds this complaint. Shown nowhere.',
  'complaint.confirm':
    'Id of the check that shows the complaint. Repeated after a repair it is the proof, so it must be one that can pass.',
  'complaint.tries':
    'Good tries in a row that prove a complaint cured which comes and goes. Usually 1.',
  'tree.fits': 'Which vehicles this tree is for, a line each.',
  'tree.start':
    "Id of the check that the way begins with where the complaint's test was passed over; else its result leads.",
  'tree.group': 'What the complaint is about; complaints are listed by it, and found by typing it.',
  'tree.triage':
    'Only for a tree that sorts and mends nothing, such as one for brakes: why the vehicle goes to inspection. It cannot be closed as fixed.',
  'tree.baseline': 'Ids of checks to take before anything is disturbed, whatever the way.',
  'tree.alsoLikely': 'Chance that a second cause is there too, 0 to 0.95. Left out: 0.2.',
  'tree.unlisted':
    'Of a hundred vehicles with this complaint, how many have something not on this list.',
  'tree.safeguards':
    'What must be known before anything is cranked, run, powered, driven or mended: a check, and the results that open the way.',
  'safeguards.before':
    'The steps that wait: those with one of these standings, and the repairs of these causes.',
  'before.engine':
    'Steps with the engine so wait. "running" stands for every way in which it runs.',
  'before.key': 'Steps with the key so wait.',
  'before.battery': 'Steps with the battery so wait.',
  'before.repair':
    'Ids of causes that are not mended before: no new fuse before the search for the short.',
  'safeguards.check': 'Id of the check that must come first.',
  'safeguards.shows': 'Ids of its results after which the step may be done.',
  'safeguards.else':
    'What is said where it showed something else, such as: Never run it on milky oil.',
  'tree.states': 'States of the vehicle that pass, by a name of yours: it refuses while hot.',
  'states.say': 'The state in a sentence: "it refuses to start, hot".',
  'states.minutes': 'Minutes to bring the state back once it is over.',
  'states.with':
    'States that are back with it: what stands cold from a night can be started cold as well.',
  'tree.causes':
    'What can be wrong, each by an id of yours. One cause is one thing in one place with one repair.',
  'tree.checks': 'What can be looked at, measured or tried, each by an id of yours.',
  'tree.branches':
    'One branch of several: fuses, hoses or plugs parted some at a time. By the id of the first of the checks that it stands for.',
  'branches.probe': 'How some of them are parted together, and what that shows.',
  'branches.look':
    'A check of what hangs on the branch that was found. {branch} stands for its name.',
  'branches.of': 'The branches, by ids of yours, in the order in which they lie side by side.',
  'branches.none': 'When it is on none of them.',
  'none.share':
    'Of a hundred vehicles on which this is tried, on how many it is on none. Left out: by what hangs on the branches.',
  'none.next': 'Where the way then goes on: a check’s id, cause:ID, tree:ID or stop.',
  'none.reason': 'Why the way stops there, or why another tree takes over.',
  'of.name': 'The branch in a sentence: "the radio fuse".',
  'of.short': 'The same in a word or two, as lists say it: "radio".',
  'of.minutes': 'Minutes to part it and to put it back, beside those of the probe.',
  'of.hangs': 'By cause: of a hundred vehicles with it, on how many it is on this branch.',
  'of.next': 'Where the way goes on once it is known to be this one. Left out: to the look.',
  'of.reason': 'Why the way stops here, or why another tree takes over.',
  'probe.ask':
    'The question on the screen, 60 characters at most. {row} stands for those that are parted, in short.',
  'probe.how': 'How they are parted. {these} stands for the names of those that are.',
  'probe.healthy': 'What shows where the fault is on none of these.',
  'probe.minutes': 'Minutes of each probe, beside those of the branches that it parts.',
  'probe.elsewhere': 'What it is called when nothing changes: the fault is on another one.',
  'probe.here': 'What it is called when it goes: the fault is on one of these.',
  'probe.sound': 'Of a hundred probes, how many show it where it is not. Left out: 2.',
  'elsewhere.label': 'What the mechanic sees then, 40 characters at most.',
  'elsewhere.told': 'The same as a past phrase for the account: "it stayed as it was".',
  'here.label': 'What the mechanic sees then, 40 characters at most.',
  'here.told': 'The same as a past phrase for the account: "it fell".',
  'tree.feed':
    'The supply path as a circuit, from the battery to the loads. Checks that stand on it need no chances typed.',
  'causes.name': 'What is wrong, as you would say it.',
  'causes.short': 'The name in a sentence: "the fuel pump".',
  'causes.where': 'Where on the vehicle it sits.',
  'causes.odds': 'Of a hundred vehicles with this complaint, how many have this.',
  'causes.shows': 'How it shows itself to somebody who looks.',
  'causes.because':
    'Ids of causes that may have brought this one about: the fuse burnt for a reason.',
  'causes.triage':
    'Only for a cause that is sorted out and not mended here: why the vehicle goes to inspection once it is named.',
  'causes.tree':
    'Id of the tree that goes on from this cause: named, the job is led there, and nothing is mended here.',
  'causes.repair': 'How it is put right, and what that takes.',
  'causes.span': 'The two stations of the feed path between which it sits.',
  'causes.fault':
    'What it does to the feed path: open, resistive, bad (either), or with its own numbers.',
  'repair.do': 'What to do, one short step a line.',
  'repair.minutes': 'Minutes of work, without opening and closing what is in "access".',
  'repair.parts': 'What has to be bought, in words.',
  'repair.part': 'What has to be bought by weight: none, something small, something dear.',
  'repair.try':
    'True for an act of minutes that needs no part and can be taken back: it may be tried on a suspicion.',
  'repair.sure-at': 'Least chance at which the repair is advised, 0.5 to 0.99. Left out: 0.8.',
  'repair.then': 'Ids of checks to repeat once it is done, before the proof.',
  'checks.kind': 'What the mechanic does: look, listen, feel, measure, try or ask.',
  'checks.ask': 'The question on the screen, 60 characters at most.',
  'checks.how': 'How it is done, in two to five short steps.',
  'checks.healthy': 'What a good vehicle shows or reads here: "11.5 V or more".',
  'checks.minutes': 'Minutes it takes, without opening and closing what is in "access".',
  'checks.reading': 'What is measured, where the check takes a reading.',
  'checks.readings': 'Several readings typed on one line, in their order; "judge" makes them one.',
  'checks.each': 'One reading for each cylinder that the vehicle has.',
  'checks.judge':
    'How several readings become one: difference (first less second), spread, lowest, each, share, or the id of a trade figure.',
  'checks.told': 'The check as a noun phrase for the account: "the spark at a plug lead".',
  'checks.looks-at': 'Ids of the causes whose very part this check looks at.',
  'checks.only-while':
    'The passing state, by its name in "states", in which alone this check tells anything.',
  'checks.results':
    'What it can show, the healthiest first and the most telling last; two to nine.',
  'checks.limits':
    'Where one result ends and the next begins, in the unit of the reading: one number fewer than results, in their order.',
  'checks.bands':
    'Ids of the results from the lowest reading up, where the healthy one is in the middle.',
  'checks.sound':
    'Of a hundred sound vehicles, how many look bad here: by result, or one number for all bad ones. Left out: 3.',
  'checks.shows-with':
    'By cause: of a hundred vehicles with that cause alone, how many show each result. What is left out shows the healthy one.',
  'checks.background':
    'Format 1: chance of each result on a vehicle with none of the causes, in their order.',
  'checks.points':
    'Format 1: by cause, chance of each result on a vehicle with that cause alone, in their order.',
  'checks.after':
    'Checks that must have shown one of these results first: {"fuse-look": ["whole"]}.',
  'checks.same': 'Checks with one name here show one and the same thing.',
  'checks.feed': 'Where on the feed path it reads; the circuit then works its chances out.',
  'reading.quantity': 'What is measured.',
  'reading.unit': 'The unit in which it is asked and judged.',
  'reading.plausible':
    'Least and most that such a gauge can show here; anything else is asked again.',
  'reading.standard': 'Id of the trade figure that brings the reading to reference conditions.',
  'reading.uncertainty':
    'How far off such a reading may be, in its unit, where that is not the usual error.',
  'readings.quantity': 'What is measured.',
  'readings.unit': 'The unit in which it is asked.',
  'readings.plausible': 'Least and most that such a gauge can show here.',
  'readings.uncertainty': 'How far off such a reading may be, in its unit.',
  'readings.name': 'What this one is: "at the posts".',
  'results.id': 'The name by which rows and ways point at this result: low.',
  'results.label': 'What the mechanic sees, 40 characters at most. Limits add their numbers.',
  'results.told':
    'What was found, as a past phrase for the account: "there was none", "{reading} was read".',
  'results.from':
    'Lower end of its band, which belongs to it. "limits" of the check say it shorter.',
  'results.below':
    'Upper end of its band, which does not belong to it. "limits" of the check say it shorter.',
  'results.next':
    'Where the way goes on: a check’s id, cause:ID (condemned), tree:ID (another complaint) or stop; or a list, the first that holds.',
  'results.reason': 'Why the way stops here, or why another tree takes over: told to the mechanic.',
  'next.if': 'Holds while each of these checks has shown one of these results.',
  'next.go': 'Where the way then goes on.',
  'standing.battery': 'How the battery must be.',
  'standing.key': 'Where the key must be.',
  'standing.engine': 'What the engine must be doing.',
  'standing.heat': 'How warm the engine must be.',
  always: 'This result for certain. In the complaint’s own test only.',
  access: 'Ids of what must be opened first. "droplight trees shop WORDS" finds them.',
  cautions:
    'Ids of what is told before the step, since it can hurt. "droplight trees shop WORDS" finds them.',
  tools: 'Ids of what it takes. "droplight trees shop WORDS" finds them.',
  standing:
    'How battery, key and engine must be for it; the screens ask for changes in the safe order.',
  spends: 'Names of passing states that are over once this was done.',
  shut: 'Accesses that must be closed again for it; the screens ask for those that are open.',
  source: 'Where it is from: "common practice, no source", or a title.',
  when: 'Only on vehicles with these facts: {"transmission": "automatic"}. What nobody knows keeps both.',
  is: 'The value on such vehicles.',
  book: 'Name of the figure of the vehicle’s own book, as shop.json has it.',
  plus: 'Added to the figure of the book.',
  minus: 'Taken from the figure of the book.',
  times: 'The figure of the book is multiplied by this, before "plus" and "minus".',
  else: 'The limit where nobody has read the book, in the unit of the reading.',
};
