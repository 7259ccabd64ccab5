import type { vehicleKinds } from '../kinds/vehicle.ts';
import { pass, type Folding } from './draft.ts';

/** How the vehicle stands: what is open, off, on for a while, and the air of today. */
export const vehicleFolding: Folding<keyof typeof vehicleKinds> = {
  conditions: ({ set, notKnown = [] }, draft) => {
    draft.conditions = { ...draft.conditions, ...set };
    draft.notKnown = [...draft.notKnown, ...notKnown].filter((name) => !Object.hasOwn(set, name));
  },
  standing: ({ set, despite }, draft, mark) => {
    pass(draft, { kind: 'standing', set }, despite, mark);
    draft.standing = { ...draft.standing, ...set };
  },
  access: ({ access, now }, draft) => {
    draft.open = draft.open.filter((one) => one !== access);
    if (now === 'open') draft.open.push(access);
  },
  'part-off': ({ kind: _, ...said }, draft, { n }) => draft.partsOff.push({ n, ...said }),
  'part-on': ({ part, of }, draft) => {
    draft.partsOff = draft.partsOff.filter(({ n, part: off }) =>
      of === undefined ? off !== part : n !== of,
    );
  },
  'left-apart': ({ things, why }, draft, { n, stamp }) =>
    draft.leftApart.push({ n, stamp, things, why }),
  'aid-on': ({ aid }, draft, { n }) => draft.aidsOn.push({ n, aid }),
  'aid-off': ({ aid, of }, draft) => {
    draft.aidsOn = draft.aidsOn.filter(({ n, aid: on }) =>
      of === undefined ? on !== aid : n !== of,
    );
  },
};
